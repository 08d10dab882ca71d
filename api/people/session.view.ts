import { roles, type Role } from '../../shared/vocabulary.ts';
import { Shown } from '../platform/fields.ts';

/** A club as a stranger may know it. */
export class SessionClubView {
  @Shown({ description: 'Name of the club, 1 to 120 characters.' })
  name: string;

  @Shown({ description: 'Whether every record is invented, for looking around.' })
  demo: boolean;

  @Shown({ description: 'Whether anyone may read what is marked as public.' })
  publicReading: boolean;
}

/** A keeper and what the keeper may do besides. */
export class SessionKeeperView {
  @Shown({ description: 'Id of the keeper.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Name of the keeper.' })
  name: string;

  @Shown({ description: 'What the keeper may do besides keeping animals.', enum: [...roles], isArray: true })
  roles: readonly Role[];
}

/** Which records a rule is about. */
class PermissionConditionView {
  @Shown({ description: 'Records of this keeper.', format: 'uuid' })
  keeperId: string;
}

/** A rule of the permission table, in the form of the library CASL: what is in no rule is refused. */
export class PermissionView {
  @Shown({ description: 'What may be done.', type: [String] })
  action: readonly string[];

  @Shown({ description: 'To which kinds of record.', type: [String] })
  subject: readonly string[];

  @Shown({
    description: 'Only to records whose fields are these; left out: to all.',
    type: PermissionConditionView,
    required: false,
  })
  conditions?: PermissionConditionView;
}

/** Who asks, and what may be done. */
/** How large files may be that are sent. */
export class FileLimitsView {
  @Shown({ description: 'Most bytes of a document (PDF).', type: 'integer', minimum: 1, example: 20_000_000 })
  documentBytes: number;

  @Shown({
    description: 'Most bytes of a picture, as it comes from the camera.',
    type: 'integer',
    minimum: 1,
    example: 25_000_000,
  })
  pictureBytes: number;
}

/** Who asks. */
export class SessionView {
  @Shown({
    description: 'setup: the register wants its first administrator; signed-out: nobody is signed in; signed-in.',
    enum: ['setup', 'signed-out', 'signed-in'],
  })
  state: 'setup' | 'signed-out' | 'signed-in';

  @Shown({ description: 'The club; null before it was set up.', type: SessionClubView, nullable: true })
  club: SessionClubView | null;

  @Shown({ description: 'Who is signed in.', type: SessionKeeperView, nullable: true })
  keeper: SessionKeeperView | null;

  @Shown({ description: 'What whoever asks may do.', type: [PermissionView] })
  permissions: PermissionView[];

  @Shown({
    description: 'The invented keepers of a demo club, for signing in with one click; empty in every other club.',
    type: [SessionKeeperView],
  })
  demoKeepers: SessionKeeperView[];

  @Shown({ description: 'How large files may be that are sent.', type: FileLimitsView })
  fileLimits: FileLimitsView;

  @Shown({
    description:
      'The address under which members reach the register, for what is printed; null where none was set (PUBLIC_URL).',
    nullable: true,
    type: String,
    example: 'https://register.example.org',
  })
  address: string | null;
}
