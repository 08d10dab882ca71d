import type { EntityManager } from 'typeorm';
import { kinshipRangesWith } from '../../lineage/kernel/kinship-with.ts';
import type { InbreedingRange } from '../../lineage/kernel/inbreeding.ts';
import { labelEvidenceOfYoung, toFindings, type LabelEvidence } from '../../lineage/label-evidence.ts';
import { factsFor, readLabelFacts } from '../../lineage/label-facts.queries.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { RecordNames, WantedNames } from '../../lineage/record-names.ts';
import { auditLabel } from '../../provenance/flags.ts';
import { exclusionReasons } from '../breeders.ts';
import { exclusionWords } from '../mates/exclusion-words.ts';
import { readKeeperNames } from '../mates/keeper-names.queries.ts';
import type { YoungLabelView } from '../mates/mates.view.ts';
import type { Alternative } from './alternatives.ts';
import type { PlanFound } from './make-plan.ts';
import type { Candidate, Candidates, PlannedLine } from './plan-candidates.ts';
import type { PlanRequest } from './plan.dto.ts';
import type {
  AlternativeView,
  LeftOutView,
  MateRankView,
  PlanAnimalView,
  PlanExcludedView,
  PlanPairView,
  PlanView,
  TradeOffView,
} from './plan.view.ts';
import { whyChosen, whyLeftOut } from './reason-words.ts';
import type { ChosenPair, LeftOut, MateRank, Side } from './reasons.ts';
import type { RegisterPlan } from './register-plan.ts';

/** Animals that are named for each reason why they may not breed. */
const NAMED_MOST = 12;

/** All that a plan is told from. */
export interface PlanTold {
  readonly snapshot: LineageSnapshot;
  readonly planned: PlannedLine;
  readonly request: PlanRequest;
  readonly candidates: Candidates;
  readonly plan: PlanFound;
  readonly means: RegisterPlan['means'];
}

/** Reads the names and labels that belong to a plan, and tells it. */
export async function planView(manager: EntityManager, told: PlanTold): Promise<PlanView> {
  const teller = await PlanTeller.read(manager, told);
  return teller.view();
}

class PlanTeller {
  private constructor(
    private readonly told: PlanTold,
    private readonly names: RecordNames,
    private readonly keepers: ReadonlyMap<string, string>,
    private readonly labels: readonly YoungLabelView[],
  ) {}

  static async read(manager: EntityManager, told: PlanTold): Promise<PlanTeller> {
    const { snapshot, candidates, plan } = told;
    const all = [...candidates.males, ...candidates.females];
    const wanted = new WantedNames();
    for (const { animal } of [...all, ...candidates.excluded]) wanted.individuals.add(animal);
    const evidence = plan.pairs.map(({ male, female }) =>
      labelEvidenceOfYoung(snapshot, [
        { a: candidates.males[male]?.animal ?? -1, b: candidates.females[female]?.animal ?? -1, probability: 1 },
      ]),
    );
    const asked = snapshot.idOf(all[0]?.animal ?? -1);
    const [names, facts, keepers] = await Promise.all([
      RecordNames.read(manager, snapshot.graph, wanted),
      readLabelFacts(manager, snapshot, evidence, [asked]),
      readKeeperNames(manager, [...new Set(all.map(({ keeperId }) => keeperId))]),
    ]);
    const label = (one: LabelEvidence): YoungLabelView => ({
      shares: [...one.standings],
      tracedShare: one.tracedShare,
      flags: auditLabel(toFindings(snapshot, one, factsFor(facts, asked), names)).map(({ code, severity }) => ({
        code,
        severity,
      })),
    });
    return new PlanTeller(told, names, keepers, evidence.map(label));
  }

  view(): PlanView {
    const { plan, request, snapshot, planned } = this.told;
    const { sums, sum, bound, gap, isOptimal } = plan;
    const line = snapshot.graph.lines[planned.line];
    const ranges = this.#ranges();
    return {
      line: { id: line?.id ?? '', name: line?.name ?? '' },
      pairs: plan.pairs.map((pair, place) => this.#pair(pair, ranges[place], this.labels[place])),
      leftOut: plan.leftOut.map((animal) => this.#leftOut(animal)),
      excluded: this.#excluded(),
      objective: { weight: request.weight, ...sums, sum, bound, gap, isOptimal },
      tradeOff: this.#tradeOff(),
      moves: plan.pairs.filter(({ isMove }) => isMove).length,
      seconds: plan.choosingSeconds,
      cautions: this.#cautions(),
      asOf: snapshot.asOf,
    };
  }

  #pair(pair: ChosenPair, range: InbreedingRange | undefined, label: YoungLabelView | undefined): PlanPairView {
    const { kinship, meanKinship, cost, isMove, isFixed } = pair;
    return {
      male: this.#animal('male', pair.male),
      female: this.#animal('female', pair.female),
      inbreeding: range ?? { expected: kinship, least: kinship, greatest: kinship },
      meanKinship,
      cost,
      isMove,
      isFixed,
      label: label ?? { shares: [], tracedShare: { expected: 0, least: 0 }, flags: [] },
      forMale: this.#rank('female', pair.forMale),
      forFemale: this.#rank('male', pair.forFemale),
      without: alternativeView(pair.without),
      why: whyChosen(pair, (side, place) => this.#nameOf(side, place)),
      warnings: this.#warnings(pair, range),
    };
  }

  #leftOut(animal: LeftOut): LeftOutView {
    const { request } = this.told;
    const other = animal.side === 'male' ? 'female' : 'male';
    return {
      animal: this.#animal(animal.side, animal.place),
      reason: animal.reason,
      why: whyLeftOut(animal, request.pairings, request.inbreedingTo),
      mates: animal.mates,
      bestMate: animal.bestMate && this.names.refOf(this.#candidate(other, animal.bestMate.mate).animal),
      including: alternativeView(animal.including),
    };
  }

  #rank(mates: Side, { rank, of, bestOther }: MateRank): MateRankView {
    return {
      rank,
      of,
      bestOther: bestOther && {
        animal: this.names.refOf(this.#candidate(mates, bestOther.mate).animal),
        difference: bestOther.difference,
        isSpent: bestOther.isSpent,
      },
    };
  }

  #animal(side: Side, place: number): PlanAnimalView {
    const { animal, keeperId, age, isProven, isReserve } = this.#candidate(side, place);
    const { graph } = this.told.snapshot;
    const line = graph.lines[graph.lineOf[animal] ?? -1];
    return {
      animal: this.names.refOf(animal),
      line: line ? { id: line.id, name: line.name } : null,
      keeper: this.keepers.get(keeperId) ?? '',
      keeperId,
      age: age && { least: age.least === null ? null : Math.max(0, age.least), greatest: age.greatest },
      proven: isProven,
      isReserve,
      meanKinship: this.told.means[side][place] ?? 0,
    };
  }

  #warnings({ male, female, kinship }: ChosenPair, range: InbreedingRange | undefined): string[] {
    const { snapshot, request } = this.told;
    const { lineOf, lines } = snapshot.graph;
    const two = [this.#candidate('male', male), this.#candidate('female', female)];
    const [one, other] = two.map(({ animal }) => lines[lineOf[animal] ?? -1]?.name ?? 'no line');
    const isCross = new Set(two.map(({ animal }) => lineOf[animal])).size > 1;
    const names = (some: readonly Candidate[]): string =>
      some.map(({ animal }) => this.names.record('individual', animal).name).join(' and ');
    const disputed = two.filter(({ isDisputed }) => isDisputed);
    const ageless = two.filter(({ age }) => age === null);
    const isAbove = kinship > request.inbreedingTo + 1e-12;
    const mayBeAbove = !isAbove && (range?.greatest ?? 0) > request.inbreedingTo + 1e-12;
    return [
      ...(isCross ? [`The young would be a cross of ${one} and ${other}, and belong to neither.`] : []),
      ...(isAbove ? [`F of the young would be above the limit of ${request.inbreedingTo}; the request fixed it.`] : []),
      ...(mayBeAbove ? ['Parents are uncertain: F of the young may turn out above the limit.'] : []),
      ...(disputed.length > 0 ? [`The label of ${names(disputed)} is disputed: the young would carry that on.`] : []),
      ...(ageless.length > 0
        ? [`The hatching date of ${names(ageless)} is not recorded: check that it is grown.`]
        : []),
    ];
  }

  /** F of the young of each pair, with its range: the pairs of one male together. */
  #ranges(): (InbreedingRange | undefined)[] {
    const { plan, snapshot } = this.told;
    const ranges = new Map<ChosenPair, InbreedingRange | undefined>();
    for (const male of new Set(plan.pairs.map((pair) => pair.male))) {
      const pairs = plan.pairs.filter((pair) => pair.male === male);
      const females = Int32Array.from(pairs, ({ female }) => this.#candidate('female', female).animal);
      const { animal } = this.#candidate('male', male);
      const found = kinshipRangesWith(snapshot.graph.pedigree, snapshot.inbreeding, animal, females);
      pairs.forEach((pair, place) => ranges.set(pair, found[place]));
    }
    return plan.pairs.map((pair) => ranges.get(pair));
  }

  #excluded(): PlanExcludedView[] {
    const { excluded } = this.told.candidates;
    return exclusionReasons.flatMap((reason): PlanExcludedView[] => {
      const some = excluded.filter((one) => one.reason === reason);
      if (some.length === 0) return [];
      const animals = some.slice(0, NAMED_MOST).map(({ animal }) => this.names.refOf(animal));
      return [{ reason, detail: exclusionWords[reason], count: some.length, animals }];
    });
  }

  #tradeOff(): TradeOffView[] {
    const { plan, request } = this.told;
    const own: TradeOffView = {
      weight: request.weight,
      ...plan.sums,
      moves: plan.pairs.filter(({ isMove }) => isMove).length,
      isOptimal: plan.isOptimal,
    };
    return [...plan.tradeOff, own].sort((one, other) => one.weight - other.weight);
  }

  #cautions(): string[] {
    const { plan, candidates, snapshot } = this.told;
    const used = plan.pairs.flatMap(({ male, female }) => [
      this.#candidate('male', male).animal,
      this.#candidate('female', female).animal,
    ]);
    const unknown = new Set(used.filter((animal) => snapshot.isNothingKnown(animal))).size;
    const percent = (plan.gap * 100).toPrecision(2);
    return [
      ...(plan.isOptimal ? [] : [`Another plan may be better by up to ${percent} %: the time was over.`]),
      ...(unknown > 0
        ? [`Of ${unknown} animals in the plan no ancestor is known: they count as unrelated, which they may not be.`]
        : []),
      ...(candidates.males.length === 0 || candidates.females.length === 0 ? ['One sex is missing.'] : []),
      "Figures advise; the animals' welfare and the keeper's eye decide.",
    ];
  }

  #candidate(side: Side, place: number): Candidate {
    const candidate = this.told.candidates[side === 'male' ? 'males' : 'females'][place];
    if (!candidate) throw new RangeError(`There is no ${side} at place ${place} of the plan.`);
    return candidate;
  }

  #nameOf(side: Side, place: number): string {
    return this.names.record('individual', this.#candidate(side, place).animal).name;
  }
}

function alternativeView(alternative: Alternative): AlternativeView {
  if (alternative === null) return { is: 'unknown', extra: null, isExact: false };
  if (alternative === 'impossible') return { is: 'impossible', extra: null, isExact: true };
  return { is: 'possible', ...alternative };
}
