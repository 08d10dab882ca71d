import { SHEET_ANIMALS_MOST } from '../../../shared/sheet/sheet-document.ts';
import { FlagField, IdField, PatternField, TextField, TextListField } from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';

/** Of which animals a sheet is to be signed. */
export class NewSheetRequest {
  @TextListField({
    max: 40,
    maxItems: SHEET_ANIMALS_MOST,
    description: `Ids or registry numbers of the animals, 1 to ${SHEET_ANIMALS_MOST}, all of one keeper. None may be private: a sheet is for strangers.`,
  })
  animals: string[];

  @PatternField({
    optional: true,
    pattern: /^\d{4}-\d\d-\d\d$/,
    words: 'must be a calendar day such as 2027-04-12',
    example: '2027-04-12',
    description:
      'Last day on which it is valid, in UTC: not before today, and at most 30 years on. Left out: until it is replaced or revoked.',
  })
  validUntil?: string;

  @FlagField({
    optional: true,
    description:
      'Whether photographs of the animals stand on it, and whoever holds it may look at them; true if left out.',
  })
  photographs?: boolean;

  @FlagField({
    optional: true,
    description:
      'Whether it names the keeper of the animals; true if left out. Only the keeper can let it: a sheet that a registrar makes of the animals of another names nobody.',
  })
  keeperNamed?: boolean;
}

/** Which sheets to list. */
export class SheetQuery extends PageQuery {
  @IdField({ optional: true, description: 'Those that this animal stands on.' })
  individualId?: string;
}

/** Why a sheet is revoked. */
export class SheetRevocationRequest {
  @TextField({
    max: 500,
    description: 'Why. Everybody who opens its public page reads it.',
    example: 'The froglets were mixed up.',
  })
  reason: string;
}
