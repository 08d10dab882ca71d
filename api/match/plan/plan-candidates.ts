import type { EntityManager } from 'typeorm';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { resolveMentioned, type NamedAnimal } from '../../lineage/named-animals.ts';
import { isLiving, sexOf } from '../../lineage/register-graph.ts';
import { InvalidProblem, type ProblemError } from '../../platform/problem.ts';
import { readProven } from '../../register/individuals/individual-details.queries.ts';
import { findBreeders, type Breeder, type ExcludedAnimal } from '../breeders.ts';
import { exclusionWords } from '../mates/exclusion-words.ts';
import type { PlanRequest } from './plan.dto.ts';
import { say } from '../../platform/say.ts';

/** Most animals that are looked at, and most pairs that the solver is given. */
const CONSIDERED_MOST = 5000;
export const PAIRS_MOST = 40_000;

/** An animal that a plan may use. */
export interface Candidate extends Breeder {
  readonly isProven: boolean;
  /** Old, and has not bred. */
  readonly isReserve: boolean;
}

/** Who may be in a plan, and who may not. */
export interface Candidates {
  readonly males: readonly Candidate[];
  readonly females: readonly Candidate[];
  readonly excluded: readonly ExcludedAnimal[];
  /** Numbers of all animals that the request names, by their names. */
  readonly mentioned: ReadonlyMap<string, number>;
}

/** The line that a plan is for. */
export interface PlannedLine {
  /** Its dense number. */
  readonly line: number;
  readonly speciesId: string;
}

/**
 * Finds who may be in a plan: the living of the line, or those that the request names.
 *
 * @throws InvalidProblem for animals that do not exist, of another line without leave, of another species, for fixed pairs that may not
 *   breed, and where there are too many
 */
export async function findCandidates(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  planned: PlannedLine,
  request: PlanRequest,
): Promise<Candidates> {
  const named = animalsNamed(request);
  const mentioned = await resolveMentioned(manager, snapshot, named);
  const numberOf = ({ text }: NamedAnimal): number => mentioned.get(text) ?? -1;
  const chosen = named.filter(({ pointer }) => !/^\/(forbidden|uses)\//.test(pointer));
  refuse(
    say`Some animals cannot be in this plan; each is named below.`,
    chosen.flatMap(strangers(snapshot, planned, request, numberOf)),
  );
  const own = request.individuals === undefined ? livingOf(snapshot, planned.line) : [];
  const considered = [...new Set([...own, ...chosen.map(numberOf)])];
  const found = await findBreeders(manager, snapshot, considered, { disputed: request.allow.includes('disputed') });
  const misfits = found.breeders.filter(({ speciesId }) => speciesId !== planned.speciesId);
  refuse(say`Some animals are of another species.`, ofOtherSpecies(misfits, named, numberOf));
  refuse(
    say`Some of the fixed pairs cannot be; each is named below.`,
    namelessFixed(snapshot, named, found.excluded, numberOf),
  );
  const proven = await readProven(
    manager,
    found.breeders.map(({ animal }) => snapshot.idOf(animal)),
  );
  const candidates = found.breeders
    .filter(({ speciesId }) => speciesId === planned.speciesId)
    .map((breeder): Candidate => {
      const isProven = proven.has(snapshot.idOf(breeder.animal));
      return { ...breeder, isProven, isReserve: !isProven && (breeder.age?.least ?? -1) >= request.reserveMonths };
    });
  const males = candidates.filter(({ sex }) => sex === 'male');
  const females = candidates.filter(({ sex }) => sex === 'female');
  refuseTooMany(males.length, females.length);
  return { males, females, excluded: found.excluded, mentioned };
}

/** All animals that a request names, each place of it. */
function animalsNamed({ individuals = [], also, fixed, forbidden, uses }: PlanRequest): NamedAnimal[] {
  const inPairs = (name: 'fixed' | 'forbidden', pairs: PlanRequest['fixed']): NamedAnimal[] =>
    pairs.flatMap(({ male, female }, place) => [
      { text: male, pointer: `/${name}/${place}/male` },
      { text: female, pointer: `/${name}/${place}/female` },
    ]);
  return [
    ...individuals.map((text, place) => ({ text, pointer: `/individuals/${place}` })),
    ...also.map((text, place) => ({ text, pointer: `/also/${place}` })),
    ...inPairs('fixed', fixed),
    ...inPairs('forbidden', forbidden),
    ...uses.map(({ individual }, place) => ({ text: individual, pointer: `/uses/${place}/individual` })),
  ];
}

function strangers(
  { graph }: LineageSnapshot,
  { line }: PlannedLine,
  { allow }: PlanRequest,
  numberOf: (named: NamedAnimal) => number,
): (named: NamedAnimal) => ProblemError[] {
  return (named) => {
    if (graph.lineOf[numberOf(named)] === line || allow.includes('cross-lines')) return [];
    const detail = say`${named.text} is not of this line: its young would be a cross. Leave it out, or allow other lines.`;
    return [{ pointer: named.pointer, detail }];
  };
}

function livingOf(snapshot: LineageSnapshot, line: number): number[] {
  const living = Array.from(snapshot.membersOfLine(line)).filter((animal) => isLiving(snapshot.graph, animal));
  if (living.length > CONSIDERED_MOST) {
    const detail = say`${living.length} animals of this line live, at most ${CONSIDERED_MOST} are looked at. Name those to choose among.`;
    throw new InvalidProblem(detail, [{ pointer: '/individuals', detail }]);
  }
  return living;
}

function ofOtherSpecies(
  misfits: readonly Breeder[],
  named: readonly NamedAnimal[],
  numberOf: (named: NamedAnimal) => number,
): ProblemError[] {
  const numbers = new Set(misfits.map(({ animal }) => animal));
  return named
    .filter((one) => numbers.has(numberOf(one)))
    .map(({ text, pointer }) => ({ pointer, detail: say`${text} is of another species than the line. Leave it out.` }));
}

/** What stands against the animals of fixed pairs themselves: that they may not breed, or are of the other sex. */
function namelessFixed(
  snapshot: LineageSnapshot,
  named: readonly NamedAnimal[],
  excluded: readonly ExcludedAnimal[],
  numberOf: (named: NamedAnimal) => number,
): ProblemError[] {
  const reasonOf = new Map(excluded.map(({ animal, reason }) => [animal, reason]));
  return named
    .filter(({ pointer }) => /^\/(fixed|forbidden)\//.test(pointer))
    .flatMap((one) => {
      const { text, pointer } = one;
      const number = numberOf(one);
      const side = pointer.endsWith('/male') ? 'male' : 'female';
      const sex = sexOf(snapshot.graph, number);
      if (sex !== side && sex !== 'unsexed')
        return [
          { pointer, detail: say`${text} is recorded as ${sex}. Name it on the other side, or correct its sex.` },
        ];
      const reason = reasonOf.get(number);
      if (reason === undefined || !pointer.startsWith('/fixed/')) return [];
      return [{ pointer, detail: say`${text} may not breed. ${exclusionWords[reason]}` }];
    });
}

function refuseTooMany(males: number, females: number): void {
  if (males * females <= PAIRS_MOST) return;
  const detail = say`${males} males and ${females} females may breed: ${males * females} pairs, of which at most ${PAIRS_MOST} are looked at. Name the animals to choose among.`;
  throw new InvalidProblem(detail, [{ pointer: '/individuals', detail }]);
}

function refuse(detail: string, errors: readonly ProblemError[]): void {
  if (errors.length > 0) throw new InvalidProblem(detail, errors);
}
