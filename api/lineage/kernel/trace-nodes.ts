import { Candidates } from './candidates.ts';
import type { Breeding } from './figures.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';
import { founderInbreedingOf } from './sources.ts';

/** Places of `TraceNodes.places`. */
export const FIRST = 0;
export const PARENT_A = 1;
export const PARENT_B = 2;
export const LAST_MATE = 3;
/** Places of `TraceNodes.parts`. */
export const COEFFICIENT = 0;
export const MENDELIAN = 1;
/** Places of `TraceNodes.shared`. */
export const RESIDUAL = 0;
export const WITHIN = 1;

/** Places of `TraceNodes.families`. */
export const SIRE = 0;
export const DAM = 1;
export const YOUNG = 2;
export const YOUNG_END = 3;

/** In PARENT_A: the node has no two certain parents, its parents are the links of the group that PARENT_B numbers. */
export const LINKED = -2;
/** States of a clutch in the depth-first walk. */
const UNSEEN = 0;
const OPEN = 1;
const DONE = 2;

/** In PARENT_A: the node is a source with recorded kinship to others; PARENT_B is its number. */
export const RECORDED_SOURCE = -3;

/**
 * The animals of one component that breed, and its sources that are nodes, numbered so that parents come first and
 * clutch-mates stand together. A depth-first walk from the latest clutches gives the numbers: the ancestors of an animal
 * then lie near each other in memory, which is where a trace spends its time.
 *
 * Nodes without anything above them are numbered downwards from `pivot`, all others upwards, so that a trace meets the
 * former last and together.
 */
export class TraceNodes {
  /** Clutches of the component, parents first, in the order of the numbers. */
  readonly clutches: Int32Array;
  /**
   * Four numbers a clutch, in the same order: SIRE and DAM of certain parents as nodes, −1 where unknown, or LINKED; then
   * the young that breed, nodes YOUNG .. YOUNG_END−1.
   */
  readonly families: Int32Array;
  /** How many clutches there are. */
  clutchCount = 0;
  /** Nodes below it have nothing above them, neither parents nor links; a multiple of 32. */
  readonly pivot: number;
  /** All nodes are below it, in every component. */
  readonly room: number;
  /**
   * Four numbers a node, side by side because a visit reads them together: FIRST node of the same clutch (itself for
   * founders and sources), PARENT_A and PARENT_B, certain parents of weight ½ as nodes or −1 where there is none; LAST_MATE as the trace
   * notes it, −1 before.
   */
  readonly places: Int32Array;
  /** Two numbers a node: COEFFICIENT in the trace under way; MENDELIAN, what it has of its own. */
  readonly parts: Float64Array;
  /**
   * Two numbers a node, apart since few visits need them: RESIDUAL, what clutch-mates share apart from recorded parents; WITHIN,
   * its kinship with another of its clutch or source. MENDELIAN and WITHIN together are the kinship of the node with itself.
   * These and MENDELIAN of young are filled in when their clutch has its figures.
   */
  readonly shared: Float64Array;
  /** Links of group l: linkStart[l] .. linkStart[l+1]−1. */
  readonly linkStart: number[] = [0];
  readonly linkNode: number[] = [];
  readonly linkWeight: number[] = [];

  readonly #pedigree: Pedigree;
  readonly #order: PedigreeOrder;
  readonly #breeding: Breeding;
  readonly #candidates: Candidates;
  /** n: node of each animal, −1 if it has none yet. Right for the component numbered last. */
  readonly #nodeOf: Int32Array;
  readonly #sourceNode: Int32Array;
  readonly #recorded: Uint8Array;
  readonly #state: Uint8Array;
  /**
   * Four numbers a clutch, written in one even pass since the walk goes to and fro: its only sire and dam, −1 where unknown,
   * and the clutches these hatched from, −1 for founders; −2 first where there are more pairs than one.
   */
  readonly #certain: Int32Array;
  readonly #stack: number[] = [];
  /** The next node upwards. */
  #next = 0;
  /** The lowest node so far. */
  #lowest = 0;

  constructor(pedigree: Pedigree, order: PedigreeOrder, breeding: Breeding) {
    this.#pedigree = pedigree;
    this.#order = order;
    this.#breeding = breeding;
    this.#candidates = new Candidates(pedigree);
    this.#nodeOf = new Int32Array(pedigree.clutchOf.length).fill(-1);
    this.clutches = new Int32Array(order.clutches.length);
    this.families = new Int32Array(4 * order.clutches.length);
    this.#state = new Uint8Array(order.clutches.length);
    this.#certain = certainParents(pedigree);
    const sources = pedigree.baseKinship.length;
    this.pivot = 32 * Math.ceil((breeding.founders + sources) / 32);
    this.room = this.pivot + breeding.count + sources;
    this.places = new Int32Array(4 * this.room);
    this.parts = new Float64Array(2 * this.room);
    this.shared = new Float64Array(2 * this.room);
    this.#sourceNode = new Int32Array(pedigree.baseKinship.length).fill(-1);
    this.#recorded = new Uint8Array(pedigree.baseKinship.length);
    for (const { a, b, kinship } of pedigree.sourceKinships ?? [])
      if (kinship > 0) this.#recorded[a] = this.#recorded[b] = 1;
  }

  /** Numbers the nodes of a component. Every component can be numbered once. */
  number(component: number): void {
    const { clutches, componentStart } = this.#order;
    const start = componentStart[component] as number;
    const end = componentStart[component + 1] as number;
    if (this.#state[clutches[start] as number] === DONE) throw new Error(`Component ${component} is numbered already.`);
    this.#next = this.#lowest = this.pivot;
    this.clutchCount = 0;
    this.linkStart.length = 1;
    this.linkNode.length = this.linkWeight.length = 0;
    for (let position = end - 1; position >= start; position--) this.#walk(clutches[position] as number);
  }

  /** Node of an animal of the component that breeds, −1 for −1. */
  find(individual: number): number {
    return individual < 0 ? -1 : (this.#nodeOf[individual] as number);
  }

  /** Numbers a clutch after all the clutches its candidates hatched from. */
  #walk(last: number): void {
    const stack = this.#stack;
    const state = this.#state;
    if (state[last] === DONE) return;
    stack.push(last);
    while (stack.length > 0) {
      const clutch = stack[stack.length - 1] as number;
      if (state[clutch] === UNSEEN) {
        state[clutch] = OPEN;
        if (this.#pushParents(clutch)) continue;
      }
      stack.pop();
      if (state[clutch] === DONE) continue; // it stood on the stack twice
      state[clutch] = DONE;
      this.#numberClutch(clutch);
    }
  }

  #pushParents(clutch: number): boolean {
    const certain = this.#certain;
    const state = this.#state;
    const before = this.#stack.length;
    if (certain[4 * clutch] !== -2) {
      const ofSire = certain[4 * clutch + 2] as number;
      const ofDam = certain[4 * clutch + 3] as number;
      if (ofSire >= 0 && state[ofSire] === UNSEEN) this.#stack.push(ofSire);
      if (ofDam >= 0 && state[ofDam] === UNSEEN) this.#stack.push(ofDam);
      return this.#stack.length > before;
    }
    const { pairStart, pairSire, pairDam } = this.#pedigree;
    const end = pairStart[clutch + 1] as number;
    for (let pair = pairStart[clutch] as number; pair < end; pair++) {
      this.#pushParent(pairSire[pair] as number);
      this.#pushParent(pairDam[pair] as number);
    }
    return this.#stack.length > before;
  }

  #pushParent(parent: number): void {
    const from = parent < 0 ? -1 : (this.#pedigree.clutchOf[parent] as number);
    if (from >= 0 && this.#state[from] === UNSEEN) this.#stack.push(from);
  }

  #numberClutch(clutch: number): void {
    const { firstYoung, nextYoung } = this.#breeding;
    const sire = this.#certain[4 * clutch] as number;
    let parentA: number;
    let parentB: number;
    if (sire !== -2) {
      parentA = this.#parentNode(sire);
      parentB = this.#parentNode(this.#certain[4 * clutch + 1] as number);
    } else {
      parentA = LINKED;
      parentB = this.#link(clutch);
    }
    const first = this.#next;
    for (let young = firstYoung[clutch] as number; young >= 0; young = nextYoung[young] as number)
      this.#nodeOf[young] = this.#enter(this.#next++, first, parentA, parentB);
    const family = 4 * this.clutchCount;
    this.families[family + SIRE] = parentA;
    this.families[family + DAM] = parentB;
    this.families[family + YOUNG] = first;
    this.families[family + YOUNG_END] = this.#next;
    this.clutches[this.clutchCount++] = clutch;
  }

  #enter(node: number, first: number, parentA: number, parentB: number): number {
    this.places[4 * node + FIRST] = first;
    this.places[4 * node + PARENT_A] = parentA;
    this.places[4 * node + PARENT_B] = parentB;
    this.places[4 * node + LAST_MATE] = -1;
    return node;
  }

  /** Enters a founder or source of which the parts are known. */
  #enterTop(node: number, parentA: number, parentB: number, mendelian: number, within: number): number {
    this.parts[2 * node + COEFFICIENT] = 0;
    this.parts[2 * node + MENDELIAN] = mendelian;
    this.shared[2 * node + RESIDUAL] = 0;
    this.shared[2 * node + WITHIN] = within;
    return this.#enter(node, node, parentA, parentB);
  }

  #link(clutch: number): number {
    this.#candidates.gather(clutch);
    const { individual, weight, count } = this.#candidates;
    // Numbering a founder may write a group of links of its own, which must not fall inside this one.
    for (let place = 0; place < count; place++) this.#parentNode(individual[place] as number);
    for (let place = 0; place < count; place++) {
      this.linkNode.push(this.#parentNode(individual[place] as number));
      this.linkWeight.push(weight[place] as number);
    }
    return this.linkStart.push(this.linkNode.length) - 2;
  }

  #parentNode(individual: number): number {
    if (individual < 0) return -1;
    const node = this.#nodeOf[individual] as number;
    return node >= 0 ? node : this.#numberFounder(individual);
  }

  #numberFounder(founder: number): number {
    const source = this.#pedigree.sourceOf[founder] as number;
    const self = 0.5 * (1 + founderInbreedingOf(this.#pedigree, founder));
    let node: number;
    if (source < 0 || this.#breeding.sourceIsNode[source] === 0) node = this.#enterTop(--this.#lowest, -1, -1, self, 0);
    else {
      const base = this.#pedigree.baseKinship[source] as number;
      const above = this.#numberSource(source, base);
      this.linkNode.push(above);
      this.linkWeight.push(1);
      const group = this.linkStart.push(this.linkNode.length) - 2;
      node = this.#enterTop(this.#next++, LINKED, group, self - base, base);
    }
    this.#nodeOf[founder] = node;
    return node;
  }

  #numberSource(source: number, base: number): number {
    const known = this.#sourceNode[source] as number;
    if (known >= 0) return known;
    const node =
      this.#recorded[source] === 1
        ? this.#enterTop(this.#next++, RECORDED_SOURCE, source, base, 0)
        : this.#enterTop(--this.#lowest, -1, -1, base, 0);
    this.#sourceNode[source] = node;
    return node;
  }
}

function certainParents({ clutchOf, pairStart, pairSire, pairDam }: Pedigree): Int32Array {
  const clutches = pairStart.length - 1;
  const certain = new Int32Array(4 * clutches);
  for (let clutch = 0; clutch < clutches; clutch++) {
    const pair = pairStart[clutch] as number;
    if ((pairStart[clutch + 1] as number) - pair !== 1) {
      certain[4 * clutch] = -2;
      continue;
    }
    const sire = pairSire[pair] as number;
    const dam = pairDam[pair] as number;
    certain[4 * clutch] = sire;
    certain[4 * clutch + 1] = dam;
    certain[4 * clutch + 2] = sire < 0 ? -1 : (clutchOf[sire] as number);
    certain[4 * clutch + 3] = dam < 0 ? -1 : (clutchOf[dam] as number);
  }
  return certain;
}
