import { parseRegistryNumber } from '../../shared/registry-number.ts';
import { inbreedingOf, type Inbreeding, type InbreedingRange } from './kernel/inbreeding.ts';
import { kinshipMatrix } from './kernel/kinship.ts';
import { meanKinshipOf } from './kernel/mean-kinship.ts';
import { GenomeFlow, type Pair } from './kernel/genome-flow.ts';
import type { LineageState } from './lineage-memory.ts';
import { isLiving, REMOVED, type RegisterGraph } from './register-graph.ts';
import type { Revision } from './register-rows.queries.ts';

/** How far back a pedigree reaches. */
export interface DepthOfAnimal {
  /** Generations on the longest recorded path to a founder; 0 for a founder. */
  readonly depth: number;
  /** Generations back in which every ancestor is certainly a recorded one. */
  readonly fullDepth: number;
  /** Complete generation equivalent (Maignel, Boichard & Verrier 1996). */
  readonly generationEquivalents: number;
}

/**
 * The register in one state and the figures of that state. Nothing in it ever changes; when the register does, another
 * snapshot takes its place. Figures of clutches are there, everything else is computed when it is asked for.
 */
export class LineageSnapshot {
  readonly revision: Revision;
  readonly graph: RegisterGraph;
  readonly inbreeding: Inbreeding;
  /** Most bytes that the matrix of one computation may take. */
  readonly matrixBytes: number | undefined;
  readonly #state: LineageState;
  /** At least m: working space of `GenomeFlow`, all −1 between two of its runs. */
  readonly #places: Int32Array;
  readonly #meanKinships = new Map<number, ReadonlyMap<number, number>>();

  /**
   * @param places at least one −1 a clutch; shared by the snapshots of a service, since no run of it waits for anything
   * @param matrixBytes most bytes that the matrix of one computation may take; as the kernel has it if left out
   */
  constructor(revision: Revision, state: LineageState, places: Int32Array, matrixBytes?: number) {
    this.revision = revision;
    this.#state = state;
    this.graph = state.graph;
    this.inbreeding = { ...state.knowledge.figures, order: state.order, method: { frontier: 0, trace: 0 } };
    this.#places = places;
    this.matrixBytes = matrixBytes;
  }

  /** The state of the register that the figures belong to. */
  get asOf(): { revision: number; at: string } {
    return { revision: this.revision.number, at: this.revision.changedAt };
  }

  /** Inbreeding coefficient of an individual, 0 to 1, with its range over the candidate parents. */
  inbreedingOf(individual: number): InbreedingRange {
    return inbreedingOf(this.graph.pedigree, this.inbreeding, individual);
  }

  /** The candidate parent pairs of an individual; none where it was not hatched from a recorded clutch. */
  pairsOf(individual: number): Pair[] {
    const { clutchOf, pairStart, pairSire, pairDam, pairProbability } = this.graph.pedigree;
    const clutch = clutchOf[individual] ?? -1;
    const pairs: Pair[] = [];
    if (clutch < 0) return pairs;
    for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
      pairs.push({ a: pairSire[pair] ?? -1, b: pairDam[pair] ?? -1, probability: pairProbability[pair] ?? 0 });
    return pairs;
  }

  /** Whether nothing is recorded above an individual that a coefficient could rest on: no source and no known parent. */
  isNothingKnown(individual: number): boolean {
    const { sourceOf, clutchOf, pairStart, pairSire, pairDam } = this.graph.pedigree;
    if ((sourceOf[individual] ?? -1) >= 0) return false;
    const clutch = clutchOf[individual] ?? -1;
    if (clutch < 0) return true;
    // asked of thousands of mates at once, so without making a list of pairs
    for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++)
      if ((pairSire[pair] ?? -1) >= 0 || (pairDam[pair] ?? -1) >= 0) return false;
    return true;
  }

  /** Probability that both parents are recorded animals, 0 to 1: the rest of the coefficient counts as 0 for want of knowledge. */
  bothParentsKnown(individual: number): number {
    const known = this.pairsOf(individual).filter(({ a, b }) => a >= 0 && b >= 0);
    return known.reduce((sum, { probability }) => sum + probability, 0);
  }

  /** Inbreeding coefficient of an individual with its range, and what it rests on. */
  inbreedingFigureOf(individual: number): InbreedingRange & { nothingKnown: boolean; bothParentsKnown: number } {
    return {
      ...this.inbreedingOf(individual),
      nothingKnown: this.isNothingKnown(individual),
      bothParentsKnown: this.bothParentsKnown(individual),
    };
  }

  /** All ancestors of an individual, for shares and flags. */
  flowTo(individual: number): GenomeFlow {
    return new GenomeFlow(this.graph.pedigree, this.inbreeding.order, this.#places, individual);
  }

  /** All ancestors of young that these pairs would have. */
  flowToYoung(pairs: readonly Pair[]): GenomeFlow {
    return new GenomeFlow(this.graph.pedigree, this.inbreeding.order, this.#places, pairs);
  }

  /** How many individuals there are, removed ones among them. */
  get size(): number {
    return this.graph.pedigree.clutchOf.length;
  }

  /** Id of an individual by its dense number; empty where there is none. */
  idOf(individual: number): string {
    return individual < this.size ? (this.graph.individuals.at(individual) ?? '') : '';
  }

  /** Id of a clutch by its dense number; empty where there is none. */
  clutchIdOf(clutch: number): string {
    return this.graph.clutches.at(clutch) ?? '';
  }

  /** Whether the figures of an individual follow every change of the register; false while they are still being recomputed. */
  isCurrent(individual: number): boolean {
    const clutch = this.graph.pedigree.clutchOf[individual] ?? -1;
    return clutch < 0 || this.#state.knowledge.stale[clutch] === 0;
  }

  /** Dense number of an individual named by its id or its registry number; −1 where there is none. */
  find(idOrNumber: string): number {
    const byId = this.#standing(this.graph.individuals.find(idOrNumber));
    if (byId >= 0) return byId;
    const serial = parseRegistryNumber(idOrNumber);
    return serial === null ? -1 : this.#standing(this.graph.bySerial.find(serial));
  }

  /** Dense number of a clutch; −1 where there is none. */
  findClutch(id: string): number {
    const clutch = this.graph.clutches.find(id);
    return clutch < this.graph.pedigree.pairStart.length - 1 ? clutch : -1;
  }

  /** Whether an individual has a record, standing or withdrawn. */
  isThere(individual: number): boolean {
    return this.#standing(individual) >= 0;
  }

  /** The tables of ids may know of animals that came later, and of some whose rows are gone. */
  #standing(individual: number): number {
    return individual < this.size && this.graph.withdrawn[individual] !== REMOVED ? individual : -1;
  }

  /** How far back the pedigree of an individual reaches. */
  depthOf(individual: number): DepthOfAnimal {
    const clutch = this.graph.pedigree.clutchOf[individual] ?? -1;
    const { depth, fullDepth, equivalents } = this.#state.knowledge.facts;
    return {
      depth: depth[clutch] ?? 0,
      fullDepth: fullDepth[clutch] ?? 0,
      generationEquivalents: equivalents[clutch] ?? 0,
    };
  }

  /** Generations since the wild; null where they cannot be known. */
  filialGenerationOf(individual: number): number | null {
    const { pedigree, sources } = this.graph;
    const clutch = pedigree.clutchOf[individual] ?? -1;
    if (clutch < 0) return sources[pedigree.sourceOf[individual] ?? -1]?.kind === 'wild-collection' ? 0 : null;
    const generation = this.#state.knowledge.facts.filial[clutch] ?? -1;
    return generation < 0 ? null : generation;
  }

  /** Mean kinship with the living animals of its line, itself included where it lives; null without a line or without any. */
  meanKinshipOf(individual: number): number | null {
    const line = this.graph.lineOf[individual] ?? -1;
    return line < 0 ? null : (this.meanKinshipsOfLine(line).get(individual) ?? null);
  }

  /** Mean kinships of all animals of a line with its living ones, as `meanKinshipOf` has them; empty where none lives. */
  meanKinshipsOfLine(line: number): ReadonlyMap<number, number> {
    const known = this.#meanKinships.get(line) ?? this.#computeMeanKinships(line);
    this.#meanKinships.set(line, known);
    return known;
  }

  #computeMeanKinships(line: number): ReadonlyMap<number, number> {
    const animals = this.membersOfLine(line);
    const living = animals.filter((animal) => isLiving(this.graph, animal));
    if (living.length === 0) return new Map();
    const means = meanKinshipOf(this.graph.pedigree, this.inbreeding, living, animals);
    return new Map(Array.from(animals, (animal, place) => [animal, means[place] ?? 0]));
  }

  /** Individuals of a line, withdrawn ones among them. */
  membersOfLine(line: number): Int32Array {
    return this.#state.members.get(line) ?? new Int32Array(0);
  }

  /** Expected kinships among some individuals, n × n by rows; ½(1+F) on the diagonal. */
  kinships(individuals: readonly number[]): Float64Array {
    const options = this.matrixBytes === undefined ? {} : { sweepBytes: this.matrixBytes };
    return kinshipMatrix(this.graph.pedigree, this.inbreeding, Int32Array.from(individuals), options);
  }

  /** Expected kinship of the two of each pair; 0 where one is a frog nobody knows. */
  kinshipsOfPairs(pairs: readonly Pair[]): number[] {
    const parents = [...new Set(pairs.flatMap(({ a, b }) => [a, b]))].filter((parent) => parent >= 0);
    const placeOf = new Map(parents.map((parent, place) => [parent, place]));
    const kinships = this.kinships(parents);
    return pairs.map(({ a, b }) => {
      const row = placeOf.get(a);
      const column = placeOf.get(b);
      return row === undefined || column === undefined ? 0 : (kinships[row * parents.length + column] ?? 0);
    });
  }
}
