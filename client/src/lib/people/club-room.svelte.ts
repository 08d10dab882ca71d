import type { Role } from '$shared/vocabulary.ts';
import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import { undoOffer } from '../ui/undo.svelte.ts';
import type { MadeLink, Member, SignInLink } from './people-types.ts';
import { session } from './session.svelte.ts';

/** The people of the club, and the links by which others come in or come back. */
export class ClubRoom {
  members = $state.raw<Member[]>([]);
  links = $state.raw<SignInLink[]>([]);
  /** The link just made: its address is told this once. */
  made = $state.raw<MadeLink | null>(null);
  problem = $state('');

  readonly present = $derived(this.members.filter((member) => member.leftAt === null));
  readonly former = $derived(this.members.filter((member) => member.leftAt !== null));

  async read(): Promise<void> {
    try {
      this.members = await api.all<Member>('/keepers');
      if (session.may('read', 'link')) this.links = await api.all<SignInLink>('/links');
      this.problem = '';
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      this.problem = error.detail;
    }
  }

  /** Makes a link for somebody who is not a member yet. Throws `ProblemError`. */
  async invite(note: string, roles: Role[]): Promise<void> {
    this.made = await api.post<MadeLink>('/links', { kind: 'invitation', roles, note: note || null });
    await this.read();
  }

  /** Makes a link by which a member sets a new passphrase. Throws `ProblemError`. */
  async makeReset(member: Member): Promise<void> {
    this.made = await api.post<MadeLink>('/links', { kind: 'reset', keeperId: member.id });
    await this.read();
  }

  /** Takes a link back: whoever opens it is told that it is closed. Throws `ProblemError`. */
  async revoke(link: SignInLink): Promise<void> {
    await api.delete(`/links/${link.id}`);
    if (this.made?.id === link.id) this.made = null;
    await this.read();
    undoOffer.say('The link is taken back.');
  }

  /** Throws `ProblemError`. */
  async setRoles(member: Member, roles: Role[]): Promise<void> {
    const answer = await api.patch<Member>(`/keepers/${member.id}`, { roles }, { version: member.version });
    await this.#settle(`The roles of ${member.name} are changed.`, answer);
  }

  /** The member leaves: signing in ends, the records stay. Throws `ProblemError`. */
  async depart(member: Member): Promise<void> {
    const answer = await api.post<Member>(`/keepers/${member.id}/departure`, {}, { version: member.version });
    await this.#settle(`${member.name} has left the club.`, answer);
  }

  /** Throws `ProblemError`. */
  async takeBack(member: Member): Promise<void> {
    const answer = await api.delete<Member>(`/keepers/${member.id}/departure`, { version: member.version });
    await this.#settle(`${member.name} is a member again.`, answer);
  }

  async #settle(words: string, answer: unknown): Promise<void> {
    undoOffer.offer(words, answer, () => this.#readAll());
    await this.#readAll();
  }

  /** Own roles may have changed too. */
  async #readAll(): Promise<void> {
    await Promise.all([this.read(), session.read()]);
  }
}

/** The address that a made link is handed over by. */
export const addressOfLink = (link: MadeLink): string =>
  /^https?:/.test(link.path) ? link.path : location.origin + link.path;
