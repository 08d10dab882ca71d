import { calculateJwkThumbprint } from 'jose';
import { listOf, object, oneOf, orNull, text, ShapeProblem } from './shape.ts';

/** A public key with which sheets are checked (RFC 8037), and when it was in use. */
export interface SheetKey {
  /** Its thumbprint (RFC 7638), which sheets name it by. */
  readonly kid: string;
  /** The key itself, base64url. */
  readonly x: string;
  /** Since when it signs sheets, RFC 3339. */
  readonly usedFrom: string;
  /** Until when it did; null while it does. */
  readonly usedUntil: string | null;
}

/** The keys of a register as they are published: a JWK set (RFC 7517) with two members of our own. */
export interface PublishedKeys {
  readonly keys: readonly (SheetKey & {
    readonly kty: 'OKP';
    readonly crv: 'Ed25519';
    readonly alg: 'EdDSA';
    readonly use: 'sig';
  })[];
}

/** Keys as a register publishes them at its well-known address. */
export function publishedKeys(keys: readonly SheetKey[]): PublishedKeys {
  return {
    keys: keys.map(({ kid, x, usedFrom, usedUntil }) => ({
      kty: 'OKP',
      crv: 'Ed25519',
      alg: 'EdDSA',
      use: 'sig',
      kid,
      x,
      usedFrom,
      usedUntil,
    })),
  };
}

const base64url = text(43, { least: 43, pattern: /^[\w-]+$/u, wanted: 'base64url' });
// members that are not known are left to those who know them (RFC 7517, 4)
const publishedKey = object(
  {
    kty: oneOf(['OKP']),
    crv: oneOf(['Ed25519']),
    alg: oneOf(['EdDSA']),
    use: oneOf(['sig']),
    kid: base64url,
    x: base64url,
    usedFrom: text(40),
    usedUntil: orNull(text(40)),
  },
  'ignored',
);
const keySet = object({ keys: listOf(publishedKey, 1000) }, 'ignored');

/**
 * Reads the published keys of a register. A key under a name that is not its own thumbprint is refused.
 *
 * @throws ShapeProblem saying what is wrong, and where
 */
export async function readPublishedKeys(value: unknown): Promise<SheetKey[]> {
  const { keys } = keySet(value);
  for (const [place, { kid, x, usedFrom, usedUntil }] of keys.entries()) {
    if (kid !== (await thumbprintOf(x))) throw new ShapeProblem(`/keys/${place}/kid is not the thumbprint of the key.`);
    if ([usedFrom, usedUntil ?? usedFrom].some((time) => Number.isNaN(Date.parse(time))))
      throw new ShapeProblem(`/keys/${place} does not say when it was in use.`);
  }
  return keys.map(({ kid, x, usedFrom, usedUntil }) => ({ kid, x, usedFrom, usedUntil }));
}

/** The thumbprint (RFC 7638, SHA-256) of an Ed25519 public key, base64url. */
export function thumbprintOf(x: string): Promise<string> {
  return calculateJwkThumbprint({ kty: 'OKP', crv: 'Ed25519', x }, 'sha256');
}
