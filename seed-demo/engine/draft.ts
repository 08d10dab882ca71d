import type { Sex, Status } from '../../shared/vocabulary.ts';
import type {
  ClubPlan,
  Confirmation,
  GroupPlan,
  LinePlan,
  Odds,
  PairOdds,
  SourcePlan,
  SpeciesPlan,
  ToldClutch,
} from './plan.ts';

/** An animal while its life is being worked out. */
export interface Animal {
  readonly code: string;
  readonly sex: Sex;
  readonly line: LinePlan;
  readonly species: SpeciesPlan;
  readonly source: SourcePlan | null;
  readonly clutch: Clutch | null;
  /** The day from which its age is reckoned. */
  readonly bornAbout: string;
  readonly hatched: string | null;
  readonly outOfWater: string | null;
  keeper: string;
  notes: string | null;
  status: Status;
  died: string | null;
  readonly stays: Stay[];
}

/** A time in a group, from `joined` to `left`, null while it lasts. */
export interface Stay {
  readonly animal: Animal;
  readonly group: Group;
  readonly joined: string;
  left: string | null;
}

export interface Group {
  readonly plan: GroupPlan;
  readonly line: LinePlan;
  readonly stays: Stay[];
}

export interface Clutch {
  readonly code: string;
  readonly group: Group;
  readonly species: SpeciesPlan;
  readonly told: ToldClutch;
  readonly counts: ClutchCounts;
  readonly young: Animal[];
  parents: Parents;
  readonly confirmed: Confirmation | null;
}

export interface ClutchCounts {
  readonly eggs: number | null;
  readonly fertile: number | null;
  readonly hatched: number | null;
  readonly outOfWater: number | null;
  readonly losses: readonly { readonly cause: string; readonly count: number }[];
}

export type Parents =
  | { readonly mode: 'lists'; readonly sires: readonly Odds[]; readonly dams: readonly Odds[] }
  | { readonly mode: 'pairs'; readonly pairs: readonly PairOdds[] };

/** The whole club, worked out but not yet written as rows. */
export interface Draft {
  readonly plan: ClubPlan;
  readonly animals: Map<string, Animal>;
  readonly groups: Group[];
  readonly clutches: Clutch[];
}

/** The animal of a code. Throws where the scenario names one that it never tells of. */
export function animalOf(draft: Pick<Draft, 'animals'>, code: string): Animal {
  const animal = draft.animals.get(code);
  if (!animal) throw new Error(`the scenario names an animal that it never tells of: ${code}`);
  return animal;
}

/** Reads `ZV-21m ZV-22f ZV-23` into codes and sexes. */
export function readAnimals(text: string): { code: string; sex: Sex }[] {
  return text
    .split(/\s+/)
    .filter((word) => word !== '')
    .map((word) => {
      const match = /^([A-Z]{2}-\d{2,3})([mf]?)$/.exec(word);
      if (!match?.[1]) throw new Error(`the scenario has an animal that cannot be read: ${word}`);
      return { code: match[1], sex: match[2] === 'm' ? 'male' : match[2] === 'f' ? 'female' : 'unsexed' };
    });
}
