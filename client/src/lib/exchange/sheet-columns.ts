import { word } from '../words/word.ts';
/** The columns of a register sheet, as the import page explains them. */
export const sheetColumns: readonly { names: string; meaning: string; example: string }[] = [
  { names: 'code', meaning: 'your own code, unique in the sheet', example: 'EA-07' },
  { names: 'species', meaning: 'scientific name', example: 'Epipedobates anthonyi' },
  { names: 'line', meaning: 'name of the line', example: 'Quebrada Honda' },
  { names: 'sex', meaning: 'm, f, u or the full words', example: 'f' },
  {
    names: 'sire, dam',
    meaning: 'codes or registry numbers; several candidates with / and, if you like, odds after a colon; ? for unknown',
    example: 'EA-01:0.7/EA-02:0.3',
  },
  {
    names: 'parents',
    meaning: 'instead of sire and dam, for a group that cannot be sexed: any two of them may be the pair',
    example: 'EA-11/EA-12/EA-13',
  },
  { names: 'clutch', meaning: 'a code for the clutch; rows that share it are clutch-mates', example: 'C-2021-04' },
  { names: 'source', meaning: 'a code for the source; rows that share it arrived together', example: 'S-1' },
  { names: 'source kind', meaning: 'import, wild-collection, purchase or unknown', example: 'import' },
  { names: 'source date, country of export', meaning: 'when and from where the source came', example: '1994~, EC' },
  { names: 'source base kinship', meaning: 'assumed kinship among the founders of the source', example: '0' },
  {
    names: 'label, label standing note',
    meaning: 'the label as received, and what is known about it',
    example: 'Quebrada Honda',
  },
  { names: 'laid, hatched, out of water, died', meaning: 'dates, as far as known', example: '2021-04-12' },
  { names: 'status', meaning: 'alive, died, gone or unknown', example: 'alive' },
  { names: 'notes', meaning: word('anything'), example: 'left eye clouded' },
];
