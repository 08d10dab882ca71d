import type { EntityManager } from 'typeorm';
import type { DateBounds } from '../../shared/edtf.ts';
import type { SourceKind } from '../../shared/vocabulary.ts';
import type { SourceFacts } from '../provenance/label-findings.ts';
import type { LabelEvidence } from './label-evidence.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type { RegisterGraph } from './register-graph.ts';

/** What flags ask of records besides claims. The flags are the same for all who may see the animal, so nothing is left out here. */
export interface LabelFacts {
  readonly sources: ReadonlyMap<string, SourceFacts>;
  /** Countries where the species of the animal lives. */
  readonly nativeRange: readonly string[];
}

/** What the flags of some animals ask of the database: the same sources for all, and the range of each animal's species by its id. */
export interface ReadFacts {
  readonly sources: ReadonlyMap<string, SourceFacts>;
  readonly nativeRanges: ReadonlyMap<string, readonly string[]>;
}

interface SourceRow {
  readonly id: string;
  readonly kind: SourceKind;
  readonly country: string | null;
  readonly earliest: string | null;
  readonly latest: string | null;
}

/** Reads it by primary keys; nothing where nothing is claimed. */
export async function readLabelFacts(
  manager: EntityManager,
  { graph }: LineageSnapshot,
  evidence: readonly LabelEvidence[],
  animals: readonly string[],
): Promise<ReadFacts> {
  const isClaimed = evidence.some(
    ({ claimants, line }) =>
      graph.claims.line.has(line) ||
      claimants.some(({ kind, number }) => kind !== 'clutch' && graph.claims[kind].has(number)),
  );
  if (!isClaimed) return { sources: new Map(), nativeRanges: new Map() };
  const numbers = new Set(
    evidence.flatMap(({ claimants }) =>
      claimants.map(({ kind, number }) => (kind === 'source' ? number : (graph.pedigree.sourceOf[number] ?? -1))),
    ),
  );
  const [sources, ranges] = await Promise.all([
    readSourceFacts(manager, graph, numbers),
    manager.query<{ id: string; range: string[] }[]>(
      `select i.id, s.native_range as range from individual i join species s on s.id = i.species_id where i.id = any($1::uuid[])`,
      [animals],
    ),
  ]);
  return {
    sources,
    nativeRanges: new Map(ranges.map(({ id, range }) => [id, range])),
  };
}

/** What the flags of all members of a line ask for; nothing where nothing is claimed that may raise one. */
export async function readLineFacts(
  manager: EntityManager,
  { graph }: LineageSnapshot,
  line: number,
): Promise<LabelFacts> {
  const { source, individual, line: ofLines } = graph.claims;
  const isLineClaimed = ofLines.has(line);
  const numbers = new Set(isLineClaimed ? graph.sources.keys() : source.keys());
  for (const animal of individual.keys()) numbers.add(graph.pedigree.sourceOf[animal] ?? -1);
  if (numbers.size === 0 && !isLineClaimed) return { sources: new Map(), nativeRange: [] };
  const [sources, ranges] = await Promise.all([
    readSourceFacts(manager, graph, numbers),
    manager.query<{ range: string[] }[]>(
      `select s.native_range as range from line l join species s on s.id = l.species_id where l.id = $1`,
      [graph.lines[line]?.id ?? null],
    ),
  ]);
  return { sources, nativeRange: ranges[0]?.range ?? [] };
}

async function readSourceFacts(
  manager: EntityManager,
  { sources }: RegisterGraph,
  numbers: ReadonlySet<number>,
): Promise<ReadonlyMap<string, SourceFacts>> {
  const rows = await manager.query<SourceRow[]>(
    `select id, kind, country_of_export as country, date_earliest::text as earliest, date_latest::text as latest
     from source where id = any($1::uuid[])`,
    [[...numbers].flatMap((number) => sources[number]?.id ?? [])],
  );
  return new Map(rows.map((row) => [row.id, factsOf(row)]));
}

/** The facts about one animal. */
export function factsFor({ sources, nativeRanges }: ReadFacts, animal: string): LabelFacts {
  return { sources, nativeRange: nativeRanges.get(animal) ?? [] };
}

function factsOf({ kind, country, earliest, latest }: SourceRow): SourceFacts {
  const date: DateBounds | null = earliest === null ? null : { earliest: day(earliest), latest: day(latest) };
  return { kind, countryOfExport: country, date };
}

const day = (text: string | null): string | null => (text === null || text.endsWith('infinity') ? null : text);
