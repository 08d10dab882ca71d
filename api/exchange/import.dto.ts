import type { Visibility } from '../../shared/vocabulary.ts';
import { FlagField, VisibilityField } from '../platform/fields.ts';

/** How a sheet is taken. */
export class ImportQuery {
  @FlagField({ optional: true, description: 'Only check the sheet and tell what it would make; store nothing.' })
  dryRun = false;

  @VisibilityField('Who may see the animals and sources that the sheet makes; club if left out.')
  visibility: Visibility = 'club';
}
