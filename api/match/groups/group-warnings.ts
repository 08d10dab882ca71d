import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import type { RecordNames } from '../../lineage/record-names.ts';
import type { ExclusionReason } from '../breeders.ts';
import { percent, warnedAbove } from './best-group.ts';
import type { GroupRequest } from './groups.dto.ts';
import type { GroupScoreView } from './groups.view.ts';
import { say } from '../../platform/say.ts';

/** Most animals that a warning names. */
const NAMED_MOST = 6;
const HALF_SIBS = 0.125;

/** What is known of the animals that a warning may be about. */
interface Known {
  readonly snapshot: LineageSnapshot;
  readonly request: GroupRequest;
  readonly excluded: ReadonlyMap<number, ExclusionReason>;
  readonly disputed: ReadonlySet<number>;
  readonly names: RecordNames;
}

/** What stands against an animal, of one and of several. */
const notFit: Partial<Record<ExclusionReason, readonly [string, string]>> = {
  'not-living': [
    say`died, left the club, or nobody knows whether it lives`,
    say`died, left the club, or nobody knows whether they live`,
  ],
  'keeper-left': [say`belongs to a keeper who has left the club`, say`belong to keepers who have left the club`],
  'too-young': [
    say`is younger than the least age at which its species matures`,
    say`are younger than the least age at which their species matures`,
  ],
  'beyond-lifespan': [
    say`is older than its species is known to live`,
    say`are older than their species is known to live`,
  ],
};

/**
 * What a keeper must know before housing some animals together, in sentences.
 *
 * @param pairsAbove how many of their pairs would have young above the limit of F
 */
export function groupWarnings(
  { snapshot, request, excluded, disputed, names }: Known,
  members: readonly number[],
  score: GroupScoreView | null,
  pairsAbove: number,
): string[] {
  const { graph } = snapshot;
  const lines = [...new Set(members.map((animal) => graph.lines[graph.lineOf[animal] ?? -1]?.name ?? say`no line`))];
  const named = (some: readonly number[]): string => {
    const told = some.slice(0, NAMED_MOST).map((animal) => names.record('individual', animal).name);
    const more = some.length - told.length;
    return listed(more > 0 ? [...told, say`${more} more`] : told);
  };
  const withNothingKnown = members.filter((animal) => snapshot.isNothingKnown(animal));
  const withDispute = members.filter((animal) => disputed.has(animal));
  return [
    ...(lines.length > 1
      ? [say`Young of this group may be crosses of ${listed(lines)}, and belong to none of them.`]
      : []),
    ...(score && pairsAbove > 0 ? [relatedInWords(pairsAbove, score.pairs, warnedAbove(request))] : []),
    ...(withNothingKnown.length > 0
      ? [
          say`Neither a source nor a parent is recorded of ${named(withNothingKnown)}: in the figures that counts as unrelated, which nobody knows.`,
        ]
      : []),
    ...(withDispute.length > 0
      ? [say`The label of ${named(withDispute)} is disputed: the young would carry that on.`]
      : []),
    ...Object.entries(notFit).flatMap(([reason, [one, several]]) => {
      const some = members.filter((animal) => excluded.get(animal) === reason);
      return some.length === 0 ? [] : [say`${named(some)} ${some.length === 1 ? one : several}.`];
    }),
  ];
}

function relatedInWords(above: number, of: number, limit: number): string {
  const pairs =
    above === of
      ? of === 1
        ? say`The pair is`
        : say`All ${of} pairs are`
      : say`${above} of ${of} pairs ${above === 1 ? 'is' : 'are'}`;
  const how =
    limit === HALF_SIBS ? say`closer related than half-sibs` : say`related above the limit of ${percent(limit)}`;
  return say`${pairs} ${how}, and nobody can keep them from breeding in one tank.`;
}

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : say`${names.slice(0, -1).join(', ')} and ${names[names.length - 1] ?? ''}`;
