import { roles, type Role } from '../../shared/vocabulary.ts';
import { ChoiceField, ChoiceListField, IdField, PassphraseField, TextField } from '../platform/fields.ts';

export const linkKinds = ['invitation', 'reset'] as const;
export type LinkKind = (typeof linkKinds)[number];

/** A link to be made. */
export class NewLinkRequest {
  @ChoiceField(linkKinds, { description: 'invitation: for a new member; reset: for a new passphrase of a member.' })
  kind: LinkKind;

  @IdField({ optional: true, nullable: true, description: 'Whose passphrase; for a reset only.' })
  keeperId?: string | null;

  @ChoiceListField(roles, {
    optional: true,
    description: 'What the new member may do besides keeping animals; for an invitation only.',
  })
  roles?: Role[];

  @TextField({ max: 120, optional: true, nullable: true, description: 'For whom it is, to know it again in the list.' })
  note?: string | null;
}

/** What whoever opened a link sends. */
export class LinkUseRequest {
  @TextField({ max: 120, optional: true, description: 'Name of the new member; for an invitation only.' })
  name?: string;

  @PassphraseField({ min: 8, max: 200, description: 'The new passphrase, 8 to 200 characters.' })
  password: string;
}
