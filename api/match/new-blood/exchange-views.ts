import type { EntityManager } from 'typeorm';
import { FounderStandings, labelOfLine } from '../../lineage/founder-standings.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { RecordNames, WantedNames } from '../../lineage/record-names.ts';
import { exclusionReasons, type ExcludedAnimal } from '../breeders.ts';
import { exclusionWords } from '../mates/exclusion-words.ts';
import { readKeeperNames } from '../mates/keeper-names.queries.ts';
import { beginningView } from './beginning-view.ts';
import type { Both, ExchangeFigures } from './exchange-figures.ts';
import type { ResolvedExchange, ResolvedSide } from './exchange-sides.ts';
import type { ExchangeOutcomeView, ExchangeView, HoldingView, NotProposedView } from './exchange.view.ts';
import { holdingView } from './holding-view.ts';
import type { HoldingMeasures } from './holding.ts';
import { movingCautions } from './moving-cautions.ts';
import { MovingTeller } from './moving-animals.ts';
import { say } from '../../platform/say.ts';

/** Animals and founders that are named in each list. */
const NAMED_MOST = 12;

/** What an exchange is told from. */
export interface ExchangeTold {
  readonly snapshot: LineageSnapshot;
  readonly line: number;
  readonly exchange: ResolvedExchange;
  readonly figures: ExchangeFigures;
  readonly excluded: readonly ExcludedAnimal[];
  readonly proposals: number;
}

/** Reads the names that belong to an exchange, and tells it. */
export async function exchangeView(manager: EntityManager, told: ExchangeTold): Promise<ExchangeView> {
  const { exchange, figures, snapshot, line, excluded } = told;
  const moving = [...exchange.give, ...exchange.take, ...figures.proposals.flatMap((swap) => [swap.give, swap.take])];
  const names = await readNames(manager, told, moving);
  const teller = await MovingTeller.read(manager, snapshot, names, line, excluded, moving);
  const ids = [exchange.one, exchange.other].flatMap(({ keeperId }) => keeperId ?? []);
  const keepers = await readKeeperNames(manager, ids);
  return new ExchangeTeller(told, names, teller, keepers).view();
}

function changes(before: HoldingMeasures, after: HoldingMeasures): { won: number[]; lost: number[] } {
  const [had, has] = [new Set(before.founders), new Set(after.founders)];
  return {
    won: Array.from(after.founders).filter((founder) => !had.has(founder)),
    lost: Array.from(before.founders).filter((founder) => !has.has(founder)),
  };
}

function readNames(
  manager: EntityManager,
  { snapshot, figures, excluded }: ExchangeTold,
  moving: readonly number[],
): Promise<RecordNames> {
  const wanted = new WantedNames();
  for (const animal of moving) wanted.individuals.add(animal);
  for (const { animal } of excluded) wanted.individuals.add(animal);
  const outcomes = [figures.after, ...figures.proposals.map(({ after }) => after)].filter((one) => one !== null);
  for (const after of outcomes)
    for (const side of ['one', 'other'] as const) {
      const { won, lost } = changes(figures.before[side], after[side]);
      for (const founder of [...won.slice(0, NAMED_MOST), ...lost.slice(0, NAMED_MOST)]) {
        wanted.individuals.add(founder);
        const source = snapshot.graph.pedigree.sourceOf[founder] ?? -1;
        if (source >= 0) wanted.sources.add(source);
      }
    }
  return RecordNames.read(manager, snapshot.graph, wanted);
}

class ExchangeTeller {
  readonly #standings: FounderStandings;

  constructor(
    private readonly told: ExchangeTold,
    private readonly names: RecordNames,
    private readonly moving: MovingTeller,
    private readonly keepers: ReadonlyMap<string, string>,
  ) {
    const { graph } = told.snapshot;
    this.#standings = new FounderStandings(graph, labelOfLine(graph, told.line));
  }

  view(): ExchangeView {
    const { snapshot, line, exchange, figures, excluded } = this.told;
    const node = snapshot.graph.lines[line];
    const { one, other, give, take } = exchange;
    const tell = (animal: number) => this.moving.tell(animal);
    return {
      line: { id: node?.id ?? '', name: node?.name ?? '' },
      one: this.#side(one, figures.before.one),
      other: this.#side(other, figures.before.other),
      asked: figures.after && {
        give: give.map(tell),
        take: take.map(tell),
        ...this.#outcomes(give, take, figures.after),
      },
      proposals: figures.proposals.map((swap) => ({
        give: tell(swap.give),
        take: tell(swap.take),
        ...this.#outcomes([swap.give], [swap.take], swap.after),
      })),
      tried: figures.tried,
      helping: figures.helping,
      outcome: this.told.proposals === 0 ? null : outcomeWords(figures),
      notProposed: notProposed(excluded, this.names),
      cautions: [...movingCautions],
      asOf: snapshot.asOf,
    };
  }

  #side({ keeperId, animals }: ResolvedSide, before: HoldingMeasures) {
    const keeper = keeperId === null ? null : (this.keepers.get(keeperId) ?? null);
    return { keeper, keeperId, before: holdingView(this.told.snapshot, animals, before) };
  }

  #outcomes(
    give: readonly number[],
    take: readonly number[],
    after: Both,
  ): { one: ExchangeOutcomeView; other: ExchangeOutcomeView } {
    const { exchange, figures } = this.told;
    return {
      one: this.#outcome(exchange.one.animals, give, take, figures.before.one, after.one),
      other: this.#outcome(exchange.other.animals, take, give, figures.before.other, after.other),
    };
  }

  #outcome(
    animals: readonly number[],
    goes: readonly number[],
    comes: readonly number[],
    before: HoldingMeasures,
    after: HoldingMeasures,
  ): ExchangeOutcomeView {
    const { won, lost } = changes(before, after);
    const had = holdingView(this.told.snapshot, animals, before);
    const has = holdingView(
      this.told.snapshot,
      [...animals.filter((animal) => !goes.includes(animal)), ...comes],
      after,
    );
    const gain =
      before.diversity && after.diversity ? before.diversity.meanKinship - after.diversity.meanKinship : null;
    return {
      after: has,
      gain,
      won: won.slice(0, NAMED_MOST).map((founder) => this.#beginning(founder)),
      wonCount: won.length,
      lost: lost.slice(0, NAMED_MOST).map((founder) => this.#beginning(founder)),
      lostCount: lost.length,
      warnings: outcomeWarnings(had, has, gain),
    };
  }

  #beginning(founder: number) {
    const source = this.told.snapshot.graph.pedigree.sourceOf[founder] ?? -1;
    return beginningView(this.told.snapshot, this.#standings, { founder, source }, this.names);
  }
}

function outcomeWarnings(had: HoldingView, has: HoldingView, gain: number | null): string[] {
  return [
    ...(has.animals === 0 ? [say`No animal of the line would be left.`] : []),
    ...(has.animals > 0 && had.males > 0 && has.males === 0 ? [say`No male of the line would be left.`] : []),
    ...(has.animals > 0 && had.females > 0 && has.females === 0 ? [say`No female of the line would be left.`] : []),
    ...(gain !== null && gain < -1e-12 ? [say`The animals would be less diverse than before.`] : []),
    ...(has.unknown > had.unknown + 1e-12
      ? [say`More of the genes would come from parents nobody knows, who count as unrelated for want of knowledge.`]
      : []),
  ];
}

function outcomeWords({ tried, helping }: ExchangeFigures): string {
  if (tried === 0)
    return say`There is no animal on both sides that may be exchanged for another; see who is left out, and why.`;
  const all =
    tried === 1 ? say`The only exchange of one animal for one` : say`Of ${tried} exchanges of one animal for one`;
  if (tried === 1) return helping === 1 ? say`${all} would help both.` : say`${all} would not help both: leave it.`;
  return helping === 0
    ? say`${all} none would help both: leave the animals where they are.`
    : say`${all} ${helping} would help both.`;
}

function notProposed(excluded: readonly ExcludedAnimal[], names: RecordNames): NotProposedView[] {
  return exclusionReasons.flatMap((reason): NotProposedView[] => {
    const animals = excluded.filter((one) => one.reason === reason).map(({ animal }) => animal);
    if (animals.length === 0) return [];
    const first = animals.slice(0, NAMED_MOST).map((animal) => names.refOf(animal));
    return [{ reason, detail: exclusionWords[reason], count: animals.length, animals: first }];
  });
}
