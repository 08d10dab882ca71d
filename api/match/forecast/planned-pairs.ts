import type { EntityManager } from 'typeorm';
import type { Sex } from '../../../shared/vocabulary.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { isLiving, sexOf } from '../../lineage/register-graph.ts';
import { seenAmong } from '../../lineage/seen-animals.queries.ts';
import { InvalidProblem, type ProblemError } from '../../platform/problem.ts';
import type { ProposedPair } from './breeding-scheme.ts';
import type { PlannedPairRequest } from './plan-forecast.dto.ts';
import { say } from '../../platform/say.ts';

/** How strictly pairs are taken. */
interface PairRules {
  /** Number of the line that all animals must belong to. */
  readonly line: number;
  /** Whether animals of other lines are taken as well. */
  readonly crossLines: boolean;
}

/**
 * Dense numbers of the animals of each pair.
 *
 * @throws InvalidProblem naming each animal that does not exist or may not be seen, does not live, stands on the side of the other sex, was
 *   not sexed, or belongs to another line where that was not asked for, and each pair that stands there twice
 */
export async function resolvePairs(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  pairs: readonly PlannedPairRequest[],
  rules: PairRules,
): Promise<ProposedPair[]> {
  const found = await numbersSeen(
    manager,
    snapshot,
    pairs.flatMap(({ sire, dam }) => [sire, dam]),
  );
  const errors: ProblemError[] = [];
  const firstPlace = new Map<string, number>();
  const resolved = pairs.map(({ sire, dam }, place) => {
    const pair = { sire: found.get(sire) ?? -1, dam: found.get(dam) ?? -1 };
    const own = [
      ...unfit(snapshot, { text: sire, number: pair.sire, sex: 'male', pointer: `/pairs/${place}/sire` }, rules),
      ...unfit(snapshot, { text: dam, number: pair.dam, sex: 'female', pointer: `/pairs/${place}/dam` }, rules),
    ];
    errors.push(...own);
    const key = `${pair.sire} ${pair.dam}`;
    const first = firstPlace.get(key);
    if (first === undefined) firstPlace.set(key, place);
    else if (own.length === 0)
      errors.push({
        pointer: `/pairs/${place}`,
        detail: say`This pair is the same as the one at /pairs/${first}. Name each pair once.`,
      });
    return pair;
  });
  if (errors.length > 0) throw new InvalidProblem(say`Some of the pairs cannot be taken; each is named below.`, errors);
  return resolved;
}

interface NamedSide {
  readonly text: string;
  /** −1 where there is none, or none that may be seen. */
  readonly number: number;
  readonly sex: Exclude<Sex, 'unsexed'>;
  readonly pointer: string;
}

function unfit(
  { graph }: LineageSnapshot,
  { text, number, sex, pointer }: NamedSide,
  rules: PairRules,
): ProblemError[] {
  const error = (detail: string): ProblemError[] => [{ pointer, detail }];
  if (number < 0) return error(say`There is no animal with the id or registry number ${text}.`);
  if (!isLiving(graph, number))
    return error(
      say`${text} died, left the club, was withdrawn, or nobody knows whether it lives. Name one that lives.`,
    );
  const recorded = sexOf(graph, number);
  if (recorded === 'unsexed')
    return error(say`${text} is not sexed. Record its sex first: a plan pairs sexed animals.`);
  if (recorded !== sex)
    return error(
      say`${text} is recorded as ${recorded}. Name it as the ${sex === 'male' ? 'dam' : 'sire'}, or correct its sex.`,
    );
  if (!rules.crossLines && graph.lineOf[number] !== rules.line)
    return error(
      say`${text} does not belong to this line: the young would be a cross. Ask for \`crossLines\` if that is meant.`,
    );
  return [];
}

/** Numbers of animals by what a request calls them; without those that do not exist or may not be seen. */
async function numbersSeen(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  texts: readonly string[],
): Promise<Map<string, number>> {
  const numbers = new Map(texts.map((text) => [text, snapshot.find(text)]));
  const ids = [...numbers.values()].filter((number) => number >= 0).map((number) => snapshot.idOf(number));
  const seen = await seenAmong(manager, ids);
  return new Map([...numbers].filter(([, number]) => seen.has(snapshot.idOf(number))));
}
