import { OmitType } from '@nestjs/swagger';
import { FlagField, TextField } from '../../platform/fields.ts';
import { IndividualQuery } from '../../register/individuals/individual.dto.ts';

/** Which animals go out in a sheet: the filters of the list of animals, or animals picked by hand. */
export class RegisterSheetQuery extends OmitType(IndividualQuery, ['limit', 'after', 'total', 'sort', 'order']) {
  @TextField({
    max: 8000,
    optional: true,
    description: 'Ids or registry numbers with commas between them, at most 500: these animals and no others.',
  })
  animals?: string;

  @FlagField({
    optional: true,
    description:
      'Write their ancestors, too, so that the sheet needs no other register; else parents outside it are registry numbers.',
  })
  ancestors = false;
}
