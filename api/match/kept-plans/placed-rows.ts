import { InvalidProblem, type ProblemError } from '../../platform/problem.ts';
import type { PairRow } from './kept-plan.queries.ts';
import { say } from '../../platform/say.ts';

/**
 * The rows of the pairs that a request names by their places, in its order.
 *
 * @throws InvalidProblem naming each place that the plan does not have, and each that is named twice
 */
export function placedRows(rows: readonly PairRow[], asked: readonly { readonly place: number }[]): PairRow[] {
  const errors: ProblemError[] = [];
  const found = asked.flatMap(({ place }, index) => {
    const row = rows.find((one) => one.place === place);
    const first = asked.findIndex((one) => one.place === place);
    const pointer = `/pairs/${index}/place`;
    if (!row)
      errors.push({ pointer, detail: say`The plan has ${rows.length} pairs, at the places 0 to ${rows.length - 1}.` });
    else if (first < index)
      errors.push({ pointer, detail: say`This is the pair at /pairs/${first} again. Name each pair once.` });
    return row ? [row] : [];
  });
  if (errors.length > 0) throw new InvalidProblem(say`Some pairs cannot be taken; each is named below.`, errors);
  return found;
}
