import { api } from '../api/client.ts';
import { Intent } from '../api/intent.ts';
import { ProblemError } from '../api/problem.ts';
import type { Clutch, Individual, IndividualItem, Transfer } from '../api/types.ts';
import type { Member } from '../people/people-types.ts';
import { session } from '../people/session.svelte.ts';
import { today } from '../ui/dates.ts';
import { dateProblem } from '../ui/typed-dates.ts';
import { FormState } from '../ui/form-state.svelte.ts';

/** An animal that can be given. */
export type Giveable = Pick<
  IndividualItem,
  'id' | 'number' | 'code' | 'sex' | 'status' | 'hatched' | 'keeperId' | 'withdrawn'
>;

/** Most animals of one transfer. */
const MOST = 200;

/** A transfer while it is written: which animals, to whom, when. */
export class TransferDraft {
  animals = $state<Giveable[]>([]);
  /** Ids of those that pass. */
  chosen = $state<string[]>([]);
  where = $state<'keeper' | 'away'>('keeper');
  to = $state('');
  leftTo = $state('');
  date = $state('');
  note = $state('');
  members = $state.raw<Member[]>([]);
  /** The clutch that they come from, in words. */
  clutch = $state('');
  /** How many of those asked for cannot be given. */
  left = $state(0);
  readonly form = new FormState((pointer) => ['/to', '/leftTo', '/date', '/note', '/animals'].includes(pointer));
  readonly #intent = new Intent();

  /** Reads the keepers of the club, and the animals or the clutch that were asked for; what is picked or typed meanwhile stays. */
  async read(animalIds: readonly string[], clutchId: string | null): Promise<void> {
    try {
      await Promise.all([this.#readMembers(), this.#readAsked(animalIds, clutchId)]);
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      await this.form.take(error);
    }
  }

  async #readMembers(): Promise<void> {
    const members = await api.all<Member>('/keepers');
    this.members = members.filter(({ id, leftAt }) => leftAt === null && id !== session.keeper?.id);
  }

  async #readAsked(animalIds: readonly string[], clutchId: string | null): Promise<void> {
    const found: Giveable[] = clutchId
      ? await this.#young(clutchId)
      : await Promise.all(
          animalIds.slice(0, MOST).map((id) => api.get<Individual>(`/individuals/${encodeURIComponent(id)}`)),
        );
    const fit = found.filter(isGiveable);
    this.left = found.length - fit.length;
    const picked = this.animals.filter(({ id }) => !fit.some((animal) => animal.id === id));
    const chosen = this.chosen.filter((id) => picked.some((animal) => animal.id === id));
    this.animals = [...fit, ...picked];
    this.chosen = [...fit.slice(0, MOST).map(({ id }) => id), ...chosen];
  }

  async #young(clutchId: string): Promise<Giveable[]> {
    const clutch = await api.get<Clutch>(`/clutches/${encodeURIComponent(clutchId)}`);
    this.clutch = clutch.title;
    // those that died or left long ago are no part of the question
    return clutch.young.filter(({ status }) => status === 'alive');
  }

  /** Adds one that was looked for. */
  add(animal: Giveable): void {
    if (this.animals.some(({ id }) => id === animal.id)) return;
    this.animals.push(animal);
    this.chosen.push(animal.id);
  }

  /** Chooses all, or none where all are chosen. */
  turnAll(): void {
    this.chosen = this.chosen.length === this.animals.length ? [] : this.animals.slice(0, MOST).map(({ id }) => id);
  }

  problems(): Record<string, string> {
    const found: Record<string, string> = {};
    if (this.chosen.length === 0) found['/animals'] = 'Choose at least one animal.';
    if (this.chosen.length > MOST) found['/animals'] = `At most ${MOST} animals pass at once. Give the others next.`;
    if (this.where === 'keeper' && this.to === '') found['/to'] = 'Choose the keeper who gets them.';
    const wrong = dateProblem(this.date);
    if (wrong) found['/date'] = wrong;
    return found;
  }

  /** Sends it; gives undefined where it was refused. */
  send(): Promise<Transfer | undefined> {
    const date = this.date.trim();
    const isAway = this.where === 'away';
    const body = {
      ...(isAway ? { leftTo: this.leftTo.trim() || null } : { to: this.to }),
      animals: this.chosen,
      date: date || (isAway ? today() : null),
      note: this.note.trim() || null,
    };
    return this.form.run(() => this.#intent.post<Transfer>('/transfers', body));
  }
}

/** Whether whoever is signed in may give an animal. */
export function isGiveable(animal: Giveable): boolean {
  return animal.status === 'alive' && !animal.withdrawn && session.may('change', 'individual', animal);
}
