import type { PhotographView, Sex, SexBasis } from '$shared/vocabulary.ts';
import { api, newKey } from '../api/client.ts';
import type { ChangedTogether, Individual, Photograph } from '../api/types.ts';
import { nameOf } from '../keys/action.ts';
import { today } from '../ui/dates.ts';
import { dateProblem } from '../ui/typed-dates.ts';
import { sizeProblem } from '../ui/file-sizes.ts';
import { FormState } from '../ui/form-state.svelte.ts';
import { kept } from '../ui/kept.ts';

/** What one does on a round. */
export const tasks = ['sex', 'measure', 'remark', 'move', 'photograph'] as const;
export type Task = (typeof tasks)[number];

const storageKey = 'linekeeper.round';

interface Typed {
  sex: Sex | '';
  length: string;
  mass: string;
  remark: string;
}
const nothing: Typed = { sex: '', length: '', mass: '', remark: '' };

/**
 * What is written of one animal on a round. Day, tasks, how the sex is known, where they go to live and the side that is photographed stay from
 * one animal to the next.
 */
export class RoundEntry {
  tasks = $state.raw<readonly Task[]>(['sex', 'measure', 'remark']);
  on = $state(today());
  sexBasis = $state<SexBasis | ''>('looks');
  pairingId = $state('');
  view = $state<PhotographView>('back');
  typed = $state<Typed>({ ...nothing });
  file = $state.raw<File | null>(null);
  /** What was typed for the animal before. */
  last = $state.raw<Typed | null>(null);
  readonly form = new FormState((pointer) => /^\/(fields|move|remark|file)\//.test(`${pointer}/`));
  #sent = { what: '', key: '' };

  /** Begins with the tasks of the address, else with those of the last round on this device. */
  begin(asked: string | null): void {
    const wanted = asked ?? kept.get(storageKey) ?? '';
    const known = tasks.filter((task) => wanted.split(',').includes(task));
    if (known.length > 0) this.tasks = known;
  }

  /** Does a task on this round, or no more. */
  toggle(task: Task): void {
    this.tasks = tasks.filter((other) => (other === task) !== this.tasks.includes(other));
    kept.set(storageKey, this.tasks.join(','));
  }

  does(task: Task): boolean {
    return this.tasks.includes(task);
  }

  /** The same as for the animal before. */
  repeat(): void {
    if (this.last) this.typed = { ...this.last };
  }

  clear(): void {
    this.typed = { ...nothing };
    this.file = null;
    this.form.clear();
  }

  /**
   * Writes what was typed of an animal: one change, and a photograph. Gives what was written, in words, and the answers that can be undone; null
   * where nothing was typed; undefined where it was refused.
   */
  async write(animal: Individual): Promise<{ words: string; answers: object[] } | null | undefined> {
    const problems = this.#problems();
    if (Object.keys(problems).length > 0) {
      await this.form.refuse(problems);
      return undefined;
    }
    const change = this.#change(animal);
    const { file } = this;
    if (change === null && file === null) return null;
    const what = JSON.stringify([animal.id, animal.version, change, file?.name, file?.size]);
    if (this.#sent.what !== what) this.#sent = { what, key: newKey() };
    const { key } = this.#sent;
    return this.form.run(async () => {
      const answers: object[] = [];
      if (change !== null) {
        const body = { animals: [{ id: animal.id, version: animal.version }], ...change };
        answers.push(await api.post<ChangedTogether>('/individuals/changes', body, { idempotencyKey: key }));
      }
      if (file !== null) answers.push(await this.#photograph(animal, file, key));
      this.last = { ...this.typed };
      return { words: `Written down for ${nameOf(animal)}.`, answers };
    });
  }

  async #photograph(animal: Individual, file: File, key: string): Promise<Photograph> {
    const body = new FormData();
    body.set('individualId', animal.id);
    body.set('view', this.view);
    body.set('takenOn', this.on.trim());
    body.set('file', file);
    return api.post<Photograph>('/photographs', body, { idempotencyKey: `${key}-photograph` });
  }

  #change(animal: Individual): object | null {
    const { sex, length, mass, remark } = this.typed;
    const on = this.on.trim();
    const isSexed = this.does('sex') && sex !== '' && sex !== animal.sex;
    const [svlMm, massG] = this.does('measure') ? [numberIn(length), numberIn(mass)] : [null, null];
    const text = this.does('remark') ? remark.trim() : '';
    const isMeasured = svlMm !== null || massG !== null;
    const isMoved = this.does('move') && this.pairingId !== '' && !livesIn(animal, this.pairingId);
    const change = {
      ...(isSexed
        ? { fields: sex === 'unsexed' ? { sex } : { sex, sexBasis: this.sexBasis || null, sexedOn: on } }
        : {}),
      ...(isMoved ? { move: { pairingId: this.pairingId, on } } : {}),
      ...(isMeasured || text !== ''
        ? { remark: { kind: isMeasured ? 'measurement' : 'note', observedOn: on, text: text || null, svlMm, massG } }
        : {}),
    };
    return Object.keys(change).length === 0 ? null : change;
  }

  #problems(): Record<string, string> {
    const { length, mass } = this.typed;
    const found: Record<string, string | undefined> = {
      '/on': this.on.trim() === '' ? 'Write the day, such as 2026-03-01.' : dateProblem(this.on),
      '/remark/svlMm': Number.isNaN(numberIn(length)) ? 'Write millimetres as a number, such as 22.4.' : undefined,
      '/remark/massG': Number.isNaN(numberIn(mass)) ? 'Write grams as a number, such as 1.9.' : undefined,
      '/file': this.file === null ? undefined : (sizeProblem(this.file) ?? undefined),
    };
    return Object.fromEntries(Object.entries(found).filter((one): one is [string, string] => one[1] !== undefined));
  }
}

const numberIn = (typed: string): number | null =>
  typed.trim() === '' ? null : Number(typed.trim().replace(',', '.'));

const livesIn = (animal: Individual, pairingId: string): boolean =>
  animal.pairings.some((stay) => stay.id === pairingId && stay.left === null);
