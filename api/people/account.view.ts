import { Shown } from '../platform/fields.ts';
import { tokenScopes, type TokenScope } from './account.dto.ts';

/** A token for a program. Its secret is not kept. */
export class TokenView {
  @Shown({ description: 'Id of the token.', format: 'uuid' })
  id: string;

  @Shown({ description: 'What it is for.' })
  name: string;

  @Shown({ description: 'read: for reading only; write: for all that the keeper may do.', enum: [...tokenScopes] })
  scope: TokenScope;

  @Shown({ description: 'When it was made.', format: 'date-time' })
  createdAt: Date;

  @Shown({ description: 'When it ends; null: when it is revoked.', format: 'date-time', type: String, nullable: true })
  expiresAt: Date | null;

  @Shown({
    description: 'When it was last used, to the minute; null: never.',
    format: 'date-time',
    type: String,
    nullable: true,
  })
  lastUsedAt: Date | null;
}

/** A token just made. */
export class NewTokenView extends TokenView {
  @Shown({ description: 'The secret, for the header Authorization: Bearer; shown this once. It begins with lk_.' })
  token: string;
}
