import { Shown } from '../../platform/fields.ts';
import { CreatedCounts } from '../import.view.ts';

/** The register that a sheet is of. */
export class SheetRegisterView {
  @Shown({ description: 'Id among the other registers.', format: 'uuid' })
  id: string;

  @Shown({ description: 'What it is called here.' })
  name: string;
}

/** The record here of an animal of a sheet. */
export class RecordHereView {
  @Shown({ description: 'Id.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Registry number here.', example: '10704-4' })
  number: string;

  @Shown({ description: 'Code here.', type: String, nullable: true })
  code: string | null;
}

/** An animal of a sheet and what becomes of it. */
export class ForeignAnimalView {
  @Shown({ description: 'Its ref on the sheet.', example: 'a1' })
  ref: string;

  @Shown({ description: 'Its number there; null where that register keeps it private.', type: String, nullable: true })
  number: string | null;

  @Shown({ description: 'Whether the sheet was made for it; else it is an ancestor.' })
  isOnSheet: boolean;

  @Shown({ description: 'The code that it gets, or has, here.', type: String, nullable: true })
  code: string | null;

  @Shown({
    description: 'Its record here where it was known already, or came in now.',
    type: RecordHereView,
    nullable: true,
  })
  here: RecordHereView | null;

  @Shown({ description: 'Whether it was known already: then its record stays as it is.' })
  wasKnown: boolean;
}

/** Something to look at. */
export class ForeignWarningView {
  @Shown({
    description: 'The animal it is about, by its ref on the sheet; null for the whole sheet.',
    type: String,
    nullable: true,
  })
  ref: string | null;

  @Shown({ description: 'What was found, in words.' })
  detail: string;
}

/** A provenance sheet of another register that came in, or was only checked. */
export class ForeignSheetView {
  @Shown({
    description: 'Id of the import, by which all of it can be undone; null where it was only checked.',
    type: String,
    format: 'uuid',
    nullable: true,
  })
  id: string | null;

  @Shown({ description: 'The register whose key signed it.', type: SheetRegisterView })
  register: SheetRegisterView;

  @Shown({ description: 'Number of the sheet there.', example: 'PS-12-7' })
  sheetNumber: string;

  @Shown({ description: 'When it was issued, RFC 3339 in UTC.', format: 'date-time' })
  issued: string;

  @Shown({ description: 'What was found of its signature, in words.' })
  verdict: string;

  @Shown({ description: 'Its animals and their ancestors, the sold ones first.', type: [ForeignAnimalView] })
  animals: ForeignAnimalView[];

  @Shown({ description: 'What came in, or would.', type: CreatedCounts })
  created: CreatedCounts;

  @Shown({
    description: 'Claims that came in, or would, each with the sheet as a paper that waits for a review.',
    type: 'integer',
    minimum: 0,
  })
  claims: number;

  @Shown({ description: 'What should be looked at.', type: [ForeignWarningView] })
  warnings: ForeignWarningView[];
}
