import { Shown } from '../platform/fields.ts';
import { WithdrawnView } from '../register/record.view.ts';

/** How many records a sheet made; what was there before is not counted. */
export class CreatedCounts {
  @Shown({ description: 'Animals.', type: 'integer', minimum: 0 })
  individuals: number;

  @Shown({ description: 'Clutches.', type: 'integer', minimum: 0 })
  clutches: number;

  @Shown({ description: 'Sources.', type: 'integer', minimum: 0 })
  sources: number;

  @Shown({ description: 'Lines.', type: 'integer', minimum: 0 })
  lines: number;

  @Shown({ description: 'Species.', type: 'integer', minimum: 0 })
  species: number;
}

/** Something in a sheet that can be taken but should be looked at. */
export class ImportWarning {
  @Shown({ description: 'Row as a spreadsheet shows it; the header is row 1.', type: 'integer', minimum: 1 })
  row: number;

  @Shown({ description: 'Column, as its header names it.', example: 'laid' })
  column: string;

  @Shown({ description: 'What was found, in words.' })
  detail: string;
}

/** A register sheet that was taken, or that was only checked. */
export class ImportView {
  @Shown({
    description: 'Id of the import; null where the sheet was only checked.',
    type: String,
    format: 'uuid',
    nullable: true,
  })
  id: string | null;

  @Shown({ description: 'Animals in the sheet.', type: 'integer', minimum: 1 })
  rows: number;

  @Shown({ description: 'What the sheet made, or would make.', type: CreatedCounts })
  created: CreatedCounts;

  @Shown({ description: 'What should be looked at, by row; the first 1000.', type: [ImportWarning] })
  warnings: ImportWarning[];

  @Shown({ description: 'How many warnings there are in all.', type: 'integer', minimum: 0 })
  warningCount: number;
}

/** An import of the past. */
export class PastImportView {
  @Shown({ description: 'Id of the import.', format: 'uuid' })
  id: string;

  @Shown({ description: 'When it was made, RFC 3339 in UTC.', format: 'date-time' })
  createdAt: string;

  @Shown({ description: 'Name of the keeper who made it.' })
  keeper: string;

  @Shown({ description: 'Id of the keeper who made it.', format: 'uuid' })
  keeperId: string;

  @Shown({ description: 'Animals in the sheet.', type: 'integer', minimum: 1 })
  rows: number;

  @Shown({ description: 'What the sheet made.', type: CreatedCounts })
  created: CreatedCounts;

  @Shown({ description: 'How many warnings there were.', type: 'integer', minimum: 0 })
  warningCount: number;

  @Shown({ description: 'Set when the import was undone; null while it stands.', type: WithdrawnView, nullable: true })
  withdrawn: WithdrawnView | null;
}

/** An import of the past, whole. */
export class WholeImportView extends PastImportView {
  @Shown({ description: 'What should be looked at, by row; the first 1000.', type: [ImportWarning] })
  warnings: ImportWarning[];

  @Shown({ description: 'How much of what the sheet made still stands.', type: CreatedCounts })
  standing: CreatedCounts;

  @Shown({
    description: 'SHA-256 of the sheet, hexadecimal; null for sheets taken before it was kept, which cannot be undone.',
    type: String,
    nullable: true,
  })
  sheetSha256: string | null;
}
