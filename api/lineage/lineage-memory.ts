import type pg from 'pg';
import { applyChanges, type Touched } from './apply-changes.ts';
import { ClutchColumns, type ClutchKnowledge } from './clutch-columns.ts';
import { Column } from './column.ts';
import { writeFacts, type FounderKinds } from './kernel/clutch-facts.ts';
import { orderPedigree, type PedigreeOrder } from './kernel/order.ts';
import type { Pedigree } from './kernel/pedigree.ts';
import { descendantClutches, recomputeClutches, recomputeCost } from './kernel/recompute.ts';
import type { RegisterGraph, SourceNode } from './register-graph.ts';
import { RegisterStore, type StoreParts } from './register-store.ts';
import type { NotedChange } from './register-rows.queries.ts';

/** Steps of some 50 ns that recomputing may take before an answer: about 10 ms. More is left to a thread. */
const AT_ONCE_STEPS = 200_000;
/** Clutches whose facts may be written anew before an answer: about 10 ms. */
const AT_ONCE_CLUTCHES = 20_000;

/** The register with its figures as one thread hands it to another. */
export interface LineageParts {
  readonly store: StoreParts;
  /** Clutches in order, parents first, and the position of each. */
  readonly clutches: Int32Array;
  readonly positionOf: Int32Array;
  readonly knowledge: ClutchKnowledge;
}

/** One state of the register with its figures; nothing in it ever changes. */
export interface LineageState {
  readonly graph: RegisterGraph;
  readonly order: PedigreeOrder;
  readonly knowledge: ClutchKnowledge;
  /** Animals of each line, by its dense number. */
  readonly members: ReadonlyMap<number, Int32Array>;
}

/** Figures and facts of some clutches, in the order of these. */
export type Recomputed = Omit<ClutchKnowledge, 'stale'>;

/**
 * The register and its figures in memory, led from state to state by what changed: a new clutch costs one trace, a correction its
 * descendants. What would take long is marked as not current and left to whoever asks for `stale`.
 */
export class LineageMemory {
  readonly #store: RegisterStore;
  readonly #columns: ClutchColumns;
  #clutches: Column<Int32Array>;
  #positionOf: Column<Int32Array>;
  #staleCount = 0;
  #founders: { readonly of: readonly SourceNode[]; readonly kinds: FounderKinds } | null = null;
  /** Clutches that later changes touched since `stale` was last asked for. */
  #touchedSince = new Set<number>();

  constructor({ store, clutches, positionOf, knowledge }: LineageParts) {
    this.#store = new RegisterStore(store);
    this.#columns = new ClutchColumns(knowledge);
    this.#clutches = new Column(Int32Array, 64, clutches);
    this.#positionOf = new Column(Int32Array, 64, positionOf);
  }

  /** The state that the register is in now. */
  show(): LineageState {
    const graph = this.#store.show();
    return { graph, order: this.#order(), knowledge: this.#columns.show(), members: this.#store.showMembers() };
  }

  /**
   * Takes what changed since: reads the records anew and their figures, as far as that is done at once.
   *
   * @param client in the REPEATABLE READ transaction that read the notes
   * @param changes without one of everything
   */
  async advance(client: pg.ClientBase, changes: readonly NotedChange[]): Promise<void> {
    const touched = await applyChanges(client, this.#store, changes);
    const { pedigree, sources } = this.#store.show();
    const count = this.#clutches.length;
    this.#columns.grow(this.#store.clutchCount);
    for (let clutch = count; clutch < this.#store.clutchCount; clutch++) {
      this.#positionOf.push(clutch);
      this.#clutches.push(clutch);
    }
    const from = touchedClutches(pedigree, touched);
    if (from.length === 0) return;
    if (!this.#standsInOrder(pedigree, from)) this.#orderAnew(pedigree);
    const clutches = descendantClutches(pedigree, this.#order(), from);
    for (const clutch of clutches) this.#touchedSince.add(clutch);
    this.#recompute(pedigree, sources, clutches);
  }

  #recompute(pedigree: Pedigree, sources: readonly SourceNode[], clutches: Int32Array): void {
    const first = clutches.reduce((least, clutch) => Math.min(least, clutch), Infinity);
    const { figures, facts, stale } = this.#columns.writable(first);
    // what descends from something that waits must wait too
    const isAtOnce =
      !(this.#staleCount > 0 && restsOnStale(pedigree, stale, clutches)) &&
      clutches.length <= AT_ONCE_CLUTCHES &&
      recomputeCost(pedigree, this.#order(), clutches, AT_ONCE_STEPS) <= AT_ONCE_STEPS;
    if (isAtOnce) {
      recomputeClutches(pedigree, this.#order(), figures, clutches);
      writeFacts(pedigree, this.#foundersOf(sources), facts, clutches);
      return;
    }
    for (const clutch of clutches) {
      if (stale[clutch] === 0) this.#staleCount++;
      stale[clutch] = 1;
    }
  }

  /** The list of sources is another one once a source has changed. */
  #foundersOf(sources: readonly SourceNode[]): FounderKinds {
    if (this.#founders?.of !== sources) this.#founders = { of: sources, kinds: founderKinds(sources) };
    return this.#founders.kinds;
  }

  /** Clutches whose figures do not follow the newest changes, parents first. What changes from now on is told apart from them. */
  stale(): Int32Array {
    this.#touchedSince = new Set();
    if (this.#staleCount === 0) return new Int32Array(0);
    const { stale } = this.#columns.show();
    return this.#order().clutches.filter((clutch) => stale[clutch] === 1);
  }

  /** Takes what was computed for clutches that `stale` gave; those that changed meanwhile stay as they are. */
  take(clutches: Int32Array, { figures, facts }: Recomputed): void {
    const written = this.#columns.writable(0);
    clutches.forEach((clutch, place) => {
      if (this.#touchedSince.has(clutch)) return;
      for (const name of Object.keys(figures) as (keyof typeof figures)[])
        written.figures[name][clutch] = figures[name][place] ?? 0;
      for (const name of ['depth', 'fullDepth', 'filial', 'equivalents'] as const)
        written.facts[name][clutch] = facts[name][place] ?? 0;
      written.stale[clutch] = 0;
      this.#staleCount--;
    });
  }

  #order(): PedigreeOrder {
    const clutches = this.#clutches.show();
    return { clutches, positionOf: this.#positionOf.show(), componentStart: Int32Array.of(0, clutches.length) };
  }

  #standsInOrder({ clutchOf, pairStart, pairSire, pairDam }: Pedigree, clutches: Int32Array): boolean {
    const isBefore = (parent: number, position: number): boolean => {
      const from = parent < 0 ? -1 : (clutchOf[parent] ?? -1);
      return from < 0 || this.#positionOf.at(from) < position;
    };
    return clutches.every((clutch) => {
      const position = this.#positionOf.at(clutch);
      for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
        if (!isBefore(pairSire[pair] ?? -1, position) || !isBefore(pairDam[pair] ?? -1, position)) return false;
      return true;
    });
  }

  #orderAnew(pedigree: Pedigree): void {
    const order = orderPedigree(pedigree);
    this.#clutches = new Column(Int32Array, 64, inSharedMemory(order.clutches));
    this.#positionOf = new Column(Int32Array, 64, inSharedMemory(order.positionOf));
  }
}

/** Whether one of some clutches is stale itself or has a parent that hatched from a stale one. */
function restsOnStale(
  { clutchOf, pairStart, pairSire, pairDam }: Pedigree,
  stale: Uint8Array,
  clutches: Int32Array,
): boolean {
  const isStale = (parent: number): boolean => parent >= 0 && stale[clutchOf[parent] ?? -1] === 1;
  return clutches.some((clutch) => {
    if (stale[clutch] === 1) return true;
    for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
      if (isStale(pairSire[pair] ?? -1) || isStale(pairDam[pair] ?? -1)) return true;
    return false;
  });
}

/** Clutches with other parents than before, or whose parents came from elsewhere than was thought; each once. */
export function touchedClutches(pedigree: Pedigree, { clutches, individuals, sources }: Touched): Int32Array {
  if (individuals.size === 0 && sources.size === 0) return clutches;
  const { clutchOf, sourceOf, pairStart, pairSire, pairDam } = pedigree;
  const isTouched = (parent: number): boolean =>
    parent >= 0 && (individuals.has(parent) || ((clutchOf[parent] ?? -1) < 0 && sources.has(sourceOf[parent] ?? -1)));
  const found = new Set(clutches);
  for (let clutch = 0; clutch + 1 < pairStart.length; clutch++)
    for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
      if (isTouched(pairSire[pair] ?? -1) || isTouched(pairDam[pair] ?? -1)) found.add(clutch);
  return Int32Array.from(found).sort();
}

/** What the facts ask of the founders of each source. */
export function founderKinds(sources: readonly SourceNode[]): FounderKinds {
  return { wild: Uint8Array.from(sources, ({ kind }) => (kind === 'wild-collection' ? 1 : 0)) };
}

/** The same numbers in memory that threads share. */
export function inSharedMemory<Numbers extends Int32Array | Float64Array | Uint8Array>(numbers: Numbers): Numbers {
  const kind = numbers.constructor as new (buffer: SharedArrayBuffer) => Numbers;
  const shared = new kind(new SharedArrayBuffer(numbers.byteLength));
  shared.set(numbers);
  return shared;
}
