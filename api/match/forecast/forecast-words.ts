import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import type { Breeder, ExcludedAnimal, ExclusionReason } from '../breeders.ts';
import type { ProposedPair } from './breeding-scheme.ts';
import type { CourseKind, Forecast } from './forecast-courses.ts';
import { say } from '../../platform/say.ts';

/** By which rule the generations of each course are mated. */
export const courseRules: Readonly<Record<CourseKind, string>> = {
  plan: say`First the pairs of the plan. In each later generation as many sires, dams and pairs as in the plan: who breeds is chosen so that mean kinship stays least, and mates so that kinship between them is least; clutch-mates only where there is no other way.`,
  today: say`First the groups of the register as they stand: one clutch of each dam by any male of her group. Later groups of the same sizes are filled at random with the young, but a dam born in the group of her mate is exchanged for another one where there is one.`,
  random: say`The breeders of the plan are mated at random, and so are their young, clutch-mates like any other two; as many sires, dams and pairs as in the plan.`,
};

/** Part of the genes from origins that nobody knows from which on it is said. */
const UNKNOWN_PART = 0.1;

/** What the cautions of a forecast rest on. */
export interface ForecastCircumstances {
  readonly pairs: readonly ProposedPair[];
  /** Number of the line. */
  readonly line: number;
  /** Breeders of the plan that may breed, and those that may not. */
  readonly breeders: readonly Breeder[];
  readonly excluded: readonly ExcludedAnimal[];
  /** Groups of the line that cannot breed as they stand. */
  readonly idle: number;
  readonly youngKept: number;
}

const excludedWords: Partial<Record<ExclusionReason, string>> = {
  'keeper-left': say`Breeders of the plan whose keeper has left the club`,
  'too-young': say`Breeders of the plan that are younger than the least age at which their species matures`,
  'beyond-lifespan': say`Breeders of the plan that are older than their species is known to live`,
};

/** What must stand beside a forecast, in plain sentences. */
export function forecastCautions(
  { graph }: LineageSnapshot,
  { pairs, line, breeders, excluded, idle, youngKept }: ForecastCircumstances,
  { origins }: Forecast,
): string[] {
  const cautions: string[] = [];
  const isForeign = (animal: number): boolean => graph.lineOf[animal] !== line;
  const crosses = pairs.filter(({ sire, dam }) => isForeign(sire) || isForeign(dam)).length;
  if (crosses > 0)
    cautions.push(say`Pairs with an animal of another line or of none, whose young would be a cross: ${crosses}.`);
  for (const [reason, words] of Object.entries(excludedWords)) {
    const count = excluded.filter((animal) => animal.reason === reason).length;
    if (count > 0) cautions.push(`${words}: ${count}.`);
  }
  const disputed = breeders.filter(({ isDisputed }) => isDisputed).length;
  if (disputed > 0)
    cautions.push(say`Breeders of the plan with a disputed label, which their young would carry on: ${disputed}.`);
  if (idle > 0) cautions.push(say`Groups of today that cannot breed, since they hold one sex only: ${idle}.`);
  const unknown = origins.filter(({ kind }) => kind !== 'source').reduce((sum, { share }) => sum + share, 0);
  if (unknown >= UNKNOWN_PART)
    cautions.push(
      say`${Math.round(100 * unknown)} % of the genes come from founders of unknown origin and from unknown parents, who count as unrelated to everybody.`,
    );
  cautions.push(
    say`Founders count as unrelated unless their source states a base kinship.`,
    say`It is assumed that every clutch raises ${youngKept} young, males and females in equal number, that generations do not overlap, and that no animal is lost or comes in.`,
    say`Figures advise; the welfare of the animals and the eye of their keeper decide.`,
  );
  return cautions;
}
