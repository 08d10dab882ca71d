import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { Club } from '../api/types.ts';

/** The club whose register this is and the keeper who acts; read once when the client starts. */
class ClubState {
  now = $state.raw<Club | null>(null);
  problem = $state('');

  async read(): Promise<void> {
    try {
      this.now = await api.get<Club>('/club');
      this.problem = '';
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      this.problem = error.detail;
    }
  }
}

export const club = new ClubState();
