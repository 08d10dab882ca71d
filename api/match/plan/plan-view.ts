import type { EntityManager } from 'typeorm';
import { exclusionWords } from '../mates/exclusion-words.ts';
import type { YoungInbreedingView } from '../../lineage/inbreeding.view.ts';
import type { YoungInbreeding } from '../../lineage/young-inbreeding.ts';
import { readKeeperNames } from '../mates/keeper-names.queries.ts';
import type { Alternative } from './alternatives.ts';
import { AnimalNames } from './animal-names.ts';
import type { PlanRecord, RecordedAnimal } from './plan-record.ts';
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
import { percent, whyChosen, whyLeftOut } from './reason-words.ts';
import type { ChosenPair, LeftOut, MateRank, Side } from './reasons.ts';
import { say } from '../../platform/say.ts';

/** Animals that are named for each reason why they may not breed. */
const NAMED_MOST = 12;
const ROUNDING = 1e-12;

/** What of a request its plan is told with. */
export type ToldRequest = Pick<PlanRequest, 'pairings' | 'weight' | 'inbreedingTo'>;

/**
 * Reads the names that belong to a plan, as far as whoever asks may see them, and tells it. Animals that they may not see stand in its pairs
 * without a name, and are left out elsewhere.
 */
export async function planView(manager: EntityManager, record: PlanRecord, request: ToldRequest): Promise<PlanView> {
  return (await PlanTeller.read(manager, record, request)).view();
}

/** Tells a plan. */
export class PlanTeller {
  private constructor(
    private readonly record: PlanRecord,
    private readonly request: ToldRequest,
    readonly names: AnimalNames,
    private readonly keepers: ReadonlyMap<string, string>,
  ) {}

  /** @param more ids of animals besides those of the plan that will be named */
  static async read(
    manager: EntityManager,
    record: PlanRecord,
    request: ToldRequest,
    more: readonly string[] = [],
  ): Promise<PlanTeller> {
    const all = [...record.males, ...record.females];
    const ids = [...all.map(({ id }) => id), ...record.excluded.flatMap((some) => some.ids), ...more];
    // one after the other, since a kept plan is also told within a transaction
    const names = await AnimalNames.read(manager, [...new Set(ids)]);
    const keepers = await readKeeperNames(manager, [...new Set(all.map(({ keeperId }) => keeperId))]);
    return new PlanTeller(record, request, names, keepers);
  }

  view(): PlanView {
    const { plan, line, asOf } = this.record;
    const { sums, sum, bound, gap, isOptimal } = plan;
    return {
      line,
      pairs: plan.pairs.map((pair, place) => this.#pair(pair, place)),
      leftOut: plan.leftOut
        .filter(({ side, place }) => this.names.isSeen(this.#candidate(side, place).id))
        .map((animal) => this.#leftOut(animal)),
      excluded: this.#excluded(),
      objective: { weight: this.request.weight, ...sums, sum, bound, gap, isOptimal },
      tradeOff: this.#tradeOff(),
      moves: plan.pairs.filter(({ isMove }) => isMove).length,
      seconds: plan.choosingSeconds,
      cautions: this.#cautions(),
      asOf,
    };
  }

  #pair(pair: ChosenPair, at: number): PlanPairView {
    const { meanKinship, cost, isMove, isFixed } = pair;
    const young = this.record.young[at];
    return {
      male: this.#animal('male', pair.male),
      female: this.#animal('female', pair.female),
      inbreeding: this.#inbreeding(pair, young?.inbreeding),
      meanKinship,
      cost,
      isMove,
      isFixed,
      label: young?.label ?? { shares: [], tracedShare: { expected: 0, least: 0 }, flags: [] },
      forMale: this.#rank('female', pair.forMale),
      forFemale: this.#rank('male', pair.forFemale),
      without: alternativeView(pair.without),
      why: whyChosen(pair, this.request.inbreedingTo, (side, place) => this.#nameOf(side, place)),
      warnings: this.#warnings(pair, young?.inbreeding.greatest ?? 0),
    };
  }

  /** F of the young; plans were kept before they knew how far back it goes. */
  #inbreeding({ male, female, kinship }: ChosenPair, young: Partial<YoungInbreeding> = {}): YoungInbreedingView {
    const two = [this.#candidate('male', male), this.#candidate('female', female)];
    const nothingKnown = kinship < ROUNDING && two.some(({ isNothingKnown }) => isNothingKnown);
    const range = { expected: kinship, least: kinship, greatest: kinship };
    return { ...range, nothingKnown, depth: null, fullDepth: null, ...young };
  }

  #leftOut(animal: LeftOut): LeftOutView {
    const { request } = this;
    const other = animal.side === 'male' ? 'female' : 'male';
    return {
      animal: this.#animal(animal.side, animal.place),
      reason: animal.reason,
      why: whyLeftOut(animal, request, (side, place) => this.#nameOf(side, place)),
      mates: animal.mates,
      bestMate: animal.bestMate && this.names.refOf(this.#candidate(other, animal.bestMate.mate).id),
      aboveLimit: this.#aboveLimit(other, animal.aboveLimit),
      including: alternativeView(animal.including),
    };
  }

  #rank(mates: Side, { rank, of, bestOther, aboveLimit }: MateRank): MateRankView {
    return {
      rank,
      of,
      bestOther: bestOther && {
        animal: this.names.refOf(this.#candidate(mates, bestOther.mate).id),
        difference: bestOther.difference,
        isSpent: bestOther.isSpent,
      },
      aboveLimit: this.#aboveLimit(mates, aboveLimit),
    };
  }

  #aboveLimit(mates: Side, found: MateRank['aboveLimit']): MateRankView['aboveLimit'] {
    return (
      found && {
        animal: this.names.refOf(this.#candidate(mates, found.mate).id),
        inbreeding: found.kinship,
        difference: found.difference,
      }
    );
  }

  #animal(side: Side, place: number): PlanAnimalView {
    const { id, line, keeperId, age, isProven, isReserve, meanKinship } = this.#candidate(side, place);
    return {
      animal: this.names.refOf(id),
      line,
      keeper: this.keepers.get(keeperId) ?? '',
      keeperId,
      age,
      proven: isProven,
      isReserve,
      meanKinship,
    };
  }

  #warnings({ male, female, kinship }: ChosenPair, greatest: number): string[] {
    const { inbreedingTo } = this.request;
    const two = [this.#candidate('male', male), this.#candidate('female', female)];
    const [one, other] = two.map(({ line }) => line?.name ?? say`no line`);
    const isCross = new Set(two.map(({ line }) => line?.id)).size > 1;
    const names = (some: readonly RecordedAnimal[]): string =>
      some.map(({ id }) => this.names.nameOf(id)).join(' and ');
    const disputed = two.filter(({ isDisputed }) => isDisputed);
    const ageless = two.filter(({ age }) => age === null);
    const isAbove = kinship > inbreedingTo + ROUNDING;
    const mayBeAbove = !isAbove && greatest > inbreedingTo + ROUNDING;
    return [
      ...(isCross ? [say`The young would be a cross of ${one} and ${other}, and belong to neither.`] : []),
      ...(isAbove
        ? [say`F of the young would be above the limit of ${percent(inbreedingTo)}; the request fixed it.`]
        : []),
      ...(mayBeAbove ? [say`Parents are uncertain: F of the young may turn out above the limit.`] : []),
      ...(disputed.length > 0
        ? [say`The label of ${names(disputed)} is disputed: the young would carry that on.`]
        : []),
      ...(ageless.length > 0
        ? [say`The hatching date of ${names(ageless)} is not recorded: check that it is grown.`]
        : []),
    ];
  }

  #excluded(): PlanExcludedView[] {
    return this.record.excluded.flatMap(({ reason, ids }): PlanExcludedView[] => {
      const shown = ids.filter((id) => this.names.isSeen(id));
      if (shown.length === 0) return [];
      const animals = shown.slice(0, NAMED_MOST).map((id) => this.names.refOf(id));
      return [{ reason, detail: exclusionWords[reason], count: shown.length, animals }];
    });
  }

  #tradeOff(): TradeOffView[] {
    const { plan } = this.record;
    const own: TradeOffView = {
      weight: this.request.weight,
      ...plan.sums,
      moves: plan.pairs.filter(({ isMove }) => isMove).length,
      isOptimal: plan.isOptimal,
    };
    return [...plan.tradeOff, own].sort((one, other) => one.weight - other.weight);
  }

  #cautions(): string[] {
    const { plan, males, females } = this.record;
    const used = plan.pairs.flatMap(({ male, female }) => [
      this.#candidate('male', male),
      this.#candidate('female', female),
    ]);
    const unknown = new Set(used.filter(({ isNothingKnown }) => isNothingKnown).map(({ id }) => id)).size;
    const percent = (plan.gap * 100).toPrecision(2);
    return [
      ...(plan.isOptimal ? [] : [say`Another plan may be better by up to ${percent} %: the time was over.`]),
      ...(unknown > 0
        ? [say`Of ${unknown} animals in the plan no ancestor is known: they count as unrelated, which they may not be.`]
        : []),
      ...(males.length === 0 || females.length === 0 ? [say`One sex is missing.`] : []),
      say`Figures advise; the animals' welfare and the keeper's eye decide.`,
    ];
  }

  #candidate(side: Side, place: number): RecordedAnimal {
    const candidate = this.record[side === 'male' ? 'males' : 'females'][place];
    if (!candidate) throw new RangeError(`There is no ${side} at place ${place} of the plan.`);
    return candidate;
  }

  #nameOf(side: Side, place: number): string {
    return this.names.nameOf(this.#candidate(side, place).id);
  }
}

function alternativeView(alternative: Alternative): AlternativeView {
  if (alternative === null) return { is: 'unknown', extra: null, isExact: false };
  if (alternative === 'impossible') return { is: 'impossible', extra: null, isExact: true };
  return { is: 'possible', ...alternative };
}
