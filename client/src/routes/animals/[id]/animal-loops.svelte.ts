// Maps and sets here are replaced whole, never changed in place.
/* eslint-disable svelte/prefer-svelte-reactivity */
import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { InbreedingLoop, InbreedingLoops, LoopAncestor } from '$lib/api/types.ts';
import type { LoopsThrough, ShownLoops } from '$lib/charts/ancestors/shown-loops.ts';

/** Loops that the first answer lists, of all common ancestors; what it leaves out is asked for by common ancestor. */
const atFirst = { most: 60, ancestors: 100 };
/** Common ancestors that are named before more are asked for. */
const namedAtFirst = 8;
/** Loops of one common ancestor that are shown at first, and when more are wanted: as many as the service lists. */
const shown = { first: 10, most: 200 };

/** The loops that F of one animal arises through, as far as they were read, and which of them is looked at. */
export class AnimalLoops implements ShownLoops {
  answer = $state.raw<InbreedingLoops | null>(null);
  problem = $state('');
  /** How many common ancestors are named before the rest. */
  named = $state(namedAtFirst);
  /** Common ancestors whose loops are open, by key. */
  open = $state.raw<ReadonlySet<string>>(new Set());
  /** The common ancestor, or one loop of it, that the chart is to light. */
  chosen = $state.raw<LoopsThrough | null>(null);
  /** Answers about one common ancestor, by key. */
  #more = $state.raw<ReadonlyMap<string, InbreedingLoops>>(new Map());
  #path = '';
  #asked: symbol | null = null;

  /** Reads them for the animal at this address; what was open stays open for the same one. */
  async read(path: string): Promise<void> {
    const asked = (this.#asked = Symbol());
    if (path !== this.#path) {
      this.answer = null;
      this.open = new Set();
      this.named = namedAtFirst;
    }
    this.#path = path;
    this.chosen = null;
    this.#more = new Map();
    await this.#guarded(asked, async () => {
      const answer = await api.get<InbreedingLoops>(`${path}/lineage/loops`, { query: atFirst });
      if (this.#isLatest(asked)) this.answer = answer;
    });
    for (const ancestor of this.answer?.ancestors ?? [])
      if (this.open.has(keyOf(ancestor)) && this.#isLatest(asked)) await this.#complete(ancestor);
  }

  /** Opens or closes the loops of a common ancestor; opened, all of them are lit. */
  async toggle(ancestor: LoopAncestor): Promise<void> {
    const key = keyOf(ancestor);
    const open = new Set(this.open);
    if (!open.delete(key)) open.add(key);
    this.open = open;
    if (!open.has(key)) {
      if (this.chosen && keyOf(this.chosen.ancestor) === key) this.chosen = null;
      return;
    }
    const all = this.through(ancestor);
    this.chosen = all;
    await this.#complete(ancestor);
    this.#chooseInPlaceOf(all, this.through(ancestor));
  }

  /** Whatever else was chosen meanwhile stays chosen. */
  #chooseInPlaceOf(before: LoopsThrough, now: LoopsThrough): void {
    if (this.chosen === before) this.chosen = now;
  }

  /** Lights one loop, or puts it away again. */
  choose(through: LoopsThrough, loop: InbreedingLoop): void {
    this.chosen = this.isChosen(loop) ? null : { ...through, loops: [loop] };
  }

  isChosen(loop: InbreedingLoop): boolean {
    return this.chosen?.loops.length === 1 && this.chosen.loops[0] === loop;
  }

  through(ancestor: LoopAncestor): LoopsThrough {
    const answer = this.#more.get(keyOf(ancestor)) ?? this.answer;
    const place = answer?.ancestors.findIndex((one) => keyOf(one) === keyOf(ancestor)) ?? -1;
    const told = answer?.ancestors[place];
    if (!answer || !told) throw new Error('The loops of a common ancestor were asked for that no answer names.');
    return { answer, ancestor: told, loops: answer.loops.filter(({ commonAncestor }) => commonAncestor === place) };
  }

  /** Whether more of its loops can be asked for than are there. */
  hasMore(ancestor: LoopAncestor): boolean {
    const { loops } = this.through(ancestor);
    return !isPrivate(ancestor) && loops.length < Math.min(ancestor.loops ?? Infinity, shown.most);
  }

  /** Reads as many as the service lists. */
  async readMore(ancestor: LoopAncestor): Promise<void> {
    const before = this.chosen;
    await this.#readThrough(ancestor, shown.most);
    if (before && before.loops.length > 1) this.#chooseInPlaceOf(before, this.through(ancestor));
  }

  /** The first answer lists the largest loops of all: of one common ancestor they may be few. */
  async #complete(ancestor: LoopAncestor): Promise<void> {
    const { loops } = this.through(ancestor);
    if (this.hasMore(ancestor) && loops.length < shown.first) await this.#readThrough(ancestor, shown.first);
  }

  async #readThrough(ancestor: LoopAncestor, most: number): Promise<void> {
    const asked = this.#asked;
    const query = { most, ancestors: atFirst.ancestors, commonAncestor: keyOf(ancestor) };
    await this.#guarded(asked, async () => {
      const answer = await api.get<InbreedingLoops>(`${this.#path}/lineage/loops`, { query });
      const isThere = answer.ancestors.some((one) => keyOf(one) === keyOf(ancestor));
      if (isThere && this.#isLatest(asked)) this.#more = new Map(this.#more).set(keyOf(ancestor), answer);
    });
  }

  /** Whether no other reading has begun since. */
  #isLatest(asked: symbol | null): boolean {
    return asked === this.#asked;
  }

  async #guarded(asked: symbol | null, work: () => Promise<void>): Promise<void> {
    try {
      await work();
      if (this.#isLatest(asked)) this.problem = '';
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      if (this.#isLatest(asked)) this.problem = error.detail;
    }
  }
}

/** What tells a common ancestor from the others of an answer, and, where none of it is private, names it in a request. */
export function keyOf({ ancestor, unknownParentOf, sources }: LoopAncestor): string {
  return ancestor?.id ?? unknownParentOf?.id ?? (sources ?? []).map(({ id }) => id).join(',');
}

function isPrivate({ ancestor, unknownParentOf, sources }: LoopAncestor): boolean {
  return [ancestor, unknownParentOf, ...(sources ?? [])].some((record) => record?.isPrivate === true);
}
