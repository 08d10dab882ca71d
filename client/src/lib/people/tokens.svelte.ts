import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { MadeToken, Token } from './people-types.ts';

/** One's own keys for programs. */
export class Tokens {
  items = $state.raw<Token[]>([]);
  /** The token just made: its secret is told this once. */
  made = $state.raw<MadeToken | null>(null);
  problem = $state('');

  async read(): Promise<void> {
    try {
      this.items = await api.all<Token>('/account/tokens');
      this.problem = '';
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      this.problem = error.detail;
    }
  }

  /** Makes a token; `days` until it ends, null for none. Throws `ProblemError`. */
  async make(name: string, scope: Token['scope'], days: number | null): Promise<void> {
    const expiresAt = days === null ? null : daysFromNow(days);
    this.made = await api.post<MadeToken>('/account/tokens', { name, scope, expiresAt });
    await this.read();
  }

  /** Ends a token at once. Throws `ProblemError`. */
  async revoke(token: Token): Promise<void> {
    await api.delete(`/account/tokens/${token.id}`);
    if (this.made?.id === token.id) this.made = null;
    await this.read();
  }
}

/** An instant so many days from now, as the service reads it. */
function daysFromNow(days: number): string {
  const now = Date.now();
  return new Date(now + days * 86_400_000).toISOString();
}
