import { createHash, randomBytes } from 'node:crypto';

/** What a program's token begins with, so that one that leaked can be found in texts. */
export const tokenPrefix = 'lk_';

/** A secret that nobody can guess: 256 random bits, in letters that an address can hold. */
export function randomSecret(): string {
  return randomBytes(32).toString('base64url');
}

/** What is stored in place of a random secret: it cannot be turned back, and needs no salt, being random itself. */
export function hashOfSecret(secret: string): Buffer {
  return createHash('sha256').update(secret).digest();
}
