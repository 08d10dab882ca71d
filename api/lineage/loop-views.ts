import type { InbreedingLoopView, InbreedingLoopsView, LoopStepView } from './inbreeding-loops.view.ts';
import type { InbreedingLoop, LoopStep } from './kernel/inbreeding-loops.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type { RecordNames, WantedNames } from './record-names.ts';

/** Asks for the names of the animals on some loops of one animal, and of their clutches. */
export function wantLoops(wanted: WantedNames, loops: readonly InbreedingLoop[], own: number): void {
  for (const { paths } of loops)
    for (const { individual, clutch } of paths.flat()) {
      if (individual >= 0) wanted.individuals.add(individual);
      wanted.clutches.add(clutch < 0 ? own : clutch);
    }
}

/** Writes the loops of one animal out by the ids of the records on them, and lists these records once. */
export class LoopWriter {
  readonly #snapshot: LineageSnapshot;
  readonly #names: RecordNames;
  /** The clutch of the animal asked about. */
  readonly #own: number;
  readonly #animals = new Map<number, InbreedingLoopsView['animals'][number]>();
  readonly #clutches = new Map<number, InbreedingLoopsView['clutches'][number]>();

  constructor(snapshot: LineageSnapshot, names: RecordNames, own: number) {
    this.#snapshot = snapshot;
    this.#names = names;
    this.#own = own;
  }

  /** @param commonAncestor place of its common ancestor in the answer */
  loop(
    { part, odds, steps, kinship, paths: [first, second] }: InbreedingLoop,
    commonAncestor: number,
  ): InbreedingLoopView {
    return {
      commonAncestor,
      part,
      probability: Math.min(1, odds),
      steps,
      kinship,
      first: first.map((step) => this.#step(step)),
      second: second.map((step) => this.#step(step)),
    };
  }

  /** The records that were named so far. */
  get records(): Pick<InbreedingLoopsView, 'animals' | 'clutches'> {
    return { animals: [...this.#animals.values()], clutches: [...this.#clutches.values()] };
  }

  #step({ individual, clutch, odds, isTogether, isFirst }: LoopStep): LoopStepView {
    const of = clutch < 0 ? this.#own : clutch;
    return {
      animal: individual < 0 ? null : this.#animal(individual).id,
      clutch: this.#clutch(of).id,
      as: this.#roleIn(of, individual, isFirst),
      probability: this.#oddsIn(of, individual, isFirst),
      together: isTogether ? Math.min(1, odds) : null,
    };
  }

  #animal(individual: number): InbreedingLoopsView['animals'][number] {
    const known = this.#animals.get(individual) ?? this.#names.refOf(individual);
    this.#animals.set(individual, known);
    return known;
  }

  #clutch(clutch: number): InbreedingLoopsView['clutches'][number] {
    const known = this.#clutches.get(clutch) ?? {
      ...this.#names.idOf('clutch', clutch),
      title: this.#names.clutchTitle(clutch),
    };
    this.#clutches.set(clutch, known);
    return known;
  }

  /** Probability that an animal is a parent of a clutch; of a frog nobody knows, that the parent named first or second is one. */
  #oddsIn(clutch: number, individual: number, isFirst: boolean): number {
    const { pairStart, pairSire, pairDam, pairProbability } = this.#snapshot.graph.pedigree;
    let odds = 0;
    for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++) {
      const isSire = pairSire[pair] === individual && (individual >= 0 || isFirst);
      const isDam = pairDam[pair] === individual && (individual >= 0 || !isFirst);
      if (isSire || isDam) odds += pairProbability[pair] ?? 0;
    }
    return Math.min(1, odds);
  }

  /** Lists name sires first; an animal stands on one of them only. */
  #roleIn(clutch: number, individual: number, isFirst: boolean): LoopStepView['as'] {
    const { jointPairs, pedigree } = this.#snapshot.graph;
    if (jointPairs[clutch] === 1) return 'either';
    if (individual < 0) return isFirst ? 'sire' : 'dam';
    const { pairStart, pairSire } = pedigree;
    return pairSire.subarray(pairStart[clutch], pairStart[clutch + 1]).includes(individual) ? 'sire' : 'dam';
  }
}
