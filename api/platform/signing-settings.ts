import { createPrivateKey, createPublicKey, type KeyObject } from 'node:crypto';
import { resolve } from 'node:path';

/** With which key provenance sheets are signed. */
export interface SigningSettings {
  /** The private key that was set; null: it lies in signingKeyFile. */
  readonly signingKey: SigningKey | null;
  /** The file with the private key, absolute. */
  readonly signingKeyFile: string;
  /** Whether a missing file is made, with a new key in it; a file that somebody named has to be there. */
  readonly isSigningKeyMade: boolean;
}

/** A private key for Ed25519 (RFC 8032), and its public part, base64url. */
export interface SigningKey {
  readonly key: KeyObject;
  readonly x: string;
}

/** Reads what is set of signing; each mistake is added to `mistakes`, never with anything of the key. */
export function readSigningSettings(
  value: (name: string) => string | undefined,
  dataDir: string,
  mistakes: string[],
): SigningSettings {
  const [text, file] = [value('SIGNING_KEY'), value('SIGNING_KEY_FILE')];
  if (text !== undefined && file !== undefined)
    mistakes.push('SIGNING_KEY and SIGNING_KEY_FILE are both set. Give the key in one of them.');
  // a variable can hardly hold line ends, so that people write them as \n
  const signingKey = text === undefined ? null : readSigningKey(text.replaceAll('\\n', '\n'));
  if (text !== undefined && signingKey === null) mistakes.push(`SIGNING_KEY ${noSigningKey}`);
  return {
    signingKey,
    signingKeyFile: resolve(file ?? `${dataDir}/signing-key.pem`),
    isSigningKeyMade: file === undefined,
  };
}

/** What is wrong with a text that is no key for signing, and what to do. */
export const noSigningKey =
  'holds no private key for Ed25519. Give one as PEM (PKCS #8), as `openssl genpkey -algorithm ed25519` writes it, or as a JWK (RFC 8037).';

/** Reads a private key for Ed25519 as PEM or JWK; null where it is none, or where its public part belongs to another key. */
export function readSigningKey(text: string): SigningKey | null {
  try {
    const trimmed = text.trim();
    const given = trimmed.startsWith('{') ? (JSON.parse(trimmed) as Record<string, string>) : null;
    const key = createPrivateKey(given ? { key: given, format: 'jwk' } : { key: trimmed, format: 'pem' });
    if (key.asymmetricKeyType !== 'ed25519') return null;
    const { x } = createPublicKey(key).export({ format: 'jwk' });
    return x === undefined || (given && given['x'] !== x) ? null : { key, x };
  } catch {
    return null;
  }
}
