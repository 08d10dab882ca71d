import {
  FileTextField,
  FlagField,
  ListField,
  PatternField,
  TextField,
  VisibilityField,
} from '../../platform/fields.ts';
import type { Visibility } from '../../../shared/vocabulary.ts';
import { say } from '../../platform/say.ts';

/** An animal of a sheet that the register knows already. */
export class KnownHere {
  @PatternField({
    pattern: /^a[1-9]\d{0,5}$/,
    words: say`must be a ref of the sheet, such as a2`,
    description: 'Its ref on the sheet.',
    example: 'a3',
  })
  ref: string;

  @TextField({ max: 40, description: 'Id or registry number of its record here.' })
  individual: string;
}

/** A provenance sheet of another register. */
export class ForeignSheetRequest {
  @FileTextField({ max: 700_000, description: 'The text of the sheet file, every character as it was handed out.' })
  file: string;

  @PatternField({
    pattern: /^[A-Za-z0-9]{1,8}$/,
    words: say`must have 1 to 8 letters and digits without accents`,
    optional: true,
    description:
      'Short for the other register, put before its numbers to make codes: 1 to 8 letters and digits without accents. The initials of its name if left out.',
    example: 'RAC',
  })
  prefix?: string;

  @ListField(() => KnownHere, {
    optional: true,
    max: 200,
    description:
      'Animals that stand here already although they never came in by a sheet of that register: one that was given there from here, say.',
  })
  known?: KnownHere[];
}

/** How it is taken. */
export class ForeignSheetQuery {
  @FlagField({ optional: true, description: 'Only check the sheet and tell what would come in; store nothing.' })
  dryRun = false;

  @VisibilityField('Who may see the animals and sources that come in; club if left out.')
  visibility: Visibility = 'club';
}
