import type { DataSource, EntityManager } from 'typeorm';
import { newId } from '../../api/platform/ids.ts';
import type { LabelKind, Sex, SourceKind, Status } from '../../shared/vocabulary.ts';

/** A candidate of a sketch: an individual by its place, or −1 for a frog nobody knows. */
export interface SketchCandidate {
  readonly individual: number;
  readonly probability: number;
}

export type SketchClutch =
  | { readonly sires: readonly SketchCandidate[]; readonly dams: readonly SketchCandidate[]; readonly laid?: string }
  | {
      readonly pairs: readonly { readonly a: number; readonly b: number; readonly probability: number }[];
      readonly laid?: string;
    };

interface SketchIndividual {
  /** Places in the sketch; left out: none. */
  readonly clutch?: number;
  readonly source?: number;
  readonly line?: number;
  readonly sex?: Sex;
  readonly status?: Status;
  readonly code?: string;
}

/** A register in short, by places instead of ids: for registers too large or too odd to be made through the API. */
export interface RegisterSketch {
  readonly sources?: readonly {
    readonly label?: string;
    readonly baseKinship?: number;
    readonly kind?: SourceKind;
    readonly date?: string;
  }[];
  readonly lines?: readonly { readonly name: string; readonly kind?: LabelKind }[];
  readonly clutches: readonly SketchClutch[];
  readonly individuals: readonly SketchIndividual[];
}

/** The ids that the records of a sketch got, by their places. */
export interface SketchIds {
  readonly sources: string[];
  readonly lines: string[];
  readonly clutches: string[];
  readonly individuals: string[];
}

/** Writes a sketch into a register straight by SQL, in one transaction, obeying every rule of the schema. */
export async function writeSketch(
  dataSource: DataSource,
  sketch: RegisterSketch,
  makeId: () => string = newId,
): Promise<SketchIds> {
  const ids = (list: readonly unknown[] | undefined): string[] => (list ?? []).map(makeId);
  const made: SketchIds = {
    sources: ids(sketch.sources),
    lines: ids(sketch.lines),
    clutches: ids(sketch.clutches),
    individuals: ids(sketch.individuals),
  };
  await dataSource.transaction(async (manager) => {
    const owner = await ownerOf(manager);
    await writeOrigins(manager, sketch, made, owner);
    await writeAnimals(manager, sketch, made, owner);
    await writeParents(manager, sketch, made);
  });
  return made;
}

interface Owner {
  readonly keeper: string;
  readonly species: string;
}

async function ownerOf(manager: EntityManager): Promise<Owner> {
  const [keeper] = await manager.query<{ id: string }[]>(
    `with found as (select id from keeper limit 1),
       made as (insert into keeper (name) select 'Sketch Keeper' where not exists (select from found) returning id)
     select id from found union all select id from made`,
  );
  const [species] = await manager.query<{ id: string }[]>(
    `with found as (select id from species where scientific_name = 'Epipedobates anthonyi'),
       made as (insert into species (scientific_name) select 'Epipedobates anthonyi' where not exists (select from found) returning id)
     select id from found union all select id from made`,
  );
  if (!keeper || !species) throw new Error('the register has no keeper or no species');
  return { keeper: keeper.id, species: species.id };
}

async function writeOrigins(
  manager: EntityManager,
  sketch: RegisterSketch,
  ids: SketchIds,
  owner: Owner,
): Promise<void> {
  const sources = sketch.sources ?? [];
  await manager.query(
    `insert into source (id, keeper_id, kind, label_as_received, base_kinship, date, date_earliest, date_latest)
     select id, $1, kind, label, base, date, date::date, date::date
     from unnest($2::uuid[], $3::text[], $4::text[], $5::float8[], $6::text[]) as s (id, kind, label, base, date)`,
    [
      owner.keeper,
      ids.sources,
      sources.map(({ kind }) => kind ?? 'import'),
      sources.map(({ label }) => label ?? null),
      sources.map(({ baseKinship }) => baseKinship ?? 0),
      sources.map(({ date }) => date ?? null),
    ],
  );
  const lines = sketch.lines ?? [];
  await manager.query(
    `insert into line (id, species_id, name, label_kind)
     select id, $1, name, kind from unnest($2::uuid[], $3::text[], $4::text[]) as l (id, name, kind)`,
    [owner.species, ids.lines, lines.map(({ name }) => name), lines.map(({ kind }) => kind ?? 'locality')],
  );
}

async function writeAnimals(
  manager: EntityManager,
  sketch: RegisterSketch,
  ids: SketchIds,
  owner: Owner,
): Promise<void> {
  const { clutchTiers, individualTiers } = tiersOf(sketch);
  await manager.query(
    `insert into clutch (id, keeper_id, tier, laid, laid_earliest, laid_latest)
     select id, $1, tier, laid, laid::date, laid::date from unnest($2::uuid[], $3::int[], $4::text[]) as c (id, tier, laid)`,
    [owner.keeper, ids.clutches, clutchTiers, sketch.clutches.map(({ laid }) => laid ?? null)],
  );
  const at = (list: readonly string[], place: number | undefined): string | null =>
    place === undefined ? null : (list[place] ?? null);
  await manager.query(
    `insert into individual (id, keeper_id, species_id, code, line_id, source_id, clutch_id, clutch_tier, tier, sex, status)
     select id, $1, $2, code, line, source, clutch, clutch_tier, tier, sex, status
     from unnest($3::uuid[], $4::text[], $5::uuid[], $6::uuid[], $7::uuid[], $8::int[], $9::int[], $10::text[], $11::text[])
       as i (id, code, line, source, clutch, clutch_tier, tier, sex, status)`,
    [
      owner.keeper,
      owner.species,
      ids.individuals,
      sketch.individuals.map(({ code }) => code ?? null),
      sketch.individuals.map(({ line }) => at(ids.lines, line)),
      sketch.individuals.map(({ source }) => at(ids.sources, source)),
      sketch.individuals.map(({ clutch }) => at(ids.clutches, clutch)),
      sketch.individuals.map(({ clutch }) => (clutch === undefined ? null : (clutchTiers[clutch] ?? null))),
      individualTiers,
      sketch.individuals.map(({ sex }) => sex ?? 'unsexed'),
      sketch.individuals.map(({ status }) => status ?? 'alive'),
    ],
  );
}

async function writeParents(manager: EntityManager, sketch: RegisterSketch, ids: SketchIds): Promise<void> {
  const candidates: [string, string, string | null, number][] = [];
  const pairs: [string, string, string, number][] = [];
  sketch.clutches.forEach((clutch, place) => {
    const id = ids.clutches[place] ?? '';
    if ('pairs' in clutch)
      for (const { a, b, probability } of clutch.pairs) {
        const [first, second] = [ids.individuals[a] ?? '', ids.individuals[b] ?? ''].sort();
        pairs.push([id, first ?? '', second ?? '', probability]);
      }
    else
      for (const [role, side] of [
        ['sire', clutch.sires],
        ['dam', clutch.dams],
      ] as const)
        for (const { individual, probability } of side)
          candidates.push([id, role, ids.individuals[individual] ?? null, probability]);
  });
  const column = (rows: readonly (readonly unknown[])[], place: number): unknown[] => rows.map((row) => row[place]);
  await manager.query(
    `insert into clutch_candidate (clutch_id, clutch_tier, role, individual_id, individual_tier, probability)
     select r.clutch, c.tier, r.role, r.individual, i.tier, r.probability
     from unnest($1::uuid[], $2::text[], $3::uuid[], $4::float8[]) as r (clutch, role, individual, probability)
     join clutch c on c.id = r.clutch left join individual i on i.id = r.individual`,
    [0, 1, 2, 3].map((place) => column(candidates, place)),
  );
  await manager.query(
    `insert into clutch_pair (clutch_id, clutch_tier, a_id, a_tier, b_id, b_tier, probability)
     select r.clutch, c.tier, r.a, a.tier, r.b, b.tier, r.probability
     from unnest($1::uuid[], $2::uuid[], $3::uuid[], $4::float8[]) as r (clutch, a, b, probability)
     join clutch c on c.id = r.clutch join individual a on a.id = r.a join individual b on b.id = r.b`,
    [0, 1, 2, 3].map((place) => column(pairs, place)),
  );
}

/** Ranks in time: a clutch above all its candidates, young above their clutch. Sketches may stand in any order. */
function tiersOf({ clutches, individuals }: RegisterSketch): { clutchTiers: number[]; individualTiers: number[] } {
  const clutchTiers = new Array<number>(clutches.length).fill(0);
  const parents = clutches.map((clutch) =>
    'pairs' in clutch
      ? clutch.pairs.flatMap(({ a, b }) => [a, b])
      : [...clutch.sires, ...clutch.dams].map(({ individual }) => individual),
  );
  const waiting: number[] = [];
  for (let clutch = 0; clutch < clutches.length; clutch++) {
    waiting.push(clutch);
    while (waiting.length > 0) {
      const top = waiting.at(-1) ?? 0;
      const above = (parents[top] ?? []).flatMap((parent) => individuals[parent]?.clutch ?? []);
      const missing = above.filter((other) => clutchTiers[other] === 0);
      if (missing.length > 0) waiting.push(...missing);
      else {
        clutchTiers[top] = 1 + Math.max(0, ...above.map((other) => (clutchTiers[other] ?? 0) + 1));
        waiting.pop();
      }
    }
  }
  return {
    clutchTiers,
    individualTiers: individuals.map(({ clutch }) => (clutch === undefined ? 0 : (clutchTiers[clutch] ?? 0) + 1)),
  };
}
