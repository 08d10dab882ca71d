import { ChoiceField, InstantField, PassphraseField, TextField } from '../platform/fields.ts';

export const tokenScopes = ['read', 'write'] as const;
export type TokenScope = (typeof tokenScopes)[number];

/** A new passphrase in place of the present one. */
export class PassphraseChangeRequest {
  @PassphraseField({ max: 200, description: 'The present passphrase.' })
  current: string;

  @PassphraseField({ min: 8, max: 200, description: 'The new passphrase, 8 to 200 characters.' })
  next: string;
}

/** A token to be made. */
export class NewTokenRequest {
  @TextField({ max: 120, description: 'What it is for, to know it again in the list.' })
  name: string;

  @ChoiceField(tokenScopes, { description: 'read: for reading only; write: for all that the keeper may do.' })
  scope: TokenScope;

  @InstantField({ optional: true, nullable: true, description: 'When it ends; null or left out: when it is revoked.' })
  expiresAt?: string | null;
}
