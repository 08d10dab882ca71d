import { Shown } from '../platform/fields.ts';

/** A keeper's name next to the id. */
export class KeeperView {
  @Shown({ description: 'Id of the keeper.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Name of the keeper, 1 to 120 characters.' })
  name: string;
}

/** The club whose register this is. */
export class ClubView {
  @Shown({ description: 'Name of the club, 1 to 120 characters.' })
  name: string;

  @Shown({ description: 'Whether every record is invented, for looking around.' })
  demo: boolean;

  @Shown({ description: 'The keeper in whose name this request acts.', type: KeeperView })
  actingKeeper: KeeperView;
}
