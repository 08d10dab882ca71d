import { once } from 'node:events';
import pg from 'pg';
import { from } from 'pg-copy-streams';
import type { Pedigree } from '../../api/lineage/kernel/pedigree.ts';
import { buildShape, type Shape } from './kernel-shapes.ts';

/** The register that the large benches are measured on: 1 000 000 invented animals in 2 000 lines. */
export const MILLION: Shape = {
  name: '2 000 lines x 500',
  lines: 2000,
  animalsPerLine: 500,
  breeders: 20,
  clutchSize: 5,
  crosses: 0,
};

/** Years that the population is spread over, and how many of the youngest animals of a line live. */
const FIRST_YEAR = 2004;
const YEARS = 22;
const LIVING = 100;
/** Keepers that share the lines. */
const KEEPERS = 100;

/** What stands in the register that was filled. */
export interface FilledRegister {
  readonly animals: number;
  readonly keepers: readonly string[];
  readonly lines: readonly string[];
  readonly species: string;
  /** Id of an animal by its dense number. */
  readonly animalId: (animal: number) => string;
  /** Line of an animal. */
  readonly lineOf: Int32Array;
}

/**
 * Fills an empty, migrated register with a made-up population, straight into the tables and without their triggers, as a backup is
 * put in place. Founders of a line come from one source of its own.
 */
export async function fillRegister(databaseUrl: string, shape: Shape = MILLION): Promise<FilledRegister> {
  const pedigree = buildShape(shape);
  const population = new Population(pedigree, shape);
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    await client.query('begin');
    await client.query('set local session_replication_role = replica');
    await client.query('set local synchronous_commit = off');
    for (const [target, rows] of population.tables()) await copyRows(client, target, rows);
    await client.query(`select setval('registry_serial', $1)`, [1001 + pedigree.clutchOf.length]);
    await client.query('update lineage_revision set revision = revision + 1, changed_at = now()');
    await client.query(
      `insert into lineage_change (revision, kind) select revision, 'everything' from lineage_revision`,
    );
    await client.query('commit');
    await client.query('vacuum analyze');
  } finally {
    await client.end();
  }
  return population;
}

class Population implements FilledRegister {
  readonly animals: number;
  readonly keepers: readonly string[];
  readonly lines: readonly string[];
  readonly species = idOf(1, 1);
  readonly lineOf: Int32Array;
  readonly #pedigree: Pedigree;
  readonly #shape: Shape;
  /** Rank in time of each animal; a founder's is 0. */
  readonly #tier: Int32Array;

  constructor(pedigree: Pedigree, shape: Shape) {
    this.#pedigree = pedigree;
    this.#shape = shape;
    this.animals = pedigree.clutchOf.length;
    this.keepers = Array.from({ length: KEEPERS }, (_, keeper) => idOf(2, keeper));
    this.lines = Array.from({ length: shape.lines }, (_, line) => idOf(3, line));
    this.lineOf = pedigree.clutchOf.map((clutch, animal) =>
      clutch < 0 ? Math.floor(animal / shape.breeders) : clutch % shape.lines,
    );
    this.#tier = new Int32Array(this.animals);
    pedigree.clutchOf.forEach((clutch, animal) => {
      if (clutch >= 0) this.#tier[animal] = this.#tierOfClutch(clutch) + 1;
    });
  }

  readonly animalId = (animal: number): string => idOf(6, animal);

  #tierOfClutch(clutch: number): number {
    const { pairSire, pairDam } = this.#pedigree;
    return 1 + Math.max(this.#tier[pairSire[clutch] ?? 0] ?? 0, this.#tier[pairDam[clutch] ?? 0] ?? 0);
  }

  #yearOf(clutch: number): number {
    return FIRST_YEAR + Math.floor((YEARS * clutch) / (this.#pedigree.pairStart.length - 1));
  }

  /** COPY targets with their rows, those that others refer to first. */
  *tables(): Generator<[string, Iterable<string>]> {
    yield ['keeper (id, name)', this.keepers.map((id, keeper) => `${id}\tKeeper ${keeper}`)];
    yield ['species (id, scientific_name, keeper_id)', [`${this.species}\tInventa millionis\t${this.keepers[0]}`]];
    const line = (id: string, number: number): string =>
      `${id}\t${this.species}\tLine ${number}\tlocality\t${this.#keeperOf(number)}`;
    yield ['line (id, species_id, name, label_kind, keeper_id)', this.lines.map(line)];
    yield [
      'source (id, keeper_id, kind, label_as_received)',
      this.lines.map((_, number) => `${idOf(4, number)}\t${this.#keeperOf(number)}\timport\tLine ${number}`),
    ];
    yield ['clutch (id, keeper_id, laid, laid_earliest, laid_latest, tier, stage)', this.#clutchRows()];
    yield [
      'individual (id, number, keeper_id, code, species_id, line_id, sex, source_id, clutch_id, clutch_tier, tier, hatched, hatched_earliest, hatched_latest, status)',
      this.#animalRows(),
    ];
    yield [
      'clutch_candidate (clutch_id, clutch_tier, role, individual_id, individual_tier, probability)',
      this.#parentRows(),
    ];
  }

  #keeperOf(line: number): string {
    return this.keepers[line % KEEPERS] ?? '';
  }

  *#clutchRows(): Generator<string> {
    for (let clutch = 0; clutch + 1 < this.#pedigree.pairStart.length; clutch++) {
      const keeper = this.#keeperOf(clutch % this.#shape.lines);
      yield `${idOf(5, clutch)}\t${keeper}\t${yearText(this.#yearOf(clutch))}\t${this.#tierOfClutch(clutch)}\tout`;
    }
  }

  *#animalRows(): Generator<string> {
    const { clutchOf } = this.#pedigree;
    const alive = this.animals - LIVING * this.#shape.lines;
    for (let animal = 0; animal < this.animals; animal++) {
      const clutch = clutchOf[animal] ?? -1;
      const line = this.lineOf[animal] ?? 0;
      const origin =
        clutch < 0 ? `${idOf(4, line)}\t\\N\t\\N` : `\\N\t${idOf(5, clutch)}\t${this.#tierOfClutch(clutch)}`;
      const hatched = clutch < 0 ? '\\N\t\\N\t\\N' : yearText(this.#yearOf(clutch));
      const sex = animal % 2 === 0 ? 'male' : 'female';
      const head = `${this.animalId(animal)}\t${1001 + animal}\t${this.#keeperOf(line)}\tA${animal}\t${this.species}`;
      const status = animal >= alive ? 'alive' : 'died';
      yield `${head}\t${this.lines[line]}\t${sex}\t${origin}\t${this.#tier[animal]}\t${hatched}\t${status}`;
    }
  }

  *#parentRows(): Generator<string> {
    const { pairSire, pairDam } = this.#pedigree;
    for (let clutch = 0; clutch < pairSire.length; clutch++)
      for (const [role, parent = 0] of [
        ['sire', pairSire[clutch]],
        ['dam', pairDam[clutch]],
      ] as const)
        yield `${idOf(5, clutch)}\t${this.#tierOfClutch(clutch)}\t${role}\t${this.animalId(parent)}\t${this.#tier[parent]}\t1`;
  }
}

const yearText = (year: number): string => `${year}\t${year}-01-01\t${year}-12-31`;

/** An id that begins with a time, as those of the register do, and ends in bits that look random. */
function idOf(kind: number, number: number): string {
  const time = (kind * 0x100_0000_0000 + number).toString(16).padStart(12, '0');
  const end = (Math.imul(number + 1, 0x9e3779b1) >>> 0).toString(16).padStart(8, '0');
  return `${time.slice(0, 8)}-${time.slice(8)}-7000-8000-${kind.toString(16).padStart(4, '0')}${end}`;
}

async function copyRows(client: pg.Client, target: string, rows: Iterable<string>): Promise<void> {
  const stream = client.query(from(`copy ${target} from stdin`));
  let piece = '';
  for (const row of rows) {
    piece += `${row}\n`;
    if (piece.length < 1 << 18) continue;
    if (!stream.write(piece)) await once(stream, 'drain');
    piece = '';
  }
  stream.end(piece);
  await once(stream, 'finish');
}
