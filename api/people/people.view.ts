import { roles, type Role } from '../../shared/vocabulary.ts';
import { Shown } from '../platform/fields.ts';

/** A keeper's name next to the id. */
export class KeeperView {
  @Shown({ description: 'Id of the keeper.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Name of the keeper, 1 to 120 characters.' })
  name: string;
}

/** A member of the club. Who left stays in the list: the records keep the name. */
export class MemberView extends KeeperView {
  @Shown({ description: 'Grows with every change of name, region, roles or membership.', type: 'integer', minimum: 1 })
  version: number;

  @Shown({ description: 'Where the keeper lives, roughly; null: not said.', type: String, nullable: true })
  region: string | null;

  @Shown({ description: 'What the keeper may do besides keeping animals.', enum: [...roles], isArray: true })
  roles: Role[];

  @Shown({ description: 'When the keeper came into this register.', format: 'date-time' })
  joinedAt: Date;

  @Shown({
    description: 'When the keeper left the club; null: is in it.',
    format: 'date-time',
    nullable: true,
    type: String,
  })
  leftAt: Date | null;
}

/** The club whose register this is. */
export class ClubView {
  @Shown({ description: 'Grows with every change of the settings.', type: 'integer', minimum: 1 })
  version: number;

  @Shown({ description: 'Name of the club, 1 to 120 characters.' })
  name: string;

  @Shown({ description: 'Whether every record is invented, for looking around.' })
  demo: boolean;

  @Shown({ description: 'Whether anyone may read what is marked as public, without signing in.' })
  publicReading: boolean;
}
