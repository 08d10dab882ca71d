/** A row as the database takes it: column names and plain values. */
export type Row = Readonly<Record<string, string | number | boolean | null | readonly string[]>>;

/** Tables in the order in which they can be written. */
export const tables = [
  'keeper',
  'club',
  'species',
  'species_range',
  'line',
  'source',
  'pairing',
  'clutch',
  'clutch_loss',
  'individual',
  'clutch_candidate',
  'clutch_pair',
  'pairing_member',
  'observation',
  'confirmed_warning',
  'claim',
  'evidence',
] as const;
type Table = (typeof tables)[number];

/** All rows of the club. Animals stand in order of birth and have no registry number yet: the database numbers them. */
export type ClubRows = Readonly<Record<Table, readonly Row[]>>;
