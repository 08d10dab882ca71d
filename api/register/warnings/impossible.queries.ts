import type { EntityManager } from 'typeorm';
import { dateBounds } from '../../../shared/edtf.ts';
import { InvalidProblem, type ProblemError } from '../../platform/problem.ts';
import { impossibleInClutch, impossibleInIndividual } from '../plausibility.ts';
import { seenClutch } from '../seen-records.ts';
import { clutchTitle } from '../titles.ts';
import { readClutchFacts, type KnownClutchFacts } from './facts.queries.ts';
import { say } from '../../platform/say.ts';

/**
 * Refuses, with 422, an animal as it was just written, where it hatched before its clutch was laid or after a clutch of its own
 * was (clutch_candidate_individual_index, clutch_pair_a_index, clutch_pair_b_index). Here as below, records that may not be seen
 * refuse nothing: whoever may change a date could find out theirs by trying.
 */
export async function refuseImpossibleIndividual(manager: EntityManager, id: string): Promise<void> {
  const [row] = await manager.query<{ hatched: string | null; laid: string | null }[]>(
    `select i.hatched, c.laid from individual i left join clutch c on c.id = i.clutch_id and ${seenClutch('c')} where i.id = $1`,
    [id],
  );
  if (!row?.hatched) return;
  const own = impossibleInIndividual({
    hatched: dateBounds(row.hatched),
    laid: row.laid === null ? null : dateBounds(row.laid),
  });
  const [early] = await manager.query<{ code: string | null; laid: string | null }[]>(
    `select c.code, c.laid from clutch c join individual i on i.id = $1
     where ${seenClutch('c')} and c.laid_latest < i.hatched_earliest and c.id in (select clutch_id from clutch_candidate where individual_id = $1
       union select clutch_id from clutch_pair where a_id = $1 union select clutch_id from clutch_pair where b_id = $1)
     order by c.laid_latest limit 1`,
    [id],
  );
  const details = own.map((found) => found.detail);
  if (early)
    details.push(
      say`The animal is a possible parent of the ${clutchTitle(early)}, which was laid before the animal hatched. Check both dates.`,
    );
  refuse(details.map((detail) => ({ pointer: '/hatched', detail })));
}

/** What a request said wrong, where a clutch cannot be: pointers to the field that says its parents, and to the one that says its young. */
export interface ClutchPointers {
  readonly parents: string;
  readonly young: string;
}

/** Refuses, with 422, a clutch as it was just written, where it was laid before a parent hatched or after a young did. */
export async function refuseImpossibleClutch(manager: EntityManager, id: string, pointer: string): Promise<void> {
  const facts = await readClutchFacts(manager, id);
  if (facts) refuseImpossibleFacts(facts, { parents: pointer, young: pointer });
}

/** As `refuseImpossibleClutch`, by facts of the clutch that were read after it was written. */
export function refuseImpossibleFacts(facts: KnownClutchFacts, pointers: ClutchPointers): void {
  refuse([
    ...impossibleInClutch(facts).map(({ detail }) => ({ pointer: pointers.parents, detail })),
    ...(facts.earlyYoung === null
      ? []
      : [
          {
            pointer: pointers.young,
            detail: say`The young ${facts.earlyYoung} hatched before the clutch was laid. Check both dates.`,
          },
        ]),
  ]);
}

function refuse(errors: readonly ProblemError[]): void {
  if (errors.length > 0) throw new InvalidProblem(say`The dates cannot be right together.`, errors);
}
