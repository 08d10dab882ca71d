import type { EntityManager } from 'typeorm';
import type { InbreedingRange } from '../../lineage/kernel/inbreeding.ts';
import { kinshipRangesWith } from '../../lineage/kernel/kinship-with.ts';
import { labelEvidenceOfYoung } from '../../lineage/label-evidence.ts';
import { factsFor, readLabelFacts } from '../../lineage/label-facts.queries.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { RecordNames, WantedNames } from '../../lineage/record-names.ts';
import { restsOn, type YoungInbreeding } from '../../lineage/young-inbreeding.ts';
import type { Span } from '../../register/warnings/spans.ts';
import { exclusionReasons, type ExclusionReason } from '../breeders.ts';
import type { YoungLabelView } from '../mates/mates.view.ts';
import { noLabel, youngLabel } from '../young-label.ts';
import type { PlanFound } from './make-plan.ts';
import type { Candidate, Candidates, PlannedLine } from './plan-candidates.ts';
import type { ChosenPair, Side } from './reasons.ts';
import type { RegisterPlan } from './register-plan.ts';

/** A line as it was called. */
export interface RecordedLine {
  readonly id: string;
  readonly name: string;
}

/** An animal that a plan might use, as it was. */
export interface RecordedAnimal {
  readonly id: string;
  readonly line: RecordedLine | null;
  readonly keeperId: string;
  /** Months; null where no hatching date was recorded. */
  readonly age: Span | null;
  readonly isProven: boolean;
  /** Old, and had not bred. */
  readonly isReserve: boolean;
  readonly isDisputed: boolean;
  readonly meanKinship: number;
  /** Whether nothing was recorded above it. */
  readonly isNothingKnown: boolean;
}

/**
 * A plan with all that it is told from, by ids of records and places in its lists: no name of an animal or a person is in it, so it can be
 * kept and told to others, each as far as they may see. JSON holds it without loss.
 */
export interface PlanRecord {
  readonly line: RecordedLine;
  readonly males: readonly RecordedAnimal[];
  readonly females: readonly RecordedAnimal[];
  readonly excluded: readonly { readonly reason: ExclusionReason; readonly ids: readonly string[] }[];
  readonly plan: PlanFound;
  /** F of the young of each pair, and their label. */
  readonly young: readonly { readonly inbreeding: YoungInbreeding; readonly label: YoungLabelView }[];
  readonly asOf: { readonly revision: number; readonly at: string };
}

/** What a plan is recorded from. */
export interface PlanMade {
  readonly snapshot: LineageSnapshot;
  readonly planned: PlannedLine;
  readonly candidates: Candidates;
  readonly plan: PlanFound;
  readonly means: RegisterPlan['means'];
}

/** Gathers all that a plan is told from, as it is at the snapshot. */
export async function recordPlan(manager: EntityManager, made: PlanMade): Promise<PlanRecord> {
  const { snapshot, planned, candidates, plan, means } = made;
  const ranges = rangesOf(made);
  const labels = await labelsOf(manager, made);
  return {
    line: lineOf(snapshot, planned.line) ?? { id: '', name: '' },
    males: candidates.males.map((male, place) => recorded(snapshot, male, means.male[place] ?? 0)),
    females: candidates.females.map((female, place) => recorded(snapshot, female, means.female[place] ?? 0)),
    excluded: exclusionReasons.flatMap((reason) => {
      const some = candidates.excluded.filter((one) => one.reason === reason);
      return some.length === 0 ? [] : [{ reason, ids: some.map(({ animal }) => snapshot.idOf(animal)) }];
    }),
    plan,
    young: plan.pairs.map(({ male, female, kinship }, place) => ({
      inbreeding: restsOn(
        snapshot,
        animalAt(made, 'male', male),
        animalAt(made, 'female', female),
        ranges[place] ?? { expected: kinship, least: kinship, greatest: kinship },
      ),
      label: labels[place] ?? noLabel,
    })),
    asOf: snapshot.asOf,
  };
}

function recorded(snapshot: LineageSnapshot, candidate: Candidate, meanKinship: number): RecordedAnimal {
  const { animal, keeperId, age, isProven, isReserve, isDisputed } = candidate;
  return {
    id: snapshot.idOf(animal),
    line: lineOf(snapshot, snapshot.graph.lineOf[animal] ?? -1),
    keeperId,
    age: age && { least: age.least === null ? null : Math.max(0, age.least), greatest: age.greatest },
    isProven,
    isReserve,
    isDisputed,
    meanKinship,
    isNothingKnown: snapshot.isNothingKnown(animal),
  };
}

function lineOf({ graph }: LineageSnapshot, line: number): RecordedLine | null {
  const node = graph.lines[line];
  return node ? { id: node.id, name: node.name } : null;
}

function animalAt({ candidates }: PlanMade, side: Side, place: number): number {
  return candidates[side === 'male' ? 'males' : 'females'][place]?.animal ?? -1;
}

/** F of the young of each pair, with its range: the pairs of one male together. */
function rangesOf(made: PlanMade): (InbreedingRange | undefined)[] {
  const { plan, snapshot } = made;
  const ranges = new Map<ChosenPair, InbreedingRange | undefined>();
  for (const male of new Set(plan.pairs.map((pair) => pair.male))) {
    const pairs = plan.pairs.filter((pair) => pair.male === male);
    const females = Int32Array.from(pairs, ({ female }) => animalAt(made, 'female', female));
    const { pedigree } = snapshot.graph;
    const found = kinshipRangesWith(pedigree, snapshot.inbreeding, animalAt(made, 'male', male), females);
    pairs.forEach((pair, place) => ranges.set(pair, found[place]));
  }
  return plan.pairs.map((pair) => ranges.get(pair));
}

async function labelsOf(manager: EntityManager, made: PlanMade): Promise<YoungLabelView[]> {
  const { snapshot, candidates, plan } = made;
  const all = [...candidates.males, ...candidates.females];
  const wanted = new WantedNames();
  for (const { animal } of [...all, ...candidates.excluded]) wanted.individuals.add(animal);
  const evidence = plan.pairs.map(({ male, female }) =>
    labelEvidenceOfYoung(snapshot, [
      { a: animalAt(made, 'male', male), b: animalAt(made, 'female', female), probability: 1 },
    ]),
  );
  const asked = snapshot.idOf(all[0]?.animal ?? -1);
  const [names, facts] = await Promise.all([
    RecordNames.read(manager, snapshot.graph, wanted),
    readLabelFacts(manager, snapshot, evidence, [asked]),
  ]);
  return evidence.map((one) => youngLabel(snapshot, one, factsFor(facts, asked), names));
}
