/** What Today is asked for. */
export interface Asked {
  /** The calendar day, YYYY-MM-DD. */
  readonly on: string;
  /** Whose records count; null for those of everybody. */
  readonly keeperId: string | null;
  /** How many of each kind at most. */
  readonly limit: number;
}
