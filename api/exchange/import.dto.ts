import { FlagField } from '../platform/fields.ts';

/** How a sheet is taken. */
export class ImportQuery {
  @FlagField({ optional: true, description: 'Only check the sheet and tell what it would make; store nothing.' })
  dryRun = false;
}
