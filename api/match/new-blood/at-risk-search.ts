import type { Pedigree } from '../../lineage/kernel/pedigree.ts';
import { Descendants, type Carrier } from './descendants.ts';
import { geneSurvival, type GeneSurvival } from './gene-survival.ts';

/** What an animal counts as: nothing, one that lives and may not breed, or one that may, by its sex as far as that is known. */
export const NOT_COUNTED = 0;
export const LIVES = 1;
export const MALE = 2;
export const FEMALE = 3;
export const EITHER = 4;

/** What can be lost, in the order in which equals are told. */
export const lostKinds = ['line', 'source', 'founder'] as const;
export type LostKind = (typeof lostKinds)[number];

/** What comes first: few that may breed, then little of the genome left, then the kind and a number that tells equals apart. */
export type Urgency = readonly [breeders: number, copies: number, kind: number, number: number];

/** A register, and what of it may be about to be lost. */
export interface AtRiskQuestion {
  readonly pedigree: Pedigree;
  /** Place of each clutch in an order with parents first. */
  readonly positionOf: Int32Array;
  /** n: what each animal counts as. */
  readonly countsAs: Uint8Array;
  /** Founders that come into question, each once. */
  readonly founders: Int32Array;
  /** Lines that come into question, and all animals of each. */
  readonly lines: readonly { readonly line: number; readonly animals: Int32Array }[];
  /** With so many that may breed, or fewer, something is about to be lost. */
  readonly mostCarriers: number;
  readonly after: Urgency | null;
  readonly limit: number;
  /** How many carriers are named, at most. */
  readonly named: number;
}

/** Something that is about to be lost. */
export interface AtRisk {
  readonly kind: LostKind;
  /** Dense number of the line, the source or the founder. */
  readonly number: number;
  readonly urgency: Urgency;
  readonly isFew: boolean;
  /** Where all that may breed are of one sex: which. */
  readonly onlySex: 'male' | 'female' | null;
  readonly living: number;
  readonly breeders: number;
  /** Founders of a source, and how many of them have a living carrier; null for others. */
  readonly founders: { readonly recorded: number; readonly left: number } | null;
  /** The first carriers, those that may breed and the greatest shares first; a line has each animal whole. */
  readonly carriers: readonly Carrier[];
  /** Null for a line. */
  readonly survival: GeneSurvival | null;
}

/** One page of what is about to be lost. */
export interface AtRiskFound {
  readonly items: readonly AtRisk[];
  readonly total: number;
  readonly next: Urgency | null;
  /** What nobody living carries any more. */
  readonly lost: Readonly<Record<LostKind, number>>;
}

/** Compares two urgencies: below 0 where the first is the more urgent. */
export function compareUrgency(one: Urgency, other: Urgency): number {
  for (const [place, value] of one.entries()) {
    const difference = value - (other[place] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

interface Found {
  readonly kind: LostKind;
  readonly number: number;
  readonly urgency: Urgency;
  readonly isFew: boolean;
  readonly onlySex: AtRisk['onlySex'];
  readonly founders: AtRisk['founders'];
  /** Living animals that carry it, and the way from the founders to them. */
  readonly carriers: readonly Carrier[];
  readonly seeds: readonly number[];
  readonly clutches: Int32Array;
}

/**
 * What is about to be lost: lines, sources and founders of which only few living animals that may breed carry anything, and lines and
 * sources whose last ones are of one sex. A founder counts apart from its source only where it has fewer of them.
 */
export function searchAtRisk(question: AtRiskQuestion): AtRiskFound {
  const search = new AtRiskSearch(question);
  const found = search.run().sort((one, other) => compareUrgency(one.urgency, other.urgency));
  const { after, limit } = question;
  const rest = after ? found.filter(({ urgency }) => compareUrgency(urgency, after) > 0) : found;
  const page = rest.slice(0, limit);
  return {
    items: page.map((one) => search.tell(one)),
    total: found.length,
    next: rest.length > limit ? (page.at(-1)?.urgency ?? null) : null,
    lost: search.lost,
  };
}

class AtRiskSearch {
  readonly lost: Record<LostKind, number> = { line: 0, source: 0, founder: 0 };
  readonly #question: AtRiskQuestion;
  readonly #descendants: Descendants;

  constructor(question: AtRiskQuestion) {
    this.#question = question;
    this.#descendants = new Descendants(question.pedigree, question.positionOf);
  }

  run(): Found[] {
    const { founders, pedigree, lines } = this.#question;
    const bySource = new Map<number, number[]>();
    const found = lines.flatMap(({ line, animals }) => this.#line(line, animals));
    const alone: number[] = [];
    for (const founder of founders) {
      const source = pedigree.sourceOf[founder] ?? -1;
      const others = bySource.get(source);
      if (source < 0) alone.push(founder);
      else if (others) others.push(founder);
      else bySource.set(source, [founder]);
    }
    for (const founder of alone) found.push(...this.#founder(founder));
    for (const [source, own] of bySource) found.push(...this.#source(source, own));
    return found;
  }

  tell({ carriers, seeds, clutches, ...found }: Found): AtRisk {
    const breeds = (animal: number): boolean => this.#countsAs(animal) > LIVES;
    const first = [...carriers].sort(
      (one, other) =>
        Number(breeds(other.animal)) - Number(breeds(one.animal)) ||
        other.expected - one.expected ||
        one.animal - other.animal,
    );
    const breeders = carriers.filter(({ animal }) => breeds(animal)).map(({ animal }) => animal);
    return {
      ...found,
      living: carriers.length,
      breeders: breeders.length,
      carriers: first.slice(0, this.#question.named),
      survival: found.kind === 'line' ? null : geneSurvival(this.#question.pedigree, seeds, clutches, breeders),
    };
  }

  #countsAs(animal: number): number {
    return this.#question.countsAs[animal] ?? NOT_COUNTED;
  }

  #line(line: number, animals: Int32Array): Found[] {
    if (animals.length === 0) return [];
    const living = [...animals].filter((animal) => this.#countsAs(animal) !== NOT_COUNTED);
    const carriers = living.map((animal) => ({ animal, expected: 1, least: 1 }));
    return this.#judge('line', line, carriers, { seeds: [], clutches: new Int32Array(0), founders: null });
  }

  #source(source: number, founders: readonly number[]): Found[] {
    const lostBefore = this.lost.source;
    const found = this.#descent('source', source, founders);
    if (founders.length === 1 || this.lost.source > lostBefore) return found;
    const breedersOfSource = found[0]?.isFew ? found[0].urgency[0] : Infinity;
    // a founder that lives on in the same few is told with its source
    return [
      ...found,
      ...founders.flatMap((founder) => this.#founder(founder)).filter(({ urgency }) => urgency[0] < breedersOfSource),
    ];
  }

  #founder(founder: number): Found[] {
    return this.#descent('founder', founder, [founder]);
  }

  #descent(kind: 'source' | 'founder', number: number, seeds: readonly number[]): Found[] {
    const counts = new Uint32Array(EITHER + 1);
    const living: number[] = [];
    const clutches = this.#descendants.walk(seeds, (animal) => {
      const as = this.#countsAs(animal);
      counts[as] = (counts[as] ?? 0) + 1;
      if (as !== NOT_COUNTED) living.push(animal);
      return this.#mayBeAtRisk(kind, counts);
    });
    if (!clutches) return [];
    const carriers = this.#descendants
      .shares(seeds, clutches, living)
      .filter(({ expected }) => expected > 0)
      .sort((one, other) => one.animal - other.animal);
    const founders = kind === 'source' ? { recorded: seeds.length, left: this.#left(seeds) } : null;
    return this.#judge(kind, number, carriers, { seeds, clutches, founders });
  }

  /** Whether what was met so far leaves it open that few carry it, or animals of one sex only. */
  #mayBeAtRisk(kind: LostKind, counts: Uint32Array): boolean {
    const [males, females, either] = [counts[MALE] ?? 0, counts[FEMALE] ?? 0, counts[EITHER] ?? 0];
    if (males + females + either <= this.#question.mostCarriers) return true;
    return kind === 'source' && either === 0 && (males === 0 || females === 0);
  }

  #left(founders: readonly number[]): number {
    const isLeft = (founder: number): boolean =>
      this.#descendants.walk([founder], (animal) => this.#countsAs(animal) === NOT_COUNTED) === null;
    return founders.filter(isLeft).length;
  }

  #judge(
    kind: LostKind,
    number: number,
    carriers: readonly Carrier[],
    rest: Pick<Found, 'seeds' | 'clutches' | 'founders'>,
  ): Found[] {
    if (carriers.length === 0) {
      this.lost[kind]++;
      return [];
    }
    const breeding = carriers.filter(({ animal }) => this.#countsAs(animal) > LIVES);
    const all = (sex: number): boolean =>
      breeding.length > 0 && breeding.every(({ animal }) => this.#countsAs(animal) === sex);
    const onlySex = kind === 'founder' ? null : all(MALE) ? 'male' : all(FEMALE) ? 'female' : null;
    const isFew = breeding.length <= this.#question.mostCarriers;
    if (!isFew && onlySex === null) return [];
    const copies = breeding.reduce((sum, { expected }) => sum + expected, 0);
    const urgency: Urgency = [breeding.length, copies, lostKinds.indexOf(kind), number];
    return [{ kind, number, urgency, isFew, onlySex, carriers, ...rest }];
  }
}
