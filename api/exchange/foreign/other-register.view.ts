import { Shown } from '../../platform/fields.ts';
import { WithdrawnView } from '../../register/record.view.ts';

/** A key with which sheets of another register are checked. */
export class OtherKeyView {
  @Shown({ description: 'Its thumbprint (RFC 7638, SHA-256), base64url.' })
  kid: string;

  @Shown({ description: 'Since when it signs sheets, RFC 3339.', format: 'date-time' })
  usedFrom: string;

  @Shown({ description: 'Until when it did; null while it does.', type: String, format: 'date-time', nullable: true })
  usedUntil: string | null;
}

/** The register of another club, whose sheets are believed by their keys. */
export class OtherRegisterView {
  @Shown({ description: 'Id.', format: 'uuid' })
  id: string;

  @Shown({ description: 'What it is called here.' })
  name: string;

  @Shown({ description: 'Where people find it.', type: String, nullable: true })
  address: string | null;

  @Shown({ description: 'Its keys.', type: [OtherKeyView] })
  keys: OtherKeyView[];

  @Shown({ description: 'The registrar who vouched for the keys.' })
  keeper: string;

  @Shown({ description: 'When, RFC 3339 in UTC.', format: 'date-time' })
  createdAt: string;

  @Shown({ description: 'Set where its sheets are believed no more.', type: WithdrawnView, nullable: true })
  withdrawn: WithdrawnView | null;
}
