import { roles, type Role } from '../../shared/vocabulary.ts';
import { Shown } from '../platform/fields.ts';
import { linkKinds, type LinkKind } from './links.dto.ts';
import { KeeperView } from './people.view.ts';

/** A link that can still be used. Its secret is not kept. */
export class LinkView {
  @Shown({ description: 'Id of the link.', format: 'uuid' })
  id: string;

  @Shown({
    description: 'invitation: for a new member; reset: for a new passphrase of a member.',
    enum: [...linkKinds],
  })
  kind: LinkKind;

  @Shown({ description: 'Whose passphrase it sets; null for an invitation.', type: KeeperView, nullable: true })
  keeper: KeeperView | null;

  @Shown({ description: 'What the new member may do besides keeping animals.', enum: [...roles], isArray: true })
  roles: Role[];

  @Shown({ description: 'For whom it is.', type: String, nullable: true })
  note: string | null;

  @Shown({ description: 'The administrator who made it.', type: KeeperView })
  madeBy: KeeperView;

  @Shown({ description: 'When it was made.', format: 'date-time' })
  createdAt: Date;

  @Shown({ description: 'Until when it can be used.', format: 'date-time' })
  expiresAt: Date;
}

/** A link just made. */
export class NewLinkView extends LinkView {
  @Shown({
    description:
      'The address to hand over, with the secret: shown this once. A path of this service, or a whole address where PUBLIC_URL is set.',
  })
  path: string;
}

/** What a link offers to whoever opens it. */
export class LinkOfferView {
  @Shown({ description: 'invitation: to join the club; reset: to set a new passphrase.', enum: [...linkKinds] })
  kind: LinkKind;

  @Shown({ description: 'Name of the club.' })
  club: string;

  @Shown({ description: 'Whose passphrase it sets; null for an invitation.', type: String, nullable: true })
  name: string | null;

  @Shown({ description: 'Until when it can be used.', format: 'date-time' })
  expiresAt: Date;
}
