import { Shown } from '../../platform/fields.ts';

/** Whether a sheet still stands. */
export const sheetStates = ['valid', 'expired', 'superseded', 'revoked'] as const;
export type SheetState = (typeof sheetStates)[number];

const stateDescription =
  'valid; expired: its last day is over; superseded: each of its animals stands on a newer sheet that was not revoked; revoked.';

/** An animal on a sheet. */
export class SheetAnimalView {
  @Shown({
    description: 'Id of the animal; "private-1" and so on, numbered within the answer, where it may not be seen.',
  })
  id: string;

  @Shown({
    description: 'Its registry number; null where it may not be seen.',
    type: String,
    nullable: true,
    example: '10704-4',
  })
  number: string | null;

  @Shown({ description: 'Whether it is a private animal that whoever asks may not see.' })
  isPrivate: boolean;
}

/** That a sheet is not to be relied on any more. */
export class RevocationView {
  @Shown({ description: 'When, RFC 3339 in UTC.', format: 'date-time' })
  at: Date;

  @Shown({ description: 'Why, in the words of whoever revoked it.' })
  reason: string;
}

/** A newer sheet of an animal. */
export class NewerSheetView {
  @Shown({ description: 'Registry number of the animal.', example: '10704-4' })
  animal: string;

  @Shown({ description: 'Number of the newest sheet of it that was not revoked.', example: 'PS-1002-0' })
  number: string;

  @Shown({ description: 'When that one was issued, RFC 3339 in UTC.', format: 'date-time' })
  issued: Date;
}

/** A provenance sheet as its keeper sees it. */
export class SheetView {
  @Shown({ description: 'Id of the sheet.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Version, which changes when it is revoked.', type: 'integer', minimum: 1 })
  version: number;

  @Shown({ description: 'Number of the sheet, with its check character.', example: 'PS-1001-2' })
  number: string;

  @Shown({ description: 'Name of the keeper whose animals it tells of.' })
  keeper: string;

  @Shown({ description: 'Id of that keeper.', format: 'uuid' })
  keeperId: string;

  @Shown({ description: 'When it was issued, RFC 3339 in UTC.', format: 'date-time' })
  issued: Date;

  @Shown({
    description: 'Last day on which it is valid, in UTC; null: until it is replaced or revoked.',
    type: String,
    format: 'date',
    nullable: true,
  })
  validUntil: string | null;

  @Shown({ description: `Whether it still stands. ${stateDescription}`, enum: sheetStates })
  state: SheetState;

  @Shown({ description: 'That and why it was revoked; null where it was not.', type: RevocationView, nullable: true })
  revoked: RevocationView | null;

  @Shown({ description: 'Newer sheets of those of its animals that may be seen.', type: [NewerSheetView] })
  newer: NewerSheetView[];

  @Shown({ description: 'Its animals, in the order in which they stand on it.', type: [SheetAnimalView] })
  animals: SheetAnimalView[];

  @Shown({ description: 'Thumbprint of the key that it is signed with.' })
  keyId: string;

  @Shown({
    description:
      'Address of its public page, which its QR code leads to; a path where the register has no address of its own (PUBLIC_URL). Whoever knows it can read the sheet.',
    example: '/s/7hC0wGk2mYb1QzXv4nEr9aTf',
  })
  lookUp: string;
}
