import { meanKinshipOf } from '../../lineage/kernel/mean-kinship.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { livingLine } from '../mates/rank-mates.ts';
import { ROUNDING, type GroupPool } from './group-choice.ts';
import type { GroupScoreView } from './groups.view.ts';

/** Figures of all animals that stand on either side of a group or its list. */
export class GroupFigures implements GroupPool {
  readonly kinship: Float64Array;
  readonly maleMeans: readonly number[];
  readonly femaleMeans: readonly number[];
  /** Whether any of the line lives, so that mean kinships say something. */
  readonly hasLine: boolean;
  readonly #weight: number;
  /** Of whom neither a source nor a parent is recorded, by their places. */
  readonly #unknownMales: readonly boolean[];
  readonly #unknownFemales: readonly boolean[];

  /** @param males each once, of the line of the first of them */
  constructor(snapshot: LineageSnapshot, males: readonly number[], females: readonly number[], weight: number) {
    const all = [...males, ...females];
    const matrix = snapshot.kinships(all);
    this.kinship = Float64Array.from(
      males.flatMap((_, row) => females.map((_, column) => matrix[row * all.length + males.length + column] ?? 0)),
    );
    const line = all[0] === undefined ? null : livingLine(snapshot, all[0]);
    const means = line
      ? meanKinshipOf(snapshot.graph.pedigree, snapshot.inbreeding, line.living, Int32Array.from(all))
      : new Float64Array(all.length);
    this.maleMeans = Array.from(means.subarray(0, males.length));
    this.femaleMeans = Array.from(means.subarray(males.length));
    this.hasLine = line !== null;
    this.#weight = weight;
    [this.#unknownMales, this.#unknownFemales] = [males, females].map((side) =>
      side.map((animal) => snapshot.isNothingKnown(animal)),
    ) as [boolean[], boolean[]];
  }

  /** Kinship of a male and a female, by their places. */
  #between(male: number, female: number): number {
    return this.kinship[male * this.femaleMeans.length + female] ?? 0;
  }

  /** Whether the 0 of a pair stands for want of knowledge. */
  #isBlind(male: number, female: number): boolean {
    const isUnknown = this.#unknownMales[male] === true || this.#unknownFemales[female] === true;
    return isUnknown && this.#between(male, female) < ROUNDING;
  }

  /** Whether any pair of some males and females, by their places, is related above a limit. */
  exceeds(males: readonly number[], females: readonly number[], most: number): boolean {
    return males.some((male) => females.some((female) => this.#between(male, female) > most + ROUNDING));
  }

  /** How many pairs of some males and females, by their places, are related above a limit. */
  pairsAbove(males: readonly number[], females: readonly number[], most: number): number {
    return males.reduce(
      (sum, male) => sum + females.filter((female) => this.exceeds([male], [female], most)).length,
      0,
    );
  }

  /** What young of some of the animals would be, by their places; null without a male or without a female. */
  score(males: readonly number[], females: readonly number[]): GroupScoreView | null {
    if (males.length === 0 || females.length === 0) return null;
    const pairs = males.flatMap((male) => females.map((female) => this.#between(male, female)));
    const expected = mean(pairs);
    const youngMean =
      (mean(males.map((male) => this.maleMeans[male] ?? 0)) +
        mean(females.map((female) => this.femaleMeans[female] ?? 0))) /
      2;
    return {
      inbreeding: { expected, least: Math.min(...pairs), greatest: Math.max(...pairs) },
      youngMeanKinship: this.hasLine ? youngMean : null,
      cost: youngMean + this.#weight * expected,
      pairs: pairs.length,
      nothingKnown: males.reduce(
        (sum, male) => sum + females.filter((female) => this.#isBlind(male, female)).length,
        0,
      ),
    };
  }
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
