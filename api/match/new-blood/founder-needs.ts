import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import type { Gains } from './holding-gains.ts';
import type { HoldingMeasures } from './holding.ts';

/** A founder of which there is less than there should be. */
export interface LackedFounder {
  readonly founder: number;
  /** −1 without one. */
  readonly source: number;
  /** Expected parts of the gene pools; 0 to 1. */
  readonly inLine: number;
  readonly inHolding: number;
}

/** A founder of which an animal carries more than the holding has. */
export interface BroughtFounder extends LackedFounder {
  readonly share: number;
  readonly least: number;
}

/** Parts that differ by less differ by rounding alone. */
const ROUNDING = 1e-12;

/**
 * Which founders a holding needs: those of which it has less than the line; where it is the whole line, those that gave it less than an even
 * part. One of which it has nothing is always needed.
 */
export class FounderNeeds {
  readonly #snapshot: LineageSnapshot;
  readonly #inHolding: ReadonlyMap<number, number>;
  readonly #inLine: ReadonlyMap<number, number>;
  readonly #even: number | null;

  constructor(snapshot: LineageSnapshot, { holding, line }: Gains, isWholeLine: boolean) {
    this.#snapshot = snapshot;
    this.#inHolding = partsOf(holding);
    this.#inLine = partsOf(line);
    this.#even = isWholeLine ? 1 / Math.max(1, line.founders.length) : null;
  }

  /** The founders that are needed, first those of which most is missing, of equals the older number. */
  lacked(): LackedFounder[] {
    return [...this.#inLine.keys()]
      .map((founder) => this.#lacked(founder))
      .filter((lacked) => this.#isNeeded(lacked))
      .sort((one, other) => this.#missing(other) - this.#missing(one) || one.founder - other.founder);
  }

  /** The needed founders of which an animal carries more than the holding has, first those that it brings most of. */
  broughtBy(animal: number): BroughtFounder[] {
    const flow = this.#snapshot.flowTo(animal);
    return [...flow.shares().individuals]
      .map(([founder, share]) => ({ ...this.#lacked(founder), share, least: 0 }))
      .filter((brought) => this.#isNeeded(brought) && brought.share > brought.inHolding + ROUNDING)
      .sort((one, other) => other.share - other.inHolding - (one.share - one.inHolding) || one.founder - other.founder)
      .map((brought) => ({ ...brought, least: flow.leastShare((founder) => founder === brought.founder) }));
  }

  #lacked(founder: number): LackedFounder {
    return {
      founder,
      source: this.#snapshot.graph.pedigree.sourceOf[founder] ?? -1,
      inLine: this.#inLine.get(founder) ?? 0,
      inHolding: this.#inHolding.get(founder) ?? 0,
    };
  }

  #missing({ inLine, inHolding }: LackedFounder): number {
    return (this.#even ?? inLine) - inHolding;
  }

  #isNeeded(lacked: LackedFounder): boolean {
    return lacked.inHolding === 0 || this.#missing(lacked) > ROUNDING;
  }
}

function partsOf({ founders, parts }: HoldingMeasures): Map<number, number> {
  return new Map(Array.from(founders, (founder, place) => [founder, parts[place] ?? 0]));
}
