import { Candidates } from './candidates.ts';
import type { Breeding, ClutchFigures } from './figures.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';
import {
  DAM,
  LAST_MATE,
  LINKED,
  MENDELIAN,
  RESIDUAL,
  SIRE,
  TraceNodes,
  WITHIN,
  YOUNG,
  YOUNG_END,
} from './trace-nodes.ts';
import { TraceSum } from './trace-sum.ts';

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
  readonly #sum: TraceSum;
  /** Per node: its kinship with its LAST_MATE. */
  readonly #withLastMate: Float64Array;

  constructor(pedigree: Pedigree, order: PedigreeOrder, breeding: Breeding, figures: ClutchFigures) {
    this.#pedigree = pedigree;
    this.#figures = figures;
    this.#candidates = new Candidates(pedigree);
    this.#nodes = new TraceNodes(pedigree, order, breeding);
    this.#sum = new TraceSum(pedigree, this.#nodes);
    this.#withLastMate = new Float64Array(this.#nodes.room);
  }

  /** Computes the figures of one component; least and greatest of certain parents are left to `copyCertain`. */
  trace(component: number): void {
    this.#nodes.number(component);
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
    const { parts, shared } = this.#nodes;
    const within = clutchWithin[clutch] as number;
    for (let at = 2 * start; at < 2 * end; at += 2) {
      parts[at + MENDELIAN] = 0.5 * (1 + (clutchExpected[clutch] as number)) - within;
      shared[at + RESIDUAL] = clutchResidual[clutch] as number;
      shared[at + WITHIN] = within;
    }
  }

  #certainFigures(clutch: number, sire: number, dam: number): void {
    const figures = this.#figures;
    const selves = this.#self(sire) + this.#self(dam);
    const kinship = this.#kinship(sire, dam, selves);
    figures.clutchExpected[clutch] = kinship;
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
    figures.clutchResidual[clutch] = within - this.#sum.takeVariance();
  }

  #addCandidates(clutch: number): void {
    this.#candidates.gather(clutch);
    const { individual, weight, count } = this.#candidates;
    for (let place = 0; place < count; place++)
      this.#sum.add(this.#nodes.find(individual[place] as number), weight[place] as number);
  }

  /** φ(s,d) of two nodes from var ½(u_s+u_d) = ¼(φ(s,s)+φ(d,d)+2φ(s,d)); rounding below 0 is cut off. */
  #kinship(sire: number, dam: number, selves: number): number {
    if (sire < 0 || dam < 0 || Math.max(sire, dam) < this.#nodes.pivot) return 0; // nothing above them to share
    const { places } = this.#nodes;
    if (places[4 * sire + LAST_MATE] === dam) return this.#withLastMate[sire] as number; // a pair that bred before
    this.#sum.add(sire, 0.5);
    this.#sum.add(dam, 0.5);
    const kinship = Math.max(0, 2 * this.#sum.takeVariance() - 0.5 * selves);
    places[4 * sire + LAST_MATE] = dam;
    this.#withLastMate[sire] = kinship;
    return kinship;
  }

  /** Kinship of a node with itself; ½ for a parent nobody knows. */
  #self(node: number): number {
    if (node < 0) return 0.5;
    const { parts, shared } = this.#nodes;
    return (parts[2 * node + MENDELIAN] as number) + (shared[2 * node + WITHIN] as number);
  }
}
