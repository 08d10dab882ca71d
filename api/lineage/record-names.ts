import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../shared/registry-number.ts';
import { FLAG_RECORDS_MOST } from '../provenance/flags.ts';
import type { NamedRecord } from '../provenance/label-findings.ts';
import { clutchTitle, sourceTitle } from '../register/titles.ts';
import type { LabelEvidence } from './label-evidence.ts';
import type { AnimalRef } from './lineage.view.ts';
import {
  readClutchNames,
  readIndividualNames,
  readSourceNames,
  type ClutchName,
  type IndividualName,
  type SourceName,
} from './record-names.queries.ts';
import type { RegisterGraph } from './register-graph.ts';

/** The records that an answer will name, by dense numbers. */
export class WantedNames {
  readonly individuals = new Set<number>();
  readonly clutches = new Set<number>();
  readonly sources = new Set<number>();

  /** Asks for all that the flags and shares of a label may name. */
  addEvidence(evidence: LabelEvidence): void {
    const { untraced, gaps, outsiders, founderLabels, uncertainClutches } = evidence;
    const records = [untraced, gaps, outsiders, founderLabels.flatMap(({ sources }) => sources)];
    const kinds = { individual: this.individuals, clutch: this.clutches, source: this.sources };
    for (const list of records)
      for (const { kind, number } of list.slice(0, FLAG_RECORDS_MOST)) kinds[kind].add(number);
    for (const clutch of uncertainClutches.slice(0, FLAG_RECORDS_MOST)) this.clutches.add(clutch);
  }
}

/** What the records of an answer are called. */
export class RecordNames {
  readonly #graph: RegisterGraph;
  readonly #individuals: ReadonlyMap<string, IndividualName>;
  readonly #clutches: ReadonlyMap<string, ClutchName>;
  readonly #sources: ReadonlyMap<string, SourceName>;

  constructor(
    graph: RegisterGraph,
    individuals: readonly IndividualName[] = [],
    clutches: readonly ClutchName[] = [],
    sources: readonly SourceName[] = [],
  ) {
    this.#graph = graph;
    this.#individuals = new Map(individuals.map((name) => [name.id, name]));
    this.#clutches = new Map(clutches.map((name) => [name.id, name]));
    this.#sources = new Map(sources.map((name) => [name.id, name]));
  }

  static async read(manager: EntityManager, graph: RegisterGraph, wanted: WantedNames): Promise<RecordNames> {
    const ids = (numbers: Set<number>, all: readonly string[]): string[] =>
      [...numbers].map((number) => all[number] ?? '');
    const sourceIds = [...wanted.sources].map((number) => graph.sources[number]?.id ?? '');
    const [individuals, clutches, sources] = await Promise.all([
      wanted.individuals.size === 0 ? [] : readIndividualNames(manager, ids(wanted.individuals, graph.individualIds)),
      wanted.clutches.size === 0 ? [] : readClutchNames(manager, ids(wanted.clutches, graph.clutchIds)),
      sourceIds.length === 0 ? [] : readSourceNames(manager, sourceIds),
    ]);
    return new RecordNames(graph, individuals, clutches, sources);
  }

  /** A reference to an individual; null for a frog nobody knows. */
  ref(individual: number): AnimalRef | null {
    const id = this.#graph.individualIds[individual];
    if (id === undefined) return null;
    const number = formatRegistryNumber(this.#graph.serials[individual] ?? 0);
    return {
      id,
      number,
      code: this.individual(individual)?.code ?? null,
      sex: this.#graph.sexOf[individual] ?? 'unsexed',
    };
  }

  individual(individual: number): IndividualName | undefined {
    return this.#individuals.get(this.#graph.individualIds[individual] ?? '');
  }

  clutch(clutch: number): ClutchName | undefined {
    return this.#clutches.get(this.#graph.clutchIds[clutch] ?? '');
  }

  source(source: number): SourceName | undefined {
    return this.#sources.get(this.#graph.sources[source]?.id ?? '');
  }

  clutchTitle(clutch: number): string {
    return clutchTitle(this.clutch(clutch) ?? { laid: null, code: null });
  }

  sourceTitle(source: number): string {
    const kind = this.#graph.sources[source]?.kind ?? 'unknown';
    return sourceTitle({ kind, date: this.source(source)?.date ?? null });
  }

  /** A record with the name that a reader knows it by: an animal by its code and number, else by its number alone. */
  record(kind: NamedRecord['kind'], number: number): NamedRecord {
    switch (kind) {
      case 'individual': {
        const ref = this.ref(number);
        return { kind, id: ref?.id ?? '', name: ref?.code ? `${ref.code} (${ref.number})` : (ref?.number ?? '') };
      }
      case 'clutch':
        return { kind, id: this.#graph.clutchIds[number] ?? '', name: this.clutchTitle(number) };
      case 'source': {
        const code = this.source(number)?.code;
        return {
          kind,
          id: this.#graph.sources[number]?.id ?? '',
          name: code ? `${code} (${this.sourceTitle(number)})` : this.sourceTitle(number),
        };
      }
    }
  }
}
