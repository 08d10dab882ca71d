import { roles, type Role } from '../../shared/vocabulary.ts';
import { ChoiceListField, FlagField, TextField } from '../platform/fields.ts';

/** A change of a keeper; what is left out stays. */
export class KeeperChangeRequest {
  @TextField({ max: 120, optional: true, description: 'Name, by which the keeper signs in.' })
  name?: string;

  @TextField({
    max: 80,
    optional: true,
    nullable: true,
    description: 'Where the keeper lives, as roughly as they like members to know; null: not said.',
    example: 'Upper valley',
  })
  region?: string | null;

  @ChoiceListField(roles, {
    optional: true,
    description: 'All that the keeper may do besides keeping animals; only an administrator changes it.',
  })
  roles?: Role[];
}

/** A change of the club's settings; what is left out stays. */
export class ClubChangeRequest {
  @TextField({ max: 120, optional: true, description: 'Name of the club.' })
  name?: string;

  @FlagField({ optional: true, description: 'Whether anyone may read what is marked as public, without signing in.' })
  publicReading?: boolean;
}
