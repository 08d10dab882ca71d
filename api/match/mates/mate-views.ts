import type { EntityManager } from 'typeorm';
import { kinshipRangesWith } from '../../lineage/kernel/kinship-with.ts';
import { labelEvidenceOfYoung } from '../../lineage/label-evidence.ts';
import { factsFor, readLabelFacts } from '../../lineage/label-facts.queries.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { RecordNames, WantedNames } from '../../lineage/record-names.ts';
import { sexOf } from '../../lineage/register-graph.ts';
import { restsOn } from '../../lineage/young-inbreeding.ts';
import { readProven } from '../../register/individuals/individual-details.queries.ts';
import { readKeeperNames, readKeeperRegions } from './keeper-names.queries.ts';
import { noLabel, youngLabel } from '../young-label.ts';
import type { PossibleMateView } from './mates.view.ts';
import type { RankedMate } from './rank-mates.ts';
import { say } from '../../platform/say.ts';

/** What the young of an animal with each of some mates would be. */
export async function mateViews(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  animal: number,
  mates: readonly RankedMate[],
): Promise<PossibleMateView[]> {
  const { graph } = snapshot;
  const numbers = mates.map(({ breeder }) => breeder.animal);
  const ids = numbers.map((number) => snapshot.idOf(number));
  const wanted = new WantedNames();
  for (const number of numbers) wanted.individuals.add(number);
  const evidence = numbers.map((mate) => {
    const isSire = sexOf(graph, animal) === 'male' || sexOf(graph, mate) === 'female';
    return labelEvidenceOfYoung(snapshot, [{ a: isSire ? animal : mate, b: isSire ? mate : animal, probability: 1 }]);
  });
  const asked = snapshot.idOf(animal);
  const keeperIds = [...new Set(mates.map(({ breeder }) => breeder.keeperId))];
  const [names, facts, proven, keepers, regions] = await Promise.all([
    RecordNames.read(manager, graph, wanted),
    readLabelFacts(manager, snapshot, evidence, [asked]),
    readProven(manager, ids),
    readKeeperNames(manager, keeperIds),
    readKeeperRegions(manager, keeperIds),
  ]);
  const ranges = kinshipRangesWith(graph.pedigree, snapshot.inbreeding, animal, Int32Array.from(numbers));
  return mates.map(({ breeder, kinship, youngMean, gain }, place): PossibleMateView => {
    const { animal: mate, keeperId, age } = breeder;
    const line = graph.lines[graph.lineOf[mate] ?? -1];
    const label = evidence[place];
    return {
      animal: names.refOf(mate),
      line: line ? { id: line.id, name: line.name } : null,
      keeper: keepers.get(keeperId) ?? '',
      keeperId,
      region: regions.get(keeperId) ?? null,
      hatched: names.individual(mate)?.hatched ?? null,
      age: age && { least: age.least === null ? null : Math.max(0, age.least), greatest: age.greatest },
      proven: proven.has(ids[place] ?? ''),
      inbreeding: restsOn(
        snapshot,
        animal,
        mate,
        ranges[place] ?? { expected: kinship, least: kinship, greatest: kinship },
      ),
      youngMeanKinship: youngMean,
      diversityGain: gain,
      label: label ? youngLabel(snapshot, label, factsFor(facts, asked), names) : noLabel,
      warnings: warningsFor(snapshot, animal, breeder),
    };
  });
}

function warningsFor(
  snapshot: LineageSnapshot,
  animal: number,
  { animal: mate, age, isDisputed, sex }: RankedMate['breeder'],
): string[] {
  const { lineOf, lines } = snapshot.graph;
  const isCross = lineOf[animal] !== lineOf[mate];
  const named = (line: number | undefined): string => lines[line ?? -1]?.name ?? say`no line`;
  return [
    ...(isCross
      ? [say`The young would be a cross of ${named(lineOf[animal])} and ${named(lineOf[mate])}, and belong to neither.`]
      : []),
    ...(isDisputed ? [say`The label of this animal is disputed: the young would carry that on.`] : []),
    ...(sex === 'unsexed' ? [say`Its sex is not known yet: it may turn out to be no mate.`] : []),
    ...(snapshot.isNothingKnown(mate)
      ? [
          say`Neither a source nor a parent of this animal is recorded: it counts as unrelated, which it may not be, and stands at the end.`,
        ]
      : []),
    ...(age === null ? [say`Its hatching date is not recorded: check that it is grown.`] : []),
  ];
}
