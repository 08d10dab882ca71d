import type { PhotographView, Sex, SexBasis } from '$shared/vocabulary.ts';
import { api, newKey } from '../api/client.ts';
import { Intent } from '../api/intent.ts';
import { ProblemError } from '../api/problem.ts';
import type { ChangedTogether, Individual, Observation, Photograph } from '../api/types.ts';
import { nameOf } from '../keys/action.ts';
import { connection } from '../offline/connection.svelte.ts';
import { saidInWords } from '../offline/entry-words.ts';
import { answersWithin, type QueueEntry } from '../offline/queue-entry.ts';
import type { Written } from '../offline/waiting.svelte.ts';
import { writeOrWait } from '../offline/write-or-wait.ts';
import { NoteDraft } from '../records/note-draft.svelte.ts';
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

/** What was written of an animal. */
export interface RoundWritten {
  words: string;
  /** The answers that can be undone. */
  answers: object[];
  /** Its measurements and remark, where they wait on this device. */
  waits: QueueEntry | null;
  /** Whether nothing of it stays in the form: what wants a connection does where there is none. */
  isWhole: boolean;
}

/** What stays from one animal to the next, and from one round to the next: day, tasks, how the sex is known, where they go to live, the side photographed. */
export class RoundStays {
  tasks = $state.raw<readonly Task[]>(['sex', 'measure', 'remark']);
  on = $state(today());
  sexBasis = $state<SexBasis | ''>('looks');
  pairingId = $state('');
  view = $state<PhotographView>('back');
  /** What was typed for the animal before. */
  last = $state.raw<Typed | null>(null);

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
}

/** What is written of one animal on a round. */
export class RoundEntry {
  typed = $state<Typed>({ ...nothing });
  file = $state.raw<File | null>(null);
  readonly form = new FormState((pointer) => /^\/(fields|move|file|observedOn|text|svlMm|massG)\//.test(`${pointer}/`));
  readonly #noting = new Intent();
  /** Repeats of one request carry the key that it had. */
  #keys: Readonly<Record<string, string>> = {};

  constructor(readonly stays: RoundStays) {}

  /** The same as for the animal before. */
  repeat(): void {
    if (this.stays.last) this.typed = { ...this.stays.last };
  }

  clear(): void {
    this.typed = { ...nothing };
    this.file = null;
    this.#keys = {};
    this.form.clear();
  }

  /**
   * Writes what was typed of an animal. Sex, home and photograph want a connection; measurements and remark wait on this device where there is
   * none. Gives null where nothing was typed, undefined where it was refused.
   */
  async write(animal: Individual): Promise<RoundWritten | null | undefined> {
    if (this.form.busy) return undefined;
    const problems = this.#problems();
    if (Object.keys(problems).length > 0) {
      await this.form.refuse(problems);
      return undefined;
    }
    // what the hand types until the answer comes is not what is written
    const typed = { ...this.typed };
    const note = this.#note(animal);
    const online = this.#online(animal);
    if (note === null && online.length === 0) return null;
    return this.form.run(async () => {
      const answers: object[] = [];
      try {
        // nothing is tried for ten seconds that has no way to go, while the rest could wait on the device at once
        if (online.length > 0 && note !== null && connection.isOff) throw new ProblemError(0, { detail: onlyOnline });
        for (const send of online) answers.push(await send());
      } catch (error) {
        if (!(error instanceof ProblemError) || error.status !== 0) throw error;
        if (note === null) throw new ProblemError(0, { detail: onlyOnline });
        const done = await writeOrWait<Observation>(this.#noting, note);
        this.stays.last = typed;
        Object.assign(this.typed, { length: '', mass: '', remark: '' });
        this.form.summary = `What was measured and seen is kept. ${onlyOnline}`;
        return written(animal, [...answers, ...(done.written ? [done.written] : [])], done.waits, false);
      }
      const done = note === null ? null : await writeOrWait<Observation>(this.#noting, note);
      if (done?.written) answers.push(done.written);
      this.stays.last = typed;
      return written(animal, answers, done?.waits, true);
    });
  }

  /** What only the register itself can take, in the order in which it goes. */
  #online(animal: Individual): (() => Promise<object>)[] {
    const change = this.#change(animal);
    const { file } = this;
    return [
      ...(change === null ? [] : [() => this.#changed(animal, change)]),
      ...(file === null ? [] : [this.#photograph(animal, file)]),
    ];
  }

  #changed(animal: Individual, change: object): Promise<ChangedTogether> {
    const body = { animals: [{ id: animal.id, version: animal.version }], ...change };
    const idempotencyKey = this.#keyOf(JSON.stringify(body));
    return api.post<ChangedTogether>('/individuals/changes', body, { idempotencyKey, patience: answersWithin });
  }

  #photograph(animal: Individual, file: File): () => Promise<Photograph> {
    const body = new FormData();
    body.set('individualId', animal.id);
    body.set('view', this.stays.view);
    body.set('takenOn', this.stays.on.trim());
    body.set('file', file);
    const what = [animal.id, this.stays.view, this.stays.on, file.name, file.size, file.lastModified];
    const idempotencyKey = this.#keyOf(JSON.stringify(what));
    return () => api.post<Photograph>('/photographs', body, { idempotencyKey });
  }

  #keyOf(what: string): string {
    const key = this.#keys[what] ?? newKey();
    this.#keys = { ...this.#keys, [what]: key };
    return key;
  }

  /** Sex and home. */
  #change(animal: Individual): object | null {
    const { sex } = this.typed;
    const { pairingId, sexBasis } = this.stays;
    const on = this.stays.on.trim();
    const isSexed = this.stays.does('sex') && sex !== '' && sex !== animal.sex;
    const isMoved = this.stays.does('move') && pairingId !== '' && !livesIn(animal, pairingId);
    if (!isSexed && !isMoved) return null;
    return {
      ...(isSexed ? { fields: sex === 'unsexed' ? { sex } : { sex, sexBasis: sexBasis || null, sexedOn: on } } : {}),
      ...(isMoved ? { move: { pairingId, on } } : {}),
    };
  }

  /** Measurements and remark, as they are sent or wait. */
  #note(animal: Individual): Written | null {
    const [isMeasured, isRemarked] = [this.stays.does('measure'), this.stays.does('remark')];
    const draft = new NoteDraft();
    draft.observedOn = this.stays.on;
    draft.length = isMeasured ? this.typed.length : '';
    draft.mass = isMeasured ? this.typed.mass : '';
    draft.text = isRemarked ? this.typed.remark : '';
    if (`${draft.length}${draft.mass}${draft.text}`.trim() === '') return null;
    const body = { individualId: animal.id, ...draft.body() };
    return {
      kind: 'note',
      method: 'POST',
      path: '/observations',
      record: `individuals/${animal.id}`,
      name: nameOf(animal),
      words: saidInWords(body),
      draft: draft.capture(),
      base: null,
      version: null,
      body,
    };
  }

  #problems(): Record<string, string> {
    const { length, mass } = this.typed;
    const { on } = this.stays;
    const found: Record<string, string | undefined> = {
      '/observedOn': on.trim() === '' ? 'Write the day, such as 2026-03-01.' : dateProblem(on),
      '/svlMm': isNoNumber(length) ? 'Write millimetres as a number, such as 22.4.' : undefined,
      '/massG': isNoNumber(mass) ? 'Write grams as a number, such as 1.9.' : undefined,
      '/file': this.file === null ? undefined : (sizeProblem(this.file) ?? undefined),
    };
    return Object.fromEntries(Object.entries(found).filter((one): one is [string, string] => one[1] !== undefined));
  }
}

const onlyOnline =
  'Sex, home and photographs can only be written down with a connection. They stay here: write them down again when there is one.';

function written(animal: Individual, answers: object[], waits: QueueEntry | undefined, isWhole: boolean): RoundWritten {
  const words = waits ? `Kept on this device for ${nameOf(animal)}.` : `Written down for ${nameOf(animal)}.`;
  return { words, answers, waits: waits ?? null, isWhole };
}

const isNoNumber = (typed: string): boolean => Number.isNaN(Number(typed.trim().replace(',', '.')));

const livesIn = (animal: Individual, pairingId: string): boolean =>
  animal.pairings.some((stay) => stay.id === pairingId && stay.left === null);
