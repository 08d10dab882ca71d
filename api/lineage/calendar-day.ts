/** A calendar day of the database; null where the date is open on that side or not given. */
export function calendarDay(text: string | null | undefined): string | null {
  return text === null || text === undefined || text.endsWith('infinity') ? null : text;
}
