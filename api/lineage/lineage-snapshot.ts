import { parseRegistryNumber } from '../../shared/registry-number.ts';
import { standings, type Standing } from '../../shared/vocabulary.ts';
import { sharesByStanding, standingOfSource, type StandingShare } from '../provenance/standing.ts';
import { pedigreeDepth, type PedigreeDepth } from './kernel/depth.ts';
import { filialGeneration } from './kernel/filial-generation.ts';
import { computeInbreeding, inbreedingOf, type Inbreeding, type InbreedingRange } from './kernel/inbreeding.ts';
import { kinshipMatrix } from './kernel/kinship.ts';
import { meanKinshipOf } from './kernel/mean-kinship.ts';
import { shareOf } from './kernel/shares.ts';
import { GenomeFlow, type Pair } from './kernel/genome-flow.ts';
import type { RegisterGraph } from './register-graph.ts';
import type { Revision } from './register-rows.queries.ts';

/**
 * The register in one state and the figures of that state. Nothing in it ever changes; when the register does, another
 * snapshot takes its place. Inbreeding of the whole register is computed at once, everything else when it is asked for.
 */
export class LineageSnapshot {
  readonly revision: Revision;
  readonly graph: RegisterGraph;
  readonly inbreeding: Inbreeding;
  /** m: working space of `GenomeFlow`, all −1 between two of its runs. */
  readonly #places: Int32Array;
  #depth: PedigreeDepth | undefined;
  #filial: Int32Array | undefined;
  readonly #meanKinships = new Map<number, ReadonlyMap<number, number>>();
  #standings: { readonly standing: Standing; readonly shares: Float64Array }[] | undefined;

  constructor(revision: Revision, graph: RegisterGraph) {
    this.revision = revision;
    this.graph = graph;
    this.inbreeding = computeInbreeding(graph.pedigree);
    this.#places = new Int32Array(graph.clutchIds.length).fill(-1);
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
    if ((this.graph.pedigree.sourceOf[individual] ?? -1) >= 0) return false;
    return !this.pairsOf(individual).some(({ a, b }) => a >= 0 || b >= 0);
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

  /** Id of an individual by its dense number; empty where there is none. */
  idOf(individual: number): string {
    return this.graph.individualIds[individual] ?? '';
  }

  /** Whether the figures of an individual follow every change of the register; false while they are still being recomputed. */
  isCurrent(individual: number): boolean {
    return individual < this.graph.individualIds.length;
  }

  /** Dense number of an individual named by its id or its registry number; −1 where there is none. */
  find(idOrNumber: string): number {
    const byId = this.graph.individualOf.get(idOrNumber.toLowerCase());
    if (byId !== undefined) return byId;
    const serial = parseRegistryNumber(idOrNumber);
    return serial === null ? -1 : (this.graph.individualOfSerial.get(serial) ?? -1);
  }

  /** Depth, full depth and generation equivalents of every individual. */
  get depth(): PedigreeDepth {
    return (this.#depth ??= pedigreeDepth(this.graph.pedigree, this.inbreeding.order));
  }

  /** Generations since the wild; null where they cannot be known. */
  filialGenerationOf(individual: number): number | null {
    const { pedigree, sources } = this.graph;
    const wild = (): Uint8Array => Uint8Array.from(sources, ({ kind }) => (kind === 'wild-collection' ? 1 : 0));
    this.#filial ??= filialGeneration(pedigree, this.inbreeding.order, wild());
    const generation = this.#filial[individual] ?? -1;
    return generation < 0 ? null : generation;
  }

  /** Mean kinship with the living animals of its line, itself included where it lives; null without a line or without any. */
  meanKinshipOf(individual: number): number | null {
    const line = this.graph.lineOf[individual] ?? -1;
    if (line < 0) return null;
    const known = this.#meanKinships.get(line) ?? this.#computeMeanKinships(line);
    this.#meanKinships.set(line, known);
    return known.get(individual) ?? null;
  }

  /** Two passes over the ancestry of a line give the mean kinships of all its animals. */
  #computeMeanKinships(line: number): Map<number, number> {
    const { lineOf, statusOf, withdrawn, pedigree } = this.graph;
    const animals = [...lineOf.keys()].filter((animal) => lineOf[animal] === line);
    const living = animals.filter((animal) => statusOf[animal] === 'alive' && withdrawn[animal] === 0);
    if (living.length === 0) return new Map();
    const means = meanKinshipOf(pedigree, this.inbreeding, Int32Array.from(living), Int32Array.from(animals));
    return new Map(animals.map((animal, place) => [animal, means[place] ?? 0]));
  }

  /** Expected kinships among some individuals, n × n by rows; ½(1+F) on the diagonal. */
  kinships(individuals: readonly number[]): Float64Array {
    return kinshipMatrix(this.graph.pedigree, this.inbreeding, Int32Array.from(individuals));
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

  /** Expected genome shares of an individual by the standing of its founders, best first; they sum to 1. */
  standingsOf(individual: number): StandingShare[] {
    this.#standings ??= this.#computeStandings();
    return sharesByStanding(
      this.#standings.map(({ standing, shares }) => ({ standing, share: shares[individual] ?? 0 })),
    );
  }

  /** One pass over the register for each standing that some source has, and one for what is unknown. */
  #computeStandings(): { standing: Standing; shares: Float64Array }[] {
    const { pedigree, sources } = this.graph;
    const ofSources = sources.map(standingOfSource);
    const everyone = pedigree.clutchOf.length;
    return standings
      .filter((standing) => standing === 'unknown' || ofSources.includes(standing))
      .map((standing) => {
        const counts = Float64Array.from(ofSources, (other) => (other === standing ? 1 : 0));
        const unknown = standing === 'unknown' ? 1 : 0;
        const ofUnknownOrigin = new Float64Array(everyone).fill(unknown);
        return {
          standing,
          shares: shareOf(pedigree, this.inbreeding.order, counts, ofUnknownOrigin, unknown).expected,
        };
      });
  }
}
