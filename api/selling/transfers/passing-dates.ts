import { dateBounds } from '../../../shared/edtf.ts';
import { storedDate, type StoredDate } from '../../platform/dates.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { say } from '../../platform/say.ts';

const dayOf = (instant: number): string => new Date(instant).toISOString().slice(0, 10);

/** Today in UTC. */
export const today = (): string => dayOf(Date.now());

/**
 * The date of something that has happened: what was said, else today. 422 at /date where it certainly has not come yet; a day more is let
 * pass, since it may be tomorrow already where the keeper lives.
 */
export function pastDate(text: string | null | undefined): StoredDate {
  const date = storedDate(text ?? today());
  if (date.earliest === null || date.earliest <= dayOf(Date.now() + 86_400_000)) return date;
  const detail = say`This date has not come yet. Give the day on which it happened.`;
  throw new InvalidProblem(detail, [{ pointer: '/date', detail }]);
}

/** The planned date of an offer, if it is not later than today. */
export function plannedUntilToday(text: string | null): string | null {
  const earliest = text === null ? null : (dateBounds(text)?.earliest ?? null);
  return earliest !== null && earliest <= today() ? text : null;
}
