import { kinshipWith } from '../../lineage/kernel/kinship-with.ts';
import { meanKinshipOf } from '../../lineage/kernel/mean-kinship.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { isLiving } from '../../lineage/register-graph.ts';
import type { Breeder } from '../breeders.ts';
import { diversityGain, type LivingLine } from './diversity-gain.ts';
import type { MateOrder } from './mates.dto.ts';

/** A possible mate with the figures that it is ranked by. */
export interface RankedMate {
  readonly breeder: Breeder;
  /** Kinship of the two, which is F of their young. */
  readonly kinship: number;
  /** Mean kinship of the young with the living of the line; null where none lives. */
  readonly youngMean: number | null;
  readonly gain: number | null;
  /** Whether neither a source nor a parent of it is recorded, so that its figures stand for want of knowledge. */
  readonly isNothingKnown: boolean;
  /**
   * What it is ordered by, the first value first, the least the best. Whoever nothing is known of comes last: a 0 that nobody knows must not
   * pass for the best. Its registry serial tells equals apart.
   */
  readonly rank: Rank;
}

export type Rank = readonly [number, number, number, number];

/** The living of the line of an animal; null without a line or where none lives. */
export function livingLine(snapshot: LineageSnapshot, animal: number): (LivingLine & { living: Int32Array }) | null {
  const line = snapshot.graph.lineOf[animal] ?? -1;
  if (line < 0) return null;
  const living = snapshot.membersOfLine(line).filter((member) => isLiving(snapshot.graph, member));
  if (living.length === 0) return null;
  const means = snapshot.meanKinshipsOfLine(line);
  const meanKinship = living.reduce((sum, member) => sum + (means.get(member) ?? 0), 0) / living.length;
  return { living, count: living.length, meanKinship };
}

/** Ranks mates for an animal: three passes over their ancestry at most, whatever their number. */
export function rankMates(
  snapshot: LineageSnapshot,
  animal: number,
  breeders: readonly Breeder[],
  order: MateOrder,
): RankedMate[] {
  const { pedigree } = snapshot.graph;
  const numbers = Int32Array.from(breeders, (breeder) => breeder.animal);
  const kinships = kinshipWith(pedigree, snapshot.inbreeding, animal, numbers);
  const line = livingLine(snapshot, animal);
  const means = line
    ? meanKinshipOf(pedigree, snapshot.inbreeding, line.living, Int32Array.of(animal, ...numbers))
    : null;
  return breeders
    .map((breeder, place): RankedMate => {
      const kinship = kinships[place] ?? 0;
      const youngMean = means ? ((means[0] ?? 0) + (means[place + 1] ?? 0)) / 2 : null;
      const gain = line && youngMean !== null ? diversityGain(line, youngMean, kinship) : null;
      const serial = snapshot.graph.serials[breeder.animal] ?? 0;
      const loss = -(gain ?? 0);
      const isNothingKnown = snapshot.isNothingKnown(breeder.animal);
      const last = isNothingKnown ? 1 : 0;
      const rank: Rank = order === 'kinship' ? [last, kinship, loss, serial] : [last, loss, kinship, serial];
      return { breeder, kinship, youngMean, gain, isNothingKnown, rank };
    })
    .sort((one, other) => compare(one.rank, other.rank));
}

/** Compares two ranks as a list compares its rows: below 0 where the first comes first. */
export function compare(one: Rank, other: Rank): number {
  return one[0] - other[0] || one[1] - other[1] || one[2] - other[2] || one[3] - other[3];
}
