/** Whole days from one calendar day to another, `YYYY-MM-DD`; negative where the second comes first. */
export const daysFrom = (first: string, second: string): number =>
  Math.round((Date.parse(`${second}T00:00:00Z`) - Date.parse(`${first}T00:00:00Z`)) / 86_400_000);
