import type { Request } from 'express';
import { networkOf } from '../platform/network.ts';
import type { Allowance } from '../platform/rate-limits.ts';
import { hashOfSecret } from './secrets.ts';

/** Attempts to sign in under one name from one place; given back by one that succeeds. */
export const signingIn: Allowance = { name: 'sign-in', points: 10, seconds: 900 };

/** Attempts to sign in from one place under whatever names, right or wrong: an evening of a whole club at one address fits. */
export const signingInFromOnePlace: Allowance = { name: 'sign-in-place', points: 100, seconds: 900 };

/** Attempts to set a register up from one place. */
export const settingUp: Allowance = { name: 'set-up', points: 20, seconds: 900 };

/** Attempts of one keeper to name the present passphrase when changing it. */
export const naming: Allowance = { name: 'passphrase', points: 10, seconds: 900 };

/** Who tries to sign in under a name: the name, in whatever letters, at the place. The name itself is not kept. */
export function guesserOf(request: Request, name: string): string {
  return hashOfSecret(`${networkOf(request.ip)} ${name.toLowerCase()}`).toString('base64url');
}
