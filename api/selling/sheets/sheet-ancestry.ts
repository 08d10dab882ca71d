import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import {
  SHEET_ANCESTORS_MOST,
  SHEET_GENERATIONS,
  type SheetAncestor,
  type SheetClutch,
} from '../../../shared/sheet/sheet-document.ts';
import { ancestorChart, linksTo } from '../../lineage/ancestor-chart.ts';
import { ChartStandings } from '../../lineage/chart-standings.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { RecordNames, WantedNames } from '../../lineage/record-names.ts';
import { parentsOf, sexOf } from '../../lineage/register-graph.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { withoutPositions } from '../../provenance/places/words-of-place.ts';
import type { SheetRefs } from './sheet-refs.ts';
import { say } from '../../platform/say.ts';

/** Most joint pairs that a clutch of a sheet lists. */
const PAIRS_MOST = 50;

/** Everything above the animals of a sheet, each record once, by dense numbers; the animals themselves are not ancestors. */
export class SheetAncestry {
  readonly #snapshot: LineageSnapshot;
  readonly #refs: SheetRefs;
  readonly #names: RecordNames;
  readonly #standings: ReadonlyMap<number, ChartStandings>;
  readonly #clutches: ReadonlySet<number>;
  readonly sources: ReadonlySet<number>;

  private constructor(
    snapshot: LineageSnapshot,
    refs: SheetRefs,
    names: RecordNames,
    found: { individuals: ReadonlyMap<number, ChartStandings>; clutches: Set<number>; sources: Set<number> },
  ) {
    this.#snapshot = snapshot;
    this.#refs = refs;
    this.#names = names;
    this.#standings = found.individuals;
    this.#clutches = found.clutches;
    this.sources = found.sources;
  }

  /** Gathers four generations above some animals. 422 where they are more than a sheet holds. */
  static async read(
    manager: EntityManager,
    snapshot: LineageSnapshot,
    roots: readonly number[],
    refs: SheetRefs,
  ): Promise<SheetAncestry> {
    const found = {
      individuals: new Map<number, ChartStandings>(),
      clutches: new Set<number>(),
      sources: new Set<number>(),
    };
    let truncated = false;
    for (const root of roots) {
      const chart = ancestorChart(snapshot.graph, root, SHEET_GENERATIONS);
      const standings = new ChartStandings(snapshot, root);
      truncated ||= chart.truncated;
      chart.graph.forEachNode((_, { kind, number }) => {
        if (kind === 'clutch') found.clutches.add(number);
        else if (kind === 'source') found.sources.add(number);
        else if (!found.individuals.has(number)) found.individuals.set(number, standings);
      });
    }
    if (truncated || found.individuals.size > SHEET_ANCESTORS_MOST) throw tooMany();
    const wanted = new WantedNames();
    for (const number of found.individuals.keys()) wanted.individuals.add(number);
    for (const number of found.clutches) wanted.clutches.add(number);
    for (const number of found.sources) wanted.sources.add(number);
    return new SheetAncestry(snapshot, refs, await RecordNames.read(manager, snapshot.graph, wanted), found);
  }

  /** The ancestors, the nearest first; of a private one nothing but its place. */
  ancestors(roots: ReadonlySet<number>): SheetAncestor[] {
    return [...this.#standings.keys()].filter((number) => !roots.has(number)).map((number) => this.#ancestor(number));
  }

  clutches(): SheetClutch[] {
    return [...this.#clutches].map((number) => this.#clutch(number));
  }

  /** The reference to the clutch of an animal, where it stands on the sheet. */
  clutchOf(individual: number): string | null {
    const clutch = this.#snapshot.graph.pedigree.clutchOf[individual] ?? -1;
    return this.#clutches.has(clutch) ? this.#refs.clutch(this.#snapshot.clutchIdOf(clutch)) : null;
  }

  /** The reference to the source of an animal. */
  sourceOf(individual: number): string | null {
    const source = this.#snapshot.graph.pedigree.sourceOf[individual] ?? -1;
    return source < 0 ? null : this.#refs.source(this.#snapshot.graph.sources[source]?.id ?? '');
  }

  #ancestor(number: number): SheetAncestor {
    const { graph } = this.#snapshot;
    const { id, isPrivate } = this.#names.idOf('individual', number);
    const clutch = graph.pedigree.clutchOf[number] ?? -1;
    const place = {
      ref: this.#refs.animal(this.#snapshot.idOf(number)),
      isPrivate,
      clutch: this.clutchOf(number),
      source: this.sourceOf(number),
      hasMoreAncestors: clutch >= 0 && !this.#clutches.has(clutch),
    };
    const name = this.#names.individual(number);
    if (isPrivate || !name || id === '') return { ...place, ...nothingTold };
    return {
      ...place,
      number: formatRegistryNumber(graph.serials[number] ?? 0),
      sex: sexOf(graph, number),
      hatched: name.hatched,
      species: name.species,
      line: withoutPositions(graph.lines[graph.lineOf[number] ?? -1]?.name ?? null),
      standings: (this.#standings.get(number)?.of(number) ?? []).map(({ standing, share }) => ({
        standing,
        share: unit(share),
      })),
    };
  }

  #clutch(number: number): SheetClutch {
    const { graph } = this.#snapshot;
    const { isPrivate } = this.#names.idOf('clutch', number);
    const recorded = parentsOf(graph, number);
    const unknownOn = (side: 'sires' | 'dams'): number =>
      recorded.mode === 'pairs' ? 0 : unit(recorded[side].find(({ individual }) => individual < 0)?.probability ?? 0);
    const refOf = (individual: number): string => this.#refs.animal(this.#snapshot.idOf(individual));
    return {
      ref: this.#refs.clutch(this.#snapshot.clutchIdOf(number)),
      isPrivate,
      laid: isPrivate ? null : (this.#names.clutch(number)?.laid ?? null),
      parents: linksTo(graph, number).map(({ parent, role, probability }) => ({
        animal: refOf(parent),
        as: role,
        probability: unit(probability),
      })),
      pairs:
        recorded.mode === 'lists'
          ? null
          : [...recorded.pairs]
              .sort((one, other) => other.probability - one.probability)
              .slice(0, PAIRS_MOST)
              .map(({ a, b, probability }) => ({ a: refOf(a), b: refOf(b), probability: unit(probability) })),
      unknownSire: unknownOn('sires'),
      unknownDam: unknownOn('dams'),
    };
  }
}

/** What a private ancestor says beside its place. */
const nothingTold = { number: null, sex: null, hatched: null, species: null, line: null, standings: [] };

/** Sums of many halves miss 1 by their last digit. */
export const unit = (share: number): number => Math.min(1, Math.max(0, share));

function tooMany(): InvalidProblem {
  const detail = say`These animals have more than ${SHEET_ANCESTORS_MOST} possible ancestors over four generations, more than one sheet holds. Put fewer of them on a sheet.`;
  return new InvalidProblem(detail, [{ pointer: '/animals', detail }]);
}
