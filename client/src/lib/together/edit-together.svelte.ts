// Maps and sets here are replaced whole, never changed in place.
/* eslint-disable svelte/prefer-svelte-reactivity */
import type { ObservationKind, Sex, SexBasis, Status, Visibility } from '$shared/vocabulary.ts';
import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import { Intent } from '../api/intent.ts';
import type { ChangedTogether, Line, Pairing } from '../api/types.ts';
import { today } from '../ui/dates.ts';
import { dateProblem } from '../ui/typed-dates.ts';
import { FormState } from '../ui/form-state.svelte.ts';

/** An animal as a change of several needs it. */
export interface AnimalAtVersion {
  readonly id: string;
  readonly version: number;
}

/** What several animals are to become: each field empty where it stays as it is; looked at first, then written as one. */
export class EditTogether {
  sex = $state<Sex | ''>('');
  sexBasis = $state<SexBasis | ''>('');
  sexedOn = $state('');
  status = $state<Status | ''>('');
  died = $state('');
  outOfWater = $state('');
  lineId = $state('');
  visibility = $state<Visibility | ''>('');
  /** Id of the pairing that they join, `out` to leave where they live. */
  pairingId = $state('');
  movedOn = $state(today());
  remarkKind = $state<ObservationKind>('note');
  remark = $state('');
  remarkedOn = $state(today());
  lines = $state.raw<Line[]>([]);
  pairings = $state.raw<Pairing[]>([]);
  preview = $state.raw<ChangedTogether | null>(null);
  /** Those that cannot be changed are left out: chosen in so many words. */
  leavesOut = $state(false);
  readonly form = new FormState((pointer) => /^\/(fields|move|remark)\//.test(pointer));
  readonly #intent = new Intent();
  #previewOf = $state('');

  constructor(readonly animals: readonly AnimalAtVersion[]) {}

  /** What is written, without the animals; null where nothing is to change. */
  readonly change = $derived.by(() => {
    const fields = {
      ...(this.sex === '' ? {} : { sex: this.sex }),
      ...(this.sexBasis === '' ? {} : { sexBasis: this.sexBasis }),
      ...dated('sexedOn', this.sexedOn),
      ...(this.status === '' ? {} : { status: this.status }),
      ...dated('died', this.died),
      ...dated('outOfWater', this.outOfWater),
      ...(this.lineId === '' ? {} : { lineId: this.lineId === 'none' ? null : this.lineId }),
      ...(this.visibility === '' ? {} : { visibility: this.visibility }),
    };
    const move = { pairingId: this.pairingId === 'out' ? null : this.pairingId, on: this.movedOn.trim() };
    const remark = { kind: this.remarkKind, observedOn: this.remarkedOn.trim(), text: this.remark.trim() };
    const body = {
      ...(Object.keys(fields).length === 0 ? {} : { fields }),
      ...(this.pairingId === '' ? {} : { move }),
      ...(remark.text === '' ? {} : { remark }),
    };
    return Object.keys(body).length === 0 ? null : body;
  });

  /** Whether what is shown is what would be written. */
  readonly isFresh = $derived(this.preview !== null && JSON.stringify(this.change) === this.#previewOf);
  readonly refused = $derived(this.preview?.items.filter(({ outcome }) => outcome === 'refused') ?? []);
  readonly changing = $derived(this.preview?.items.filter(({ outcome }) => outcome === 'changes') ?? []);
  readonly mayWrite = $derived(
    this.isFresh && this.changing.length > 0 && (this.refused.length === 0 || this.leavesOut),
  );

  /** Reads the lines and pairings that can be chosen; one can go on with the other fields meanwhile. */
  async readLists(): Promise<void> {
    try {
      [this.lines, this.pairings] = await Promise.all([api.all<Line>('/lines'), api.all<Pairing>('/pairings')]);
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      await this.form.take(error);
    }
  }

  /** Asks what would become of each of the animals. */
  async look(): Promise<void> {
    const problems = this.#problems();
    if (Object.keys(problems).length > 0) return this.form.refuse(problems);
    const { change } = this;
    const preview = await this.form.run(() =>
      api.ask<ChangedTogether>('/individuals/changes', this.#body(this.animals, change), { query: { dryRun: true } }),
    );
    if (!preview) return;
    this.preview = preview;
    this.#previewOf = JSON.stringify(change);
    this.leavesOut = false;
  }

  /** Changes the animals that can be; exactly those that were shown. Undefined where it was refused. */
  async write(): Promise<ChangedTogether | undefined> {
    if (!this.mayWrite) return undefined;
    const changing = new Set(this.changing.map(({ id }) => id));
    const animals = this.animals.filter(({ id }) => changing.has(id));
    const { change } = this;
    return this.form.run(() => this.#intent.post<ChangedTogether>('/individuals/changes', this.#body(animals, change)));
  }

  #body(animals: readonly AnimalAtVersion[], change: EditTogether['change']): object {
    return { animals: animals.map(({ id, version }) => ({ id, version })), ...change };
  }

  #problems(): Record<string, string> {
    const found: Record<string, string | undefined> = {
      '/fields/sexedOn': dateProblem(this.sexedOn),
      '/fields/died': dateProblem(this.died),
      '/fields/outOfWater': dateProblem(this.outOfWater),
      '/move/on': this.pairingId === '' ? undefined : dayProblem(this.movedOn),
      '/remark/observedOn': this.remark.trim() === '' ? undefined : dayProblem(this.remarkedOn),
      '/fields/sex': this.change === null ? 'Choose what is to change.' : undefined,
    };
    return Object.fromEntries(Object.entries(found).filter((one): one is [string, string] => one[1] !== undefined));
  }
}

const dated = (name: string, typed: string): Record<string, string> =>
  typed.trim() === '' ? {} : { [name]: typed.trim() };

const dayProblem = (typed: string): string | undefined =>
  typed.trim() === '' ? 'Write the day, such as 2026-03-01.' : dateProblem(typed);
