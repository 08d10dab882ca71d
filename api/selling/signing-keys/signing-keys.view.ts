import { Shown } from '../../platform/fields.ts';

/** A key with which sheets are or were signed. */
export class SigningKeyView {
  @Shown({ description: 'Its thumbprint (RFC 7638, SHA-256, base64url), by which sheets name it.' })
  kid: string;

  @Shown({ description: 'Since when it signs, RFC 3339 in UTC.', format: 'date-time' })
  usedFrom: Date;

  @Shown({ description: 'Until when it did; null while it does.', type: Date, format: 'date-time', nullable: true })
  usedUntil: Date | null;

  @Shown({ description: 'Why it is used no more; null while it is.', type: String, nullable: true })
  reason: string | null;

  @Shown({ description: 'Whether the copy of the service that answers signs with it.' })
  isOwn: boolean;
}

/** All of them; there are few. */
export class SigningKeysView {
  @Shown({ description: 'Every key that ever signed, the newest first.', type: [SigningKeyView] })
  items: SigningKeyView[];
}

/** A public key as it is published (RFC 7517, RFC 8037). */
export class PublishedKeyView {
  @Shown({ description: 'Kind of key.', enum: ['OKP'] })
  kty: 'OKP';

  @Shown({ description: 'Its curve.', enum: ['Ed25519'] })
  crv: 'Ed25519';

  @Shown({ description: 'The algorithm that it is for.', enum: ['EdDSA'] })
  alg: 'EdDSA';

  @Shown({ description: 'What it is for: signatures.', enum: ['sig'] })
  use: 'sig';

  @Shown({ description: 'Its thumbprint (RFC 7638), by which sheets name it.' })
  kid: string;

  @Shown({ description: 'The public key, 32 bytes, base64url.' })
  x: string;

  @Shown({ description: 'Since when it signs, RFC 3339 in UTC.', format: 'date-time' })
  usedFrom: string;

  @Shown({
    description: 'Until when it did; null while it does. What says that it was issued later is not genuine.',
    type: String,
    format: 'date-time',
    nullable: true,
  })
  usedUntil: string | null;
}

/** The public keys of the register: a JWK set. */
export class PublishedKeysView {
  @Shown({
    description: 'Every key that ever signed: what an old key signed stays genuine.',
    type: [PublishedKeyView],
  })
  keys: PublishedKeyView[];
}
