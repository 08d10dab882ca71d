import { Candidates } from './candidates.ts';
import type { Breeding, ClutchFigures } from './figures.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';
import {
  COEFFICIENT,
  DAM,
  FIRST,
  LINKED,
  MENDELIAN,
  PARENT_A,
  PARENT_B,
  RECORDED_SOURCE,
  RESIDUAL,
  SIRE,
  TraceNodes,
  WITHIN,
  YOUNG,
  YOUNG_END,
} from './trace-nodes.ts';

/**
 * The ancestor trace: φ = T D Tᵀ restricted to the ancestors of one clutch (Henderson 1976; Quaas 1976; Meuwissen & Luo
 * 1992), over clutch nodes, so that full siblings are visited once.
 *
 * The value of an animal is u_i = u_c + m_i, c its clutch, var m = ½(1+F_c) − within_c; that of a clutch is
 * u_c = Σ w_k u_k + e_c over its recorded candidates, var e = the clutch's residual. Then φ(i,j) = cov(u_i, u_j).
 */
export class AncestorTrace {
  readonly #pedigree: Pedigree;
  readonly #figures: ClutchFigures;
  readonly #candidates: Candidates;
  readonly #nodes: TraceNodes;
  #numbered = -1;
  /*
   * Which nodes wait, as bits, with one bit above for each word that may not be empty. The nodes are visited from the
   * greatest down and their parents are smaller, so the next one is found in a few operations, where a heap costs log n.
   */
  #bits = new Int32Array(0);
  #words = new Int32Array(0);
  #waiting = 0;
  #greatest = -1;
  readonly #sources: number[] = [];
  readonly #sourceCoefficient: Float64Array;

  constructor(pedigree: Pedigree, order: PedigreeOrder, breeding: Breeding, figures: ClutchFigures) {
    this.#pedigree = pedigree;
    this.#figures = figures;
    this.#candidates = new Candidates(pedigree);
    this.#nodes = new TraceNodes(pedigree, order, breeding);
    this.#sourceCoefficient = new Float64Array(pedigree.baseKinship.length);
  }

  /** Computes the figures of one component. */
  trace(component: number): void {
    this.#prepare(component);
    const { families, clutches, clutchCount } = this.#nodes;
    for (let place = 0; place < clutchCount; place++) {
      const clutch = clutches[place] as number;
      const sire = families[4 * place + SIRE] as number;
      if (sire === LINKED) this.#uncertainFigures(clutch);
      else this.#certainFigures(clutch, sire, families[4 * place + DAM] as number);
      this.#fillYoung(clutch, families[4 * place + YOUNG] as number, families[4 * place + YOUNG_END] as number);
    }
  }

  /** Enters the figures of a clutch into the nodes of its young, for the traces of later clutches. */
  #fillYoung(clutch: number, start: number, end: number): void {
    if (start === end) return;
    const { clutchExpected, clutchWithin, clutchResidual } = this.#figures;
    const parts = this.#nodes.parts;
    const within = clutchWithin[clutch] as number;
    for (let at = 4 * start; at < 4 * end; at += 4) {
      parts[at + MENDELIAN] = 0.5 * (1 + (clutchExpected[clutch] as number)) - within;
      parts[at + RESIDUAL] = clutchResidual[clutch] as number;
      parts[at + WITHIN] = within;
    }
  }

  /** Mean number of nodes that the traces of one component visit, from evenly spread samples. */
  sampleVisits(component: number, samples: number): number {
    this.#prepare(component);
    const { clutches, clutchCount } = this.#nodes;
    let visits = 0;
    for (let sample = 0; sample < samples; sample++) {
      const place = Math.floor(((sample + 0.5) * clutchCount) / samples);
      this.#addCandidates(clutches[place] as number);
      visits += this.#run().visits;
    }
    return visits / samples;
  }

  #prepare(component: number): void {
    if (this.#numbered === component) return;
    this.#numbered = component;
    this.#nodes.number(component);
    if (this.#bits.length > this.#nodes.count >> 5) return;
    this.#bits = new Int32Array((this.#nodes.count >> 5) + 1);
    this.#words = new Int32Array((this.#nodes.count >> 10) + 1);
  }

  #certainFigures(clutch: number, sire: number, dam: number): void {
    const figures = this.#figures;
    const selves = this.#self(sire) + this.#self(dam);
    const kinship = this.#kinship(sire, dam, selves);
    figures.clutchExpected[clutch] = kinship;
    figures.clutchLeast[clutch] = kinship;
    figures.clutchGreatest[clutch] = kinship;
    figures.clutchWithin[clutch] = 0.25 * (selves + 2 * kinship);
    if (sire < 0 || dam < 0) figures.clutchResidual[clutch] = sire < 0 && dam < 0 ? 0.25 : 0.125;
  }

  #uncertainFigures(clutch: number): void {
    const { pairStart, pairSire, pairDam, pairProbability } = this.#pedigree;
    let expected = 0;
    let within = 0;
    let least = Infinity;
    let greatest = -Infinity;
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
      const sire = this.#nodes.find(pairSire[pair] as number);
      const dam = this.#nodes.find(pairDam[pair] as number);
      const probability = pairProbability[pair] as number;
      const selves = this.#self(sire) + this.#self(dam);
      const kinship = this.#kinship(sire, dam, selves);
      expected += probability * kinship;
      within += probability * 0.25 * (selves + 2 * kinship);
      least = Math.min(least, kinship);
      greatest = Math.max(greatest, kinship);
    }
    const figures = this.#figures;
    figures.clutchExpected[clutch] = expected;
    figures.clutchLeast[clutch] = least;
    figures.clutchGreatest[clutch] = greatest;
    figures.clutchWithin[clutch] = within;
    this.#addCandidates(clutch);
    figures.clutchResidual[clutch] = within - this.#run().variance;
  }

  #addCandidates(clutch: number): void {
    this.#candidates.gather(clutch);
    const { individual, weight, count } = this.#candidates;
    for (let place = 0; place < count; place++)
      this.#add(this.#nodes.find(individual[place] as number), weight[place] as number);
  }

  /** φ(s,d) of two nodes from var ½(u_s+u_d) = ¼(φ(s,s)+φ(d,d)+2φ(s,d)); rounding below 0 is cut off. */
  #kinship(sire: number, dam: number, selves: number): number {
    if (sire < 0 || dam < 0) return 0;
    this.#add(sire, 0.5);
    this.#add(dam, 0.5);
    return Math.max(0, 2 * this.#run().variance - 0.5 * selves);
  }

  /** Kinship of a node with itself; ½ for a parent nobody knows. */
  #self(node: number): number {
    if (node < 0) return 0.5;
    const parts = this.#nodes.parts;
    return (parts[4 * node + MENDELIAN] as number) + (parts[4 * node + WITHIN] as number);
  }

  /** Adds to the coefficient of a node and lets it wait for its visit. A node waits while its coefficient is not 0. */
  #add(node: number, coefficient: number): void {
    // A coefficient that has run down to 0 (more than a thousand generations) would look untouched; it has no effect.
    if (coefficient === 0) return;
    const parts = this.#nodes.parts;
    const before = parts[4 * node + COEFFICIENT] as number;
    parts[4 * node + COEFFICIENT] = before + coefficient;
    if (before !== 0) return;
    this.#bits[node >> 5] = (this.#bits[node >> 5] as number) | (1 << node);
    this.#words[node >> 10] = (this.#words[node >> 10] as number) | (1 << (node >> 5));
    this.#waiting++;
    if (node > this.#greatest) this.#greatest = node;
  }

  readonly #result = { variance: 0, visits: 0 };

  /**
   * var Σ x_k u_k over the nodes added since the last call, and how many clutches were visited for it.
   *
   * This is the innermost loop of the kernel: `#add` is written out in it for the two certain parents, since the calls
   * took half of its time.
   */
  #run(): { readonly variance: number; readonly visits: number } {
    const { places, parts } = this.#nodes;
    const bits = this.#bits;
    const words = this.#words;
    let variance = 0;
    let visits = 0;
    let word = this.#greatest >> 5;
    let waiting = this.#waiting;
    while (waiting > 0) {
      let here = bits[word] as number;
      if (here === 0) {
        word = this.#wordBelow(word);
        here = bits[word] as number;
      }
      const node = (word << 5) | (31 - Math.clz32(here));
      bits[word] = here ^ (1 << node);
      waiting--;
      visits++;
      const at = 4 * node;
      let coefficient = parts[at + COEFFICIENT] as number;
      parts[at + COEFFICIENT] = 0;
      let squares = coefficient * coefficient;
      const first = places[at + FIRST] as number;
      for (let mate = node - 1; mate >= first; mate--) {
        const other = parts[4 * mate + COEFFICIENT] as number;
        if (other === 0) continue;
        parts[4 * mate + COEFFICIENT] = 0;
        bits[mate >> 5] = (bits[mate >> 5] as number) & ~(1 << mate);
        waiting--;
        squares += other * other;
        coefficient += other;
      }
      variance += squares * (parts[at + MENDELIAN] as number);
      const a = places[at + PARENT_A] as number;
      const b = places[at + PARENT_B] as number;
      if (waiting === 0 && a !== RECORDED_SOURCE && this.#sources.length === 0) {
        variance += coefficient * coefficient * (parts[at + WITHIN] as number); // all that is left passes through here
        break;
      }
      const half = 0.5 * coefficient;
      if (a < 0 || b < 0 || half === 0) {
        variance += coefficient * coefficient * (parts[at + RESIDUAL] as number);
        this.#waiting = waiting;
        if (a <= LINKED) this.#addLinked(a, b, coefficient);
        else if (a >= 0) this.#add(a, half);
        else if (b >= 0) this.#add(b, half);
        waiting = this.#waiting;
        continue;
      }
      const ofA = parts[4 * a + COEFFICIENT] as number;
      parts[4 * a + COEFFICIENT] = ofA + half;
      if (ofA === 0) {
        const old = bits[a >> 5] as number;
        bits[a >> 5] = old | (1 << a);
        if (old === 0) words[a >> 10] = (words[a >> 10] as number) | (1 << (a >> 5));
        waiting++;
      }
      const ofB = parts[4 * b + COEFFICIENT] as number;
      parts[4 * b + COEFFICIENT] = ofB + half;
      if (ofB === 0) {
        const old = bits[b >> 5] as number;
        bits[b >> 5] = old | (1 << b);
        if (old === 0) words[b >> 10] = (words[b >> 10] as number) | (1 << (b >> 5));
        waiting++;
      }
    }
    this.#waiting = 0;
    this.#greatest = -1;
    this.#result.variance = variance + this.#sourcesVariance();
    this.#result.visits = visits;
    return this.#result;
  }

  /** The greatest word below one that has become empty, with something waiting in it. There is one. */
  #wordBelow(empty: number): number {
    const bits = this.#bits;
    const words = this.#words;
    let word = empty;
    do {
      let group = word >> 5;
      words[group] = (words[group] as number) & ~(1 << word);
      while (words[group] === 0) group--;
      word = (group << 5) | (31 - Math.clz32(words[group] as number));
    } while (bits[word] === 0);
    return word;
  }

  #addLinked(kind: number, group: number, coefficient: number): void {
    if (kind === RECORDED_SOURCE) {
      this.#sources.push(group);
      this.#sourceCoefficient[group] = coefficient;
      return;
    }
    const { linkStart, linkNode, linkWeight } = this.#nodes;
    const end = linkStart[group + 1] as number;
    for (let link = linkStart[group] as number; link < end; link++)
      this.#add(linkNode[link] as number, coefficient * (linkWeight[link] as number));
  }

  /** The part of kinships recorded between two sources. */
  #sourcesVariance(): number {
    if (this.#sources.length === 0) return 0;
    const coefficients = this.#sourceCoefficient;
    let variance = 0;
    for (const { a, b, kinship } of this.#pedigree.sourceKinships ?? [])
      variance += 2 * kinship * (coefficients[a] as number) * (coefficients[b] as number);
    for (const source of this.#sources) coefficients[source] = 0;
    this.#sources.length = 0;
    return variance;
  }
}
