import { describe, expect, test } from 'vitest';
import type { SheetColumn } from '../../../shared/register-sheet.ts';
import { sheetOf } from './sheet-of.ts';
import { containing, some } from './matchers.ts';

async function column(content: string | Uint8Array, name: SheetColumn, piece?: number): Promise<string[]> {
  const { table, problems } = await sheetOf(content, piece);
  expect(problems.list()).toEqual([]);
  return Array.from({ length: table.length }, (_, animal) => table.text(name, animal));
}

async function problemsOf(content: string | Uint8Array): Promise<{ row: number; column: string; detail: string }[]> {
  return (await sheetOf(content)).problems.list();
}

describe('delimiters, line ends and marks', () => {
  test.each([',', ';', '\t'])('cells divided by %j', async (delimiter) => {
    const sheet = [
      ['code', 'sire', 'dam'],
      ['EA-07', 'EA-01', 'EA-02'],
    ]
      .map((row) => row.join(delimiter))
      .join('\n');
    expect(await column(sheet, 'dam')).toEqual(['EA-02']);
  });

  test('other delimiters inside quoted headers and cells do not mislead', async () => {
    expect(await column('code;"size, weight; mood";notes\nA;"1,2,3";"a;b,c"\n', 'notes')).toEqual([
      'a;b,c\nsize, weight; mood: 1,2,3',
    ]);
  });

  test('a sheet of one column needs no delimiter', async () => {
    expect(await column('code\nEA,01\nEA,02\n', 'code')).toEqual(['EA,01', 'EA,02']);
  });

  test.each(['\n', '\r\n', '\r'])('rows end with %j', async (end) => {
    expect(await column(['code,notes', 'A,"one', 'two"', 'B,x', ''].join(end), 'notes')).toEqual(['one\ntwo', 'x']);
  });

  test('line ends may be mixed', async () => {
    expect(await column('code,sex\r\nA,m\n"B","f"\r\nC,u', 'sex')).toEqual(['m', 'f', 'u']);
  });

  test('a byte order mark and the line sep= are no part of the header', async () => {
    expect(await column('\uFEFFcode,sex\nA,m', 'code')).toEqual(['A']);
    expect(await column('\uFEFFsep=;\r\ncode;sire\r\nA;B,C\r\n', 'sire')).toEqual(['B,C']);
  });

  test('letters of several bytes survive a cut between any two bytes', async () => {
    const sheet = '\uFEFFcode;notes\r\nÄß-1;"größer \r\n""als"" 蛙"\r\nB;x\r\n';
    for (const piece of [1, 2, 3, 5, 7])
      expect(await column(sheet, 'notes', piece)).toEqual(['größer \n"als" 蛙', 'x']);
  });
});

describe('headers', () => {
  test('case, spaces, dashes and underscores do not matter', async () => {
    const { table, problems, warnings } = await sheetOf(
      'CODE,Source_Kind, out-of  water ,"COUNTRY\nOF EXPORT"\nA,import,2021,EC',
    );
    expect(problems.list()).toEqual([]);
    expect(warnings.list()).toEqual([]);
    expect([table.text('sourceKind', 0), table.text('outOfWater', 0), table.text('countryOfExport', 0)]).toEqual([
      'import',
      '2021',
      'EC',
    ]);
  });

  test('a column that the register does not know is reported and kept as notes', async () => {
    const { table, warnings } = await sheetOf('code,Tank,notes,Mood\nA,7,calm,\nB,,,shy');
    expect([table.text('notes', 0), table.text('notes', 1)]).toEqual(['calm\nTank: 7', 'Mood: shy']);
    expect(warnings.list().map(({ column: name }) => name)).toEqual(['Tank', 'Mood']);
  });

  test('the same column twice is refused, also in another spelling', async () => {
    expect(await problemsOf('code,out of water,sex,OUT_OF_WATER\nA,,,')).toEqual([
      { row: 1, column: 'OUT_OF_WATER', detail: containing('Columns B and D are both "out of water"') },
    ]);
  });

  test('a sheet without code is refused, naming what was found', async () => {
    expect(await problemsOf('name,father\nA,B')).toEqual([
      { row: 1, column: 'code', detail: containing('no column "code"') },
    ]);
  });

  test('trailing empty headers are no columns, but a cell below one is a problem', async () => {
    expect(await column('code,sex,,\nA,m,,\nB,f', 'sex')).toEqual(['m', 'f']);
    expect(await problemsOf('code,,sex\nA,lost,m')).toEqual([
      { row: 2, column: 'B', detail: containing('without a header') },
    ]);
  });

  test('more than 100 columns are refused', async () => {
    const headers = Array.from({ length: 101 }, (_, place) => (place === 0 ? 'code' : `c${place}`));
    expect(await problemsOf(`${headers.join(',')}\nA`)).toEqual([
      { row: 1, column: '', detail: containing('101 columns') },
    ]);
  });
});

describe('rows', () => {
  test('blank rows are skipped but counted, a row with line breaks in a cell counts once', async () => {
    const { table } = await sheetOf('code,notes\n\nA,"1\n2\n3"\n,\n  ,\nB,\n');
    expect([table.row(0), table.row(1)]).toEqual([3, 6]);
  });

  test('rows of another length are refused with their row, blank cells beyond the header are not', async () => {
    const problems = await problemsOf('code,sex,notes\nA,m\nB,m,x,y\nC,m,x,,\n');
    expect(problems).toEqual([
      { row: 2, column: '', detail: containing('2 cells, the header has 3') },
      { row: 3, column: '', detail: containing('4 cells, the header has 3') },
    ]);
  });

  test('cells are trimmed, brought into normal form C, and inner spaces of any kind become one', async () => {
    const { table } = await sheetOf(
      'code,line,notes\n\u00a0A\u00a0\u00a01 ,"Quebrada\n Honda"," Cafe\u0301\n two  "\n',
    );
    expect([table.text('code', 0), table.text('line', 0), table.text('notes', 0)]).toEqual([
      'A 1',
      'Quebrada Honda',
      'Café\n two',
    ]);
  });

  test('a quotation mark inside a cell is a quotation mark', async () => {
    expect(
      await column('code,notes\nA,5" pot\nB,"the ""blue"" one"\nC,"Blue" morph\nD,"""Blue""\n, later green"', 'notes'),
    ).toEqual(['5" pot', 'the "blue" one', '"Blue" morph', '"Blue"\n, later green']);
  });

  test('a quotation mark that swallows rows is a problem, whether it ends somewhere or never', async () => {
    expect(await problemsOf('code,notes\nA,"lost\nB,x\nC,"y"\n')).toEqual([
      { row: 2, column: 'notes', detail: containing('not closed') },
    ]);
    expect(await problemsOf('code,notes\nA,x\nB,"lost\nC,y\n')).toEqual([
      { row: 3, column: '', detail: containing('never closed') },
    ]);
    expect(await problemsOf(`code,notes\nA,"lost\n${'x,y\n'.repeat(200_000)}`)).toEqual([
      { row: 2, column: '', detail: containing('longer than') },
    ]);
  });

  test('cells that are too long are refused by the measure of their column', async () => {
    const problems = await problemsOf(
      `code,sire,tank,notes\n${'c'.repeat(41)},${'s'.repeat(2001)},${'t'.repeat(2001)},${'n'.repeat(10_001)}\nB,,,${'n'.repeat(10_000)}\n`,
    );
    expect(problems.map(({ row, column: name }) => [row, name])).toEqual([
      [2, 'code'],
      [2, 'sire'],
      [2, 'tank'],
      [2, 'notes'],
    ]);
  });
});

describe('what is not UTF-8 text', () => {
  test('bytes of another encoding are refused in their row and column', async () => {
    const sheet = Buffer.concat([Buffer.from('code,notes\nA,fine\nB,gr'), Buffer.from([0xfc]), Buffer.from('n\n')]);
    expect(await problemsOf(sheet)).toEqual([{ row: 3, column: 'notes', detail: containing('not UTF-8') }]);
  });

  test.each([
    ['UTF-16 with a mark', Buffer.from('\uFEFFcode,sex\nA,m', 'utf16le'), 'UTF-16'],
    ['UTF-16 without one', Buffer.from('code,sex\nA,m', 'utf16le'), 'UTF-16'],
    ['an old workbook', Buffer.from('\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1', 'latin1'), 'workbook'],
    ['a workbook', Buffer.from('PK\x03\x04\x14\x00\x06\x00', 'latin1'), 'workbook'],
  ])('%s', async (_, bytes, said) => {
    expect(await problemsOf(bytes)).toEqual([{ row: 1, column: '', detail: containing(said) }]);
  });

  test('NUL and other control characters are refused', async () => {
    expect(await problemsOf('code,notes\nA\0,x\nB,\x07y')).toEqual([
      { row: 2, column: 'code', detail: some(String) },
      { row: 3, column: 'notes', detail: containing('control character') },
    ]);
  });
});

test.each([
  ['nothing', '', 'empty'],
  ['blank rows only', '\n ,, \n\n', 'empty'],
  ['a mark only', '\uFEFF', 'empty'],
  ['a header only', 'code,sire,dam\n', 'no animals'],
])('a file with %s is refused', async (_, content, said) => {
  expect(await problemsOf(content)).toEqual([{ row: some(Number), column: '', detail: containing(said) }]);
});

test('a hopeless file is told its first thousand problems and their number', async () => {
  const { problems } = await sheetOf(`code,sex\n${'A\n'.repeat(1500)}`);
  expect([problems.list().length, problems.total]).toEqual([1000, 1500]);
});
