import type { EntityManager } from 'typeorm';
import { FounderStandings, labelOfLine } from '../../lineage/founder-standings.ts';
import { kinshipRangesWith } from '../../lineage/kernel/kinship-with.ts';
import { labelEvidenceOf, toFindings, type LabelEvidence } from '../../lineage/label-evidence.ts';
import { factsFor, readLabelFacts, type ReadFacts } from '../../lineage/label-facts.queries.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { RecordNames, WantedNames } from '../../lineage/record-names.ts';
import { restsOn } from '../../lineage/young-inbreeding.ts';
import { auditLabel } from '../../provenance/flags.ts';
import { readProven } from '../../register/individuals/individual-details.queries.ts';
import { exclusionWords } from '../mates/exclusion-words.ts';
import { readKeeperNames } from '../mates/keeper-names.queries.ts';
import { mateExclusions, type ExcludedMatesView } from '../mates/mates.view.ts';
import { beginningView } from './beginning-view.ts';
import { ageView, breedingWarnings } from './carrier-views.ts';
import { readHoused } from './carriers.queries.ts';
import { holdingView } from './holding-view.ts';
import type { Gains } from './holding-gains.ts';
import { FounderNeeds, type BroughtFounder, type LackedFounder } from './founder-needs.ts';
import { movingCautions } from './moving-cautions.ts';
import type { NewBloodCandidates } from './new-blood-candidates.ts';
import type { NewBloodOrder, NewBloodQuery } from './new-blood.dto.ts';
import type { LackedFounderView, NewBloodAnimalView, NewBloodView } from './new-blood.view.ts';
import { say } from '../../platform/say.ts';

/** Animals that are named for each reason why they are left out, founders that are lacking, and that one animal brings. */
const EXCLUDED_MOST = 12;
const LACKED_MOST = 24;
const BROUGHT_MOST = 6;

/** What an answer about new blood is told from. */
export interface NewBloodTold {
  readonly snapshot: LineageSnapshot;
  readonly line: number;
  readonly query: NewBloodQuery;
  readonly sort: NewBloodOrder;
  readonly found: NewBloodCandidates;
  readonly gains: Gains;
  readonly keeper: string | null;
  /** Places of the candidates of this page, in order. */
  readonly places: readonly number[];
  readonly next: string | null;
}

/** Reads the names and labels that belong to an answer about new blood, and tells it. */
export async function newBloodView(manager: EntityManager, told: NewBloodTold): Promise<NewBloodView> {
  const { snapshot, found, gains, places } = told;
  const needs = new FounderNeeds(snapshot, gains, found.keeperId === null);
  const lacks = needs.lacked();
  const brought = places.map((place) => needs.broughtBy(found.candidates[place]?.animal ?? -1));
  const page = places.flatMap((place) => found.candidates[place] ?? []);
  const partners = places.flatMap((place) => found.partners[gains.partner[place] ?? -1]?.animal ?? []);
  const wanted = new WantedNames();
  for (const { animal } of page) wanted.individuals.add(animal);
  for (const animal of partners) wanted.individuals.add(animal);
  for (const animals of found.excluded.values())
    for (const animal of animals.slice(0, EXCLUDED_MOST)) wanted.individuals.add(animal);
  for (const { founder, source } of [...lacks.slice(0, LACKED_MOST), ...brought.flatMap(first)]) {
    wanted.individuals.add(founder);
    if (source >= 0) wanted.sources.add(source);
  }
  const evidence = page.map(({ animal }) => labelEvidenceOf(snapshot, animal));
  const ids = page.map(({ animal }) => snapshot.idOf(animal));
  const [names, facts, proven, housed, keepers] = await Promise.all([
    RecordNames.read(manager, snapshot.graph, wanted),
    readLabelFacts(manager, snapshot, evidence, ids),
    readProven(manager, ids),
    readHoused(manager, ids),
    readKeeperNames(manager, [...new Set(page.map(({ keeperId }) => keeperId))]),
  ]);
  return new NewBloodTeller(told, names, { evidence, facts, proven, housed, keepers }).view(lacks, brought);
}

const first = (brought: readonly BroughtFounder[]): readonly BroughtFounder[] => brought.slice(0, BROUGHT_MOST);

/** What was read of the animals of a page, in their order or by their ids. */
interface ReadOfPage {
  readonly evidence: readonly LabelEvidence[];
  readonly facts: ReadFacts;
  readonly proven: ReadonlySet<string>;
  readonly housed: ReadonlySet<string>;
  readonly keepers: ReadonlyMap<string, string>;
}

class NewBloodTeller {
  readonly #standings: FounderStandings;

  constructor(
    private readonly told: NewBloodTold,
    private readonly names: RecordNames,
    private readonly read: ReadOfPage,
  ) {
    const { graph } = told.snapshot;
    this.#standings = new FounderStandings(graph, labelOfLine(graph, told.line));
  }

  view(lacks: readonly LackedFounder[], brought: readonly (readonly BroughtFounder[])[]): NewBloodView {
    const { snapshot, line, query, sort, found, gains, keeper, places, next } = this.told;
    const node = snapshot.graph.lines[line];
    return {
      line: { id: node?.id ?? '', name: node?.name ?? '' },
      of: query.of,
      keeper,
      keeperId: found.keeperId,
      sort,
      holding: holdingView(snapshot, found.holding, gains.holding),
      whole: holdingView(snapshot, found.line, gains.line),
      lacks: lacks.slice(0, LACKED_MOST).map((lacked) => this.#lacked(lacked)),
      lacksCount: lacks.length,
      items: places.map((place, at) => this.#animal(place, at, brought[at] ?? [])),
      next,
      total: found.candidates.length,
      excluded: this.#excluded(),
      cautions: [...movingCautions],
      asOf: snapshot.asOf,
    };
  }

  #animal(place: number, at: number, brought: readonly BroughtFounder[]): NewBloodAnimalView {
    const { snapshot, found, gains } = this.told;
    const breeder = found.candidates[place];
    if (!breeder) throw new Error('a page shows candidates only');
    const { animal, keeperId, age, sex } = breeder;
    const id = snapshot.idOf(animal);
    const line = snapshot.graph.lines[snapshot.graph.lineOf[animal] ?? -1];
    const housed = this.read.housed.has(id);
    return {
      animal: this.names.refOf(animal),
      line: line ? { id: line.id, name: line.name } : null,
      keeper: this.read.keepers.get(keeperId) ?? '',
      keeperId,
      age: ageView(age),
      proven: this.read.proven.has(id),
      meanKinship: known(gains.meanKinship[place]),
      gain: known(gains.gain[place]),
      young: this.#young(place, animal),
      lacking: Math.min(1, gains.lacking[place] ?? 0),
      unknown: Math.min(1, gains.unknown[place] ?? 0),
      brings: first(brought).map((one) => ({ ...this.#lacked(one), share: { expected: one.share, least: one.least } })),
      bringsCount: brought.length,
      flags: this.#flags(id, at),
      housed,
      warnings: [
        ...this.#crossing(animal),
        ...breedingWarnings(breeder, sex === 'unsexed'),
        ...(housed ? [say`It lives in a pairing now, and would have to be taken out of it.`] : []),
        ...(snapshot.isNothingKnown(animal)
          ? [
              say`Neither a source nor a parent of this animal is recorded: it counts as unrelated, which it may not be, and stands at the end.`,
            ]
          : []),
        ...((gains.unknown[place] ?? 0) > 1e-12
          ? [say`Part of its genes comes from parents nobody knows, who count as unrelated for want of knowledge.`]
          : []),
      ],
    };
  }

  #young(place: number, animal: number): NewBloodAnimalView['young'] {
    const { snapshot, found, gains } = this.told;
    const partner = found.partners[gains.partner[place] ?? -1];
    if (!partner) return null;
    const [range] = kinshipRangesWith(
      snapshot.graph.pedigree,
      snapshot.inbreeding,
      animal,
      Int32Array.of(partner.animal),
    );
    const kinship = gains.partnerKinship[place] ?? 0;
    return {
      partner: this.names.refOf(partner.animal),
      inbreeding: restsOn(
        snapshot,
        animal,
        partner.animal,
        range ?? { expected: kinship, least: kinship, greatest: kinship },
      ),
      gain: gains.youngGain[place] ?? 0,
    };
  }

  #flags(id: string, at: number): NewBloodAnimalView['flags'] {
    const evidence = this.read.evidence[at];
    if (!evidence) return [];
    const findings = toFindings(this.told.snapshot, evidence, factsFor(this.read.facts, id), this.names);
    return auditLabel(findings).map(({ code, severity }) => ({ code, severity }));
  }

  #crossing(animal: number): string[] {
    const { line, snapshot } = this.told;
    const { lineOf, lines } = snapshot.graph;
    if (lineOf[animal] === line) return [];
    const [own, here] = [lines[lineOf[animal] ?? -1]?.name ?? say`no line`, lines[line]?.name ?? ''];
    return [say`It belongs to ${own}: with animals of ${here} its young would be crosses, and belong to neither.`];
  }

  #lacked({ founder, source, inLine, inHolding }: LackedFounder): LackedFounderView {
    const beginning = beginningView(this.told.snapshot, this.#standings, { founder, source }, this.names);
    return { ...beginning, inLine, inHolding };
  }

  #excluded(): ExcludedMatesView[] {
    const { found, query } = this.told;
    return mateExclusions.flatMap((reason): ExcludedMatesView[] => {
      const detail = exclusionWords[reason];
      if (reason === 'other-line') return query.crossLines ? [] : [{ reason, detail, count: null, animals: [] }];
      const animals = found.excluded.get(reason) ?? [];
      if (animals.length === 0) return [];
      const named = animals.slice(0, EXCLUDED_MOST).map((animal) => this.names.refOf(animal));
      return [{ reason, detail, count: animals.length, animals: named }];
    });
  }
}

const known = (value: number | undefined): number | null => (value === undefined || Number.isNaN(value) ? null : value);
