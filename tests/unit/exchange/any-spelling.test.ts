import fc from 'fast-check';
import { expect, test } from 'vitest';
import { notesOf } from '../../../api/exchange/kept-notes.ts';
import type { Candidate } from '../../../api/exchange/parent-cells.ts';
import { sourceValues } from '../../../api/exchange/planned-sources.ts';
import type { SheetPlan } from '../../../api/exchange/sheet-plan.ts';
import { planSheet } from '../../../api/exchange/sheet-plan.ts';
import { nothingKnown } from '../../../api/exchange/knowledge.ts';
import { computeInbreeding, inbreedingOf } from '../../../api/lineage/kernel/inbreeding.ts';
import { sheetOf } from './sheet-of.ts';

type Row = Readonly<Record<string, string>>;

const columns = [
  'code',
  'species',
  'line',
  'sex',
  'sire',
  'dam',
  'parents',
  'clutch',
  'source',
  'source kind',
  'source date',
  'source base kinship',
  'country of export',
  'label',
  'label standing note',
  'laid',
  'hatched',
  'out of water',
  'died',
  'status',
  'notes',
  'tank',
];

/** A club of founders and clutches without a contradiction, as rows. */
const clubs: fc.Arbitrary<Row[]> = fc
  .record({
    founders: fc.array(fc.record({ sex: fc.constantFrom('m', 'f', 'u'), source: fc.nat(3), text: remark() }), {
      minLength: 3,
      maxLength: 8,
    }),
    clutches: fc.array(
      fc.record({
        kind: fc.constantFrom('coded', 'certain', 'listed', 'grouped'),
        young: fc.integer({ min: 1, max: 4 }),
        picks: fc.array(fc.nat(), { minLength: 4, maxLength: 4 }),
        text: remark(),
      }),
      { maxLength: 8 },
    ),
  })
  .map(({ founders, clutches }) => {
    const rows: Row[] = founders.map(({ sex, source, text }, place) => ({
      code: `F-${place}`,
      species: 'Epipedobates anthonyi',
      sex,
      notes: text,
      ...(source === 0 ? {} : sourceCells(source)),
    }));
    clutches.forEach(({ kind, young, picks, text }, number) => {
      const parents = parentCells(kind, rows, picks);
      for (let place = 0; place < young; place++)
        rows.push({
          code: `Y ${number}/${place}`,
          sex: ['m', 'f', 'u'][(number + place) % 3] ?? '',
          line: place === 0 ? 'Quebrada Honda' : '',
          ...parents,
          ...(kind === 'coded' ? { clutch: `C:${number}` } : {}),
          laid: `20${10 + number}-04-12`,
          tank: text,
        });
    });
    return rows;
  });

function remark(): fc.Arbitrary<string> {
  return fc
    .string({ unit: fc.constantFrom(...'aé蛙 ,;\t"\'\n:/?=-'), maxLength: 12 })
    .map((text) => text.normalize('NFC').trim())
    .filter((text) => !/^"[^"]*"/.test(text)); // that may be a quotation mark left open, see sheet-reader.test.ts
}

function sourceCells(source: number): Row {
  return {
    source: `S-${source}`,
    'source kind': 'import',
    'source date': `199${source}~`,
    'source base kinship': `0.${source}`,
    label: 'Azul; or so',
  };
}

function parentCells(kind: string, rows: readonly Row[], picks: readonly number[]): Row {
  const [a = 0, b = 0, c = 0, d = 0] = picks;
  const of = (sexes: string, pick: number): string => {
    const able = rows.filter(({ sex }) => sexes.includes(sex ?? ''));
    return able[pick % Math.max(1, able.length)]?.code ?? '?';
  };
  if (kind === 'grouped') {
    const group = [...new Set([of('u', a), of('u', b), of('m', c)])].filter((code) => code !== '?');
    return group.length > 1 ? { parents: group.join('/') } : { sire: of('m', a), dam: of('f', b) };
  }
  if (kind !== 'listed') return { sire: of('m', a), dam: of('f', b) };
  const sires = [...new Set([of('m', a), of('m', b), '?'])];
  const dams = [...new Set([of('f', c), of('f', d)])];
  return { sire: sires.length === 3 ? `${sires[0]}:0.5/${sires[1]}:0.3/?:0.2` : sires.join('/'), dam: dams.join('/') };
}

/** Ways to save the same sheet. */
const spellings: fc.Arbitrary<Spelling> = fc.record({
  delimiter: fc.constantFrom(',', ';', '\t'),
  end: fc.constantFrom('\n', '\r\n', '\r'),
  mark: fc.constantFrom('', '\uFEFF'),
  isQuoted: fc.array(fc.boolean(), { minLength: 1, maxLength: 50 }),
  isUpper: fc.boolean(),
  gap: fc.constantFrom(' ', '_', '-', '  ', ''),
  piece: fc.integer({ min: 1, max: 400 }),
});
interface Spelling {
  readonly delimiter: string;
  readonly end: string;
  readonly mark: string;
  /** Which cells stand in quotation marks though they need none, over and over. */
  readonly isQuoted: readonly boolean[];
  readonly isUpper: boolean;
  readonly gap: string;
  /** Bytes that arrive at a time. */
  readonly piece: number;
}

function spelled(
  rows: readonly Row[],
  order: readonly string[],
  { delimiter, end, mark, isQuoted, isUpper, gap }: Spelling,
): string {
  let cells = 0;
  const cell = (text: string): string =>
    isQuoted[cells++ % isQuoted.length] === true || /["\r\n,;\t]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  const header = order.map((name) => cell((isUpper ? name.toUpperCase() : name).replaceAll(' ', gap)));
  const lines = rows.map((row) => order.map((name) => cell(row[name] ?? '')));
  return mark + [header, ...lines].map((line) => line.join(delimiter)).join(end);
}

/** What a plan says of each animal, whatever the order of rows was. */
function facts(plan: SheetPlan): Record<string, unknown> {
  const { table, cells, clutches, clutchOf, sources, sourceOf, species, speciesOf, lines, lineOf, tiers, pedigree } =
    plan;
  const code = (parent: number): string => (parent < 0 ? '?' : table.text('code', parent));
  const named = (candidates: readonly Candidate[]): unknown =>
    Object.fromEntries(
      candidates.map(({ parent, probability }) => [code(parent), Number(probability.toFixed(12))]).sort(),
    );
  const inbreeding = computeInbreeding(pedigree);
  const animals = Array.from({ length: table.length }, (_, animal) => animal);
  return Object.fromEntries(
    animals.map((animal) => {
      const clutch = clutches[clutchOf[animal] ?? -1];
      const source = sources[sourceOf[animal] ?? -1];
      const mates = animals
        .filter((other) => clutch && clutchOf[other] === clutchOf[animal])
        .map(code)
        .sort();
      return [
        code(animal),
        {
          sex: cells.sex(animal),
          status: cells.status(animal),
          species: species[speciesOf[animal] ?? -1],
          line: lines[lineOf[animal] ?? -1]?.name,
          hatched: table.text('hatched', animal),
          notes: notesOf(table, clutchOf, animal).replace(/tank/i, 'tank'),
          tier: tiers.ofAnimal[animal],
          source: source && { code: source.code, ...sourceValues(source) },
          clutch: clutch && {
            code: clutch.code,
            laid: clutch.laid,
            sires: named(clutch.sires),
            dams: named(clutch.dams),
            group: named(clutch.group),
            mates,
          },
          inbreeding: inbreedingOf(pedigree, inbreeding, animal).expected.toFixed(12),
        },
      ];
    }),
  );
}

async function factsOf(content: string, piece: number): Promise<Record<string, unknown>> {
  const sheet = await sheetOf(content, piece);
  const plan = await planSheet(sheet, nothingKnown);
  if (plan === null) throw new Error(`${JSON.stringify(sheet.problems.list())}\n${content}`);
  return facts(plan);
}

const plain: Spelling = {
  delimiter: ',',
  end: '\n',
  mark: '',
  isQuoted: [false],
  isUpper: false,
  gap: ' ',
  piece: 65_536,
};
test('the order of rows and columns, the delimiter, the line ends, the quoting and the spelling of headers change nothing', async () => {
  await fc.assert(
    fc.asyncProperty(
      clubs.chain((rows) => fc.tuple(fc.constant(rows), fc.shuffledSubarray(rows, { minLength: rows.length }))),
      fc.shuffledSubarray(columns, { minLength: columns.length }),
      spellings,
      async ([rows, shuffled], order, spelling) => {
        const expected = await factsOf(spelled(rows, columns, plain), plain.piece);
        expect(await factsOf(spelled(shuffled, order, spelling), spelling.piece)).toEqual(expected);
      },
    ),
    { numRuns: 150 },
  );
});
