import type { EntityManager } from 'typeorm';
import { isStranger, requireMember, seen } from '../../people/visibility.ts';
import { parseRegistryNumber } from '../../../shared/registry-number.ts';
import { isId } from '../../platform/ids.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { Conditions, likePattern } from '../keyset.ts';
import { figureColumns } from './figure-columns.ts';
import { figureSorts, type IndividualQuery } from './individual.dto.ts';
import { hasNumber } from './merged-records.queries.ts';
import { say } from '../../platform/say.ts';

const longestNumber = 12;
const mostWords = 10;
/** What two ways of adding up the same shares may differ by: a bound of 1 must not lose an animal that is traced whole. */
const rounding = 1e-12;

/**
 * The conditions of a list of animals (`i` is the table individual). Names are looked up first, since lines, species and
 * keepers are few, so that the big table is only asked for ids: individual_line_index, individual_species_index,
 * individual_keeper_index, individual_code_index, individual_code_trigram, individual_number_unique.
 * Only animals that may be seen meet them, and a stranger cannot ask by keeper (401).
 * 422 where `number` is no registry number, or `q` has too many words.
 */
export async function individualConditions(
  manager: EntityManager,
  query: IndividualQuery,
  figures: 'as a set' | 'one by one' = 'as a set',
): Promise<Conditions> {
  const conditions = new Conditions();
  if (query.keeper !== undefined || query.sort === 'keeper') requireMember();
  conditions.add('i.withdrawn_at is null');
  conditions.add(seen('individual', 'i'));
  if (query.code !== undefined) conditions.add(`lower(i.code) = lower(${conditions.bind(query.code)})`);
  if (query.number !== undefined) conditions.add(hasNumber('i', `${conditions.bind(serialOf(query.number))}::bigint`));
  if (query.lineId !== undefined) addIds(conditions, 'i.line_id', [query.lineId]);
  if (query.line !== undefined) addIds(conditions, 'i.line_id', await idsByName(manager, 'line', ['name'], query.line));
  if (query.species !== undefined)
    addIds(
      conditions,
      'i.species_id',
      await idsByName(manager, 'species', ['scientific_name', 'common_name'], query.species),
    );
  if (query.keeper !== undefined)
    addIds(conditions, 'i.keeper_id', await idsByName(manager, 'keeper', ['name'], query.keeper));
  if (query.sourceId !== undefined)
    conditions.add(
      `i.source_id = (select o.id from source o where o.id = ${conditions.bind(query.sourceId)} and ${seen('source', 'o')})`,
    );
  if (query.visibility !== undefined) conditions.add(`i.visibility = ${conditions.bind(query.visibility)}`);
  if (query.sex !== undefined) conditions.add(`i.sex = ${conditions.bind(query.sex)}`);
  if (query.status !== undefined) conditions.add(`i.status = ${conditions.bind(query.status)}`);
  if (query.hatchedFrom !== undefined)
    conditions.add(`i.hatched_latest >= ${conditions.bind(`${query.hatchedFrom}-01-01`)}::date`);
  if (query.hatchedTo !== undefined)
    conditions.add(`i.hatched_earliest <= ${conditions.bind(`${query.hatchedTo}-12-31`)}::date`);
  addFigureBounds(conditions, query, figures);
  for (const word of wordsOf(query.q ?? '')) await addWord(manager, conditions, word);
  return conditions;
}

/** Bounds of stored figures as conditions on `individual_figures b`, their limits bound. */
export function figureBounds(conditions: Conditions, query: IndividualQuery): string[] {
  return figureSorts.flatMap((figure) =>
    (['From', 'To'] as const).flatMap((end) => {
      const bound = query[`${figure}${end}`];
      const { sql, type } = figureColumns[figure];
      if (bound === undefined) return [];
      const slack = type === 'integer' ? 0 : rounding;
      const [sign, limit] = end === 'From' ? ['>=', bound - slack] : ['<=', bound + slack];
      return `b.${sql} ${sign} ${conditions.bind(limit)}::${type}`;
    }),
  );
}

/**
 * All bounds in one look: the animals within them as a set (individual_figures_inbreeding_index and its like), or the row of each animal that
 * is come across (individual_figures_pkey).
 */
function addFigureBounds(conditions: Conditions, query: IndividualQuery, figures: 'as a set' | 'one by one'): void {
  const bounds = figureBounds(conditions, query).join(' and ');
  if (bounds === '') return;
  conditions.add(
    figures === 'as a set'
      ? `i.id in (select b.individual_id from individual_figures b where ${bounds})`
      : `(select ${bounds} from individual_figures b where b.individual_id = i.id)`,
  );
}

function wordsOf(text: string): string[] {
  const words = text.split(/\s+/).filter((word) => word !== '');
  if (words.length <= mostWords) return words;
  const detail = say`Search for at most ${mostWords} words at once.`;
  throw new InvalidProblem(detail, [{ pointer: '/q', detail }]);
}

function serialOf(text: string): number {
  const serial = parseRegistryNumber(text);
  if (serial !== null) return serial;
  const detail = say`${text} is no registry number: its digits and its check character do not fit. Read it again.`;
  throw new InvalidProblem(detail, [{ pointer: '/number', detail }]);
}

/** One id as an equation, so that an index on (that column, number) also gives the order. */
function addIds(conditions: Conditions, column: string, ids: readonly string[]): void {
  const [only] = ids;
  if (only === undefined) conditions.add('false');
  else if (ids.length === 1) conditions.add(`${column} = ${conditions.bind(only)}`);
  else conditions.add(`${column} = any(${conditions.bind(ids)}::uuid[])`);
}

async function idsByName(
  manager: EntityManager,
  table: 'line' | 'species' | 'keeper',
  columns: readonly string[],
  name: string,
): Promise<string[]> {
  if (isId(name)) return [name];
  const test = columns.map((column) => `lower(${column}) = lower($1)`).join(' or ');
  return (await manager.query<{ id: string }[]>(`select id from ${table} where ${test}`, [name])).map((row) => row.id);
}

/** Whether the index of trigrams finds a fragment in the midst of a code: three characters together, or fewer beside what parts a code. */
const hasTrigram = /[\p{L}\p{N}]{3}|[^\p{L}\p{N}][\p{L}\p{N}]|[\p{L}\p{N}]{2}[^\p{L}\p{N}]/u;
/** What parts of a code are told apart by, as a pattern. */
const partings = ['-', '/', '.', '\\_', ' '];

/**
 * The code has the fragment: anywhere, by individual_code_trigram; a fragment too short for that where the code or a part of it begins, by
 * individual_code_index and, with the parting before it, individual_code_trigram. Anything else would walk through all animals.
 */
function codeChoices(conditions: Conditions, word: string): string[] {
  const pattern = likePattern(word);
  // signs alone are looked for anywhere: where codes have them, most do
  const isShort = /[\p{L}\p{N}]/u.test(word) && !hasTrigram.test(word);
  const before = isShort ? ['', ...partings.map((parting) => `%${parting}`)] : ['%'];
  return before.map((start) => `lower(i.code) like ${conditions.bind(start + pattern.slice(1))}`);
}

/** A word of the search box: the beginning of a number, or a part of the code, the line, the species or the keeper. */
async function addWord(manager: EntityManager, conditions: Conditions, word: string): Promise<void> {
  const pattern = likePattern(word);
  const named = await manager.query<{ table: string; id: string }[]>(
    `select 'line_id' as table, id from line where lower(name) like $1
     union all select 'species_id', id from species where lower(scientific_name) like $1 or lower(common_name) like $1
     union all select 'keeper_id', id from keeper where lower(name) like $1 and ${isStranger() ? 'false' : 'true'}`,
    [pattern],
  );
  const choices = [...codeChoices(conditions, word), ...numberChoices(conditions, word)];
  for (const column of ['line_id', 'species_id', 'keeper_id']) {
    const ids = named.filter((row) => row.table === column).map((row) => row.id);
    if (ids.length > 0) choices.push(`i.${column} = any(${conditions.bind(ids)}::uuid[])`);
  }
  conditions.add(`(${choices.join(' or ')})`);
}

/** A prefix of a number is a few ranges of it: 107 is 107, 1070 to 1079, 10700 to 10799 and so on. */
function numberChoices(conditions: Conditions, word: string): string[] {
  const choices: string[] = [];
  const whole = parseRegistryNumber(word);
  if (whole !== null) choices.push(hasNumber('i', `${conditions.bind(whole)}::bigint`));
  const digits = /^([1-9]\d*)(-?)$/.exec(word);
  if (!digits?.[1] || digits[1].length > longestNumber) return choices;
  const prefix = Number(digits[1]);
  const widest = digits[2] === '-' ? 0 : longestNumber - digits[1].length;
  for (let power = 0; power <= widest; power++) {
    const width = 10 ** power;
    choices.push(
      `i.number between ${conditions.bind(prefix * width)} and ${conditions.bind((prefix + 1) * width - 1)}`,
    );
  }
  return choices;
}
