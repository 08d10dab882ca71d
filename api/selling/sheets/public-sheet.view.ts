import { Shown } from '../../platform/fields.ts';
import { sheetOutcomes, type SheetOutcome } from '../../../shared/sheet/verify-sheet.ts';
import { NewerSheetView, RevocationView, sheetStates, type SheetState } from './sheets.view.ts';

/** What can differ between the day of issue and today. */
export const differingFields = [
  'species',
  'sex',
  'status',
  'hatched',
  'out-of-water',
  'line',
  'label-standing',
  'traced-share',
  'inbreeding',
  'depth',
  'parents',
] as const;
export type DifferingField = (typeof differingFields)[number];

/** Something that the register says otherwise today. */
export class DifferenceView {
  @Shown({ description: 'What differs.', enum: differingFields })
  field: DifferingField;

  @Shown({ description: 'What the sheet says, in words; null: nothing.', type: String, nullable: true })
  then: string | null;

  @Shown({ description: 'What the register says today, in words; null: nothing.', type: String, nullable: true })
  now: string | null;
}

/** An animal of a sheet, today. */
export class AnimalTodayView {
  @Shown({
    description:
      'Registry number of the animal as the sheet has it; null where the register tells strangers nothing of it today.',
    type: String,
    nullable: true,
    example: '10704-4',
  })
  number: string | null;

  @Shown({
    description: 'Whether the register tells of it today. False where its record was withdrawn, or is kept private.',
  })
  isTold: boolean;

  @Shown({
    description: 'Number of the record that goes on in its place, where it was found to be the same animal.',
    type: String,
    nullable: true,
  })
  continuesAs: string | null;

  @Shown({
    description:
      'What the register says otherwise than on the day of issue; empty where nothing, or where it tells nothing.',
    type: [DifferenceView],
  })
  differences: DifferenceView[];
}

/** A provenance sheet as anybody may see it who knows its address. */
export class PublicSheetView {
  @Shown({ description: 'Number of the sheet.', example: 'PS-1001-2' })
  number: string;

  @Shown({ description: 'Name of the register that issued it.' })
  register: string;

  @Shown({ description: 'Whether everything in that register is invented, to look around in.' })
  isInvented: boolean;

  @Shown({ description: 'When it was issued, RFC 3339 in UTC.', format: 'date-time' })
  issued: Date;

  @Shown({
    description: 'Last day on which it is valid, in UTC; null: until it is replaced or revoked.',
    type: String,
    format: 'date',
    nullable: true,
  })
  validUntil: string | null;

  @Shown({
    description: 'What its signature says, checked anew for this answer: genuine or expired, if all is well.',
    enum: sheetOutcomes,
  })
  outcome: SheetOutcome;

  @Shown({
    description:
      'Whether it still stands: valid; expired; superseded: each of its animals stands on a newer sheet; revoked.',
    enum: sheetStates,
  })
  state: SheetState;

  @Shown({ description: 'Both in plain sentences.' })
  words: string;

  @Shown({ description: 'That and why it was revoked; null where it was not.', type: RevocationView, nullable: true })
  revoked: RevocationView | null;

  @Shown({ description: 'Newer sheets of its animals.', type: [NewerSheetView] })
  newer: NewerSheetView[];

  @Shown({ description: 'Thumbprint of the key that it is signed with.' })
  keyId: string;

  @Shown({
    description:
      'What the sheet says: the member `sheet` of its file, format 1. What became private since is concealed in it. Null where it was revoked, or where the register tells ' +
      'nothing of one of its animals today.',
    type: 'object',
    additionalProperties: true,
    nullable: true,
  })
  contents: Record<string, unknown> | null;

  @Shown({
    description: 'Whether the signed file is given out here: not while anything in it is private, or it is revoked.',
  })
  hasFile: boolean;

  @Shown({ description: 'Its animals today, in the order in which they stand on it.', type: [AnimalTodayView] })
  today: AnimalTodayView[];
}

/** What a file is that somebody sent. */
export class SheetVerificationView {
  @Shown({
    description:
      'What its bytes and the keys of this register say: genuine; expired: genuine, but its last day is over; changed after it was signed; unknown-key: signed with a key that is not ' +
      'of this register; key-out-of-use: dated when its key was not in use; not-canonical: written anew by a program or a person; malformed: no sheet.',
    enum: sheetOutcomes,
  })
  outcome: SheetOutcome;

  @Shown({
    description:
      'Whose it is: of this register; of another one, which its issuer names; unknown where that cannot be said.',
    enum: ['this-register', 'another-register', 'unknown'],
  })
  whose: 'this-register' | 'another-register' | 'unknown';

  @Shown({ description: 'All of it in plain sentences.' })
  words: string;

  @Shown({
    description: 'Number that the file names; null where it cannot be read. To be believed only where it is genuine.',
    type: String,
    nullable: true,
  })
  number: string | null;

  @Shown({
    description: 'Name of the register that the file names as its issuer; null where it cannot be read.',
    type: String,
    nullable: true,
  })
  issuer: string | null;

  @Shown({
    description: 'Address of the register that the file names; null where it names none.',
    type: String,
    nullable: true,
  })
  issuerAddress: string | null;

  @Shown({
    description: 'Whether it still stands; null where this register did not issue it.',
    enum: sheetStates,
    type: String,
    nullable: true,
  })
  state: SheetState | null;

  @Shown({
    description: 'Path of its public page; null where this register did not issue it.',
    type: String,
    nullable: true,
  })
  lookUp: string | null;
}
