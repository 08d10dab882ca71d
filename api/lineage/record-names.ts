import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../shared/registry-number.ts';
import { FLAG_RECORDS_MOST } from '../provenance/flags.ts';
import type { NamedRecord } from '../provenance/label-findings.ts';
import { PrivateRecords, privateClutch, privateSource } from '../register/private-records.ts';
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
import type { IdTable } from './id-table.ts';
import { sexOf, type RegisterGraph } from './register-graph.ts';
import { say } from '../platform/say.ts';

/** Kinds of records that may be private, or are named by what stands for them. */
export type NamedKind = Exclude<NamedRecord['kind'], 'line'>;

/** The records that an answer will name, by dense numbers. */
export class WantedNames {
  readonly individuals = new Set<number>();
  readonly clutches = new Set<number>();
  readonly sources = new Set<number>();

  /** Asks for all that the flags and shares of a label may name or need to know of. */
  addEvidence(evidence: LabelEvidence): void {
    const { untraced, gaps, outsiders, founderLabels, claimants, relabelled, uncertainClutches } = evidence;
    const records = [untraced, gaps].map((list) => list.slice(0, FLAG_RECORDS_MOST));
    // which labels and lines may be told depends on every one of these
    records.push(
      [...outsiders, ...claimants, ...relabelled],
      founderLabels.flatMap(({ sources }) => sources),
    );
    const kinds = { individual: this.individuals, clutch: this.clutches, source: this.sources };
    for (const { kind, number } of records.flat()) kinds[kind].add(number);
    for (const { kind, number } of relabelled.flatMap(({ knownBy }) => knownBy)) kinds[kind].add(number);
    for (const clutch of uncertainClutches.slice(0, FLAG_RECORDS_MOST)) this.clutches.add(clutch);
  }
}

/**
 * What the records of an answer are called. A record that was not read may not be seen: it is named by what stands for it in the one
 * answer ("private-1"), so that what was forgotten to ask for is concealed, never shown.
 */
export class RecordNames {
  readonly #graph: RegisterGraph;
  readonly #individuals: ReadonlyMap<string, IndividualName>;
  readonly #clutches: ReadonlyMap<string, ClutchName>;
  readonly #sources: ReadonlyMap<string, SourceName>;
  readonly #concealed = new PrivateRecords();
  readonly #behind = new Map<string, string>();

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
    const ids = (numbers: Set<number>, all: IdTable): string[] => [...numbers].map((number) => all.at(number) ?? '');
    const sourceIds = [...wanted.sources].map((number) => graph.sources[number]?.id ?? '');
    const [individuals, clutches, sources] = await Promise.all([
      wanted.individuals.size === 0 ? [] : readIndividualNames(manager, ids(wanted.individuals, graph.individuals)),
      wanted.clutches.size === 0 ? [] : readClutchNames(manager, ids(wanted.clutches, graph.clutches)),
      sourceIds.length === 0 ? [] : readSourceNames(manager, sourceIds),
    ]);
    return new RecordNames(graph, individuals, clutches, sources);
  }

  /** A reference to an individual; null for a frog nobody knows. */
  ref(individual: number): AnimalRef | null {
    return this.#graph.pedigree.clutchOf[individual] === undefined ? null : this.refOf(individual);
  }

  /** A reference to an individual of the register. */
  refOf(individual: number): AnimalRef {
    const name = this.individual(individual);
    return this.#concealed.animal({
      id: this.#graph.individuals.at(individual) ?? '',
      number: formatRegistryNumber(this.#graph.serials[individual] ?? 0),
      code: name?.code ?? null,
      sex: sexOf(this.#graph, individual),
      isSeen: name !== undefined,
    });
  }

  /** The id of a record, or what stands for it where it may not be seen. */
  idOf(kind: NamedKind, number: number): { id: string; isPrivate: boolean } {
    const id = recordIdIn(this.#graph, kind, number);
    const names = { individual: this.#individuals, clutch: this.#clutches, source: this.#sources }[kind];
    if (names.has(id)) return { id, isPrivate: false };
    const shown = this.#concealed.idOf(kind, id);
    this.#behind.set(shown, id);
    return { id: shown, isPrivate: true };
  }

  /** The record that an id of this answer stands for, to compare it with others; never to be told. */
  behind(shown: string): string {
    return this.#behind.get(shown) ?? shown;
  }

  individual(individual: number): IndividualName | undefined {
    return this.#individuals.get(this.#graph.individuals.at(individual) ?? '');
  }

  clutch(clutch: number): ClutchName | undefined {
    return this.#clutches.get(this.#graph.clutches.at(clutch) ?? '');
  }

  source(source: number): SourceName | undefined {
    return this.#sources.get(this.#graph.sources[source]?.id ?? '');
  }

  clutchTitle(clutch: number): string {
    const name = this.clutch(clutch);
    return name ? clutchTitle(name) : privateClutch;
  }

  sourceTitle(source: number): string {
    const name = this.source(source);
    return name ? sourceTitle(name) : privateSource;
  }

  /** A record with the name that a reader knows it by: an animal by its code and number, else by its number alone. */
  record(kind: NamedKind, number: number): NamedRecord {
    const { id, isPrivate } = this.idOf(kind, number);
    return { kind, id, name: isPrivate ? this.#concealedName(kind, number) : this.#shownName(kind, number), isPrivate };
  }

  #shownName(kind: NamedKind, number: number): string {
    if (kind === 'clutch') return this.clutchTitle(number);
    if (kind === 'individual') {
      const { code, number: registryNumber } = this.refOf(number);
      return code === null ? (registryNumber ?? '') : `${code} (${registryNumber})`;
    }
    const code = this.source(number)?.code;
    return code ? say`${code} (${this.sourceTitle(number)})` : this.sourceTitle(number);
  }

  /** Numbered, so that a sentence can count several of them. */
  #concealedName(kind: NamedKind, number: number): string {
    const words = { individual: say`private animal`, clutch: privateClutch, source: privateSource };
    return `${words[kind]} ${this.#concealed.numberOf(kind, recordIdIn(this.#graph, kind, number))}`;
  }
}

/** The id of a record, whoever asks; empty where there is none. */
export function recordIdIn(graph: RegisterGraph, kind: NamedRecord['kind'], number: number): string {
  if (kind === 'source') return graph.sources[number]?.id ?? '';
  if (kind === 'line') return graph.lines[number]?.id ?? '';
  return (kind === 'individual' ? graph.individuals : graph.clutches).at(number) ?? '';
}
