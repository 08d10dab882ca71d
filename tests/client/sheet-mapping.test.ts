import { beforeEach, describe, expect, it } from 'vitest';
import { ColumnChoices, type ColumnChoice } from '$lib/exchange/mapping/column-choices.svelte.ts';
import { ColumnMemory } from '$lib/exchange/mapping/column-memory.ts';
import { dateOrdersOf, readDate } from '$lib/exchange/mapping/date-order.ts';
import { mappedSheet, refusedRows } from '$lib/exchange/mapping/mapped-sheet.ts';
import { readCells } from '$lib/exchange/mapping/sheet-cells.ts';

const german = [
  'Tiernummer;Art;Zuchtlinie;Geschlecht (m/w);Vatertier;Muttertier;Geschlüpft;Verbleib;Bemerkungen',
  'Q-1;Epipedobates anthonyi;Große Schlucht;Männchen;;;1998;tot;',
  'Q-2;Epipedobates anthonyi;Große Schlucht;Weibchen;;;1998;verkauft;',
  'Q-3;Epipedobates anthonyi;Große Schlucht;unbekannt;Q-1;Q-2;12.04.2021;lebt;"klein; flink"',
].join('\r\n');
const spanish = [
  'código,especie,línea,sexo,padre,madre,fecha de eclosión,país,estado,observaciones',
  'Q-1,Epipedobates anthonyi,Peñas Altas,macho,,,1998,Perú,muerto,',
  'Q-2,Epipedobates anthonyi,Peñas Altas,hembra,,,1998,,vivo,',
  'Q-3,Epipedobates anthonyi,Peñas Altas,hembra,Q-1,Q-2,3 de abril de 2021,,vivo,niña',
].join('\n');

const bytesOf = (text: string, byte: (code: number) => number[]): Uint8Array<ArrayBuffer> =>
  new Uint8Array([...text].flatMap((letter) => byte(letter.charCodeAt(0))));
const wide = (code: number): number[] => [code & 0xff, code >> 8];

async function choicesOf(sheet: string | Uint8Array<ArrayBuffer>, keeper = 'somebody'): Promise<ColumnChoices> {
  return new ColumnChoices(await readCells(new Blob([sheet])), new ColumnMemory(keeper));
}

const set = (choices: ColumnChoices, at: number, choice: Partial<ColumnChoice>): void => {
  Object.assign(choices.columns[at] ?? {}, choice);
};
const targets = (choices: ColumnChoices): string[] => choices.columns.map(({ target }) => target);

beforeEach(() => localStorage.clear());

describe('the columns of a keeper’s sheet', () => {
  it('are known in German and Spanish, with their words for sex and status', async () => {
    const choices = await choicesOf(german);
    expect(targets(choices)).toEqual([
      ...['code', 'species', 'line', 'sex', 'sire', 'dam', 'hatched', 'status', 'notes'],
    ]);
    expect(choices.faults).toEqual([]);
    expect(await mappedSheet(choices.cells, choices.mapping()).text()).toBe(
      [
        'code,species,line,sex,sire,dam,hatched,status,notes',
        'Q-1,Epipedobates anthonyi,Große Schlucht,male,,,1998,died,',
        'Q-2,Epipedobates anthonyi,Große Schlucht,female,,,1998,gone,',
        'Q-3,Epipedobates anthonyi,Große Schlucht,unsexed,Q-1,Q-2,2021-04-12,alive,"klein; flink"',
        '',
      ].join('\r\n'),
    );
    const sent = await mappedSheet(...(await asMapped(spanish))).text();
    expect(sent.split('\r\n').slice(1, 4)).toEqual([
      'Q-1,Epipedobates anthonyi,Peñas Altas,male,,,1998,PE,died,',
      'Q-2,Epipedobates anthonyi,Peñas Altas,female,,,1998,,alive,',
      'Q-3,Epipedobates anthonyi,Peñas Altas,female,Q-1,Q-2,2021-04-03,,alive,niña',
    ]);
  });

  it('are read in whatever letters and with whatever delimiter they were saved', async () => {
    for (const [bytes, encoding] of [
      [bytesOf(german, (code) => [code]), 'Windows-1252'],
      [bytesOf(`\uFEFF${german}`, wide), 'UTF-16'],
      [bytesOf(german, wide), 'UTF-16'],
      [bytesOf(`\uFEFF${german}`, (code) => wide(code).reverse()), 'UTF-16'],
    ] as const) {
      const { cells, columns } = await choicesOf(bytes);
      expect([cells.encoding, cells.delimiter]).toEqual([encoding, ';']);
      expect(columns[2]?.samples).toEqual(['Große Schlucht']);
      expect(columns[6]?.heading).toBe('Geschlüpft');
    }
    expect((await choicesOf(german.replaceAll(';', '\t'))).cells.delimiter).toBe('\t');
  });

  it('are guessed from what stands in them where their names say nothing', async () => {
    const choices = await choicesOf('A,B,C,D,E,F\nx1,m,,,2001,Aa bbb\nx2,f,,,2002,Aa bbb\nx3,f,x1,x2,2003,Aa bbb\n');
    expect(targets(choices)).toEqual(['code', 'sex', 'sire', 'dam', 'hatched', 'species']);
    expect(choices.columns.map(({ reason }) => reason)).toEqual(Array(6).fill('contents'));
  });

  it('are asked for only where the sheet is not as the register writes it', async () => {
    expect((await choicesOf('code,species,hatched\nQ-1,Aa bbb,2021-04\n')).isPlain).toBe(true);
    expect((await choicesOf('code,species,hatched\nQ-1,Aa bbb,12.4.2021\n')).isPlain).toBe(false);
    expect((await choicesOf('code,species,tank\nQ-1,Aa bbb,7\n')).isPlain).toBe(false);
    expect((await choicesOf('Animals of 2024\n\ncode,species\nQ-1,Aa bbb\n')).isPlain).toBe(false);
  });

  it('of an own name are kept in the notes or left out, and never taken for one of the register', async () => {
    const choices = await choicesOf('code,species,Tank,label,Preis\nQ-1,Aa bbb,7,blue tub,12\n');
    expect(targets(choices)).toEqual(['code', 'species', 'own', 'label', 'own']);
    set(choices, 3, { target: 'own' });
    set(choices, 4, { target: 'out' });
    expect(await mappedSheet(choices.cells, choices.mapping()).text()).toBe(
      'code,species,Tank,sheet: label\r\nQ-1,Aa bbb,7,blue tub\r\n',
    );
  });

  it('keep the numbers of their rows, whatever stands above the headings or is left out', async () => {
    const choices = await choicesOf(
      'My frogs,,\n,,\ncode,sexo,species\nQ-1,hembra,Aa bbb\nQ-2,macho,Aa bbb\nQ-3,macho,Aa bbb\n',
    );
    const sent = await mappedSheet(choices.cells, choices.mapping([5])).text();
    expect(sent.split('\r\n')).toEqual([
      ...['', '', 'code,sex,species', 'Q-1,female,Aa bbb', '', 'Q-3,male,Aa bbb', ''],
    ]);
  });

  it('must name the codes, and the species once where no column says it', async () => {
    const choices = await choicesOf('Tier,Geschlecht\nQ-1,m\n');
    expect(choices.faults).toEqual(['Say which column holds the species, or write it once for all rows.']);
    choices.species = 'Aa bbb';
    expect(choices.faults).toEqual([]);
    expect(await mappedSheet(choices.cells, choices.mapping()).text()).toBe('code,sex,species\r\nQ-1,male,Aa bbb\r\n');
    set(choices, 0, { target: 'sex' });
    expect(choices.faults).toEqual([
      'Say which column holds the codes of the animals.',
      '“Tier” is not the only column that is sex.',
      '“Geschlecht” is not the only column that is sex.',
    ]);
  });

  it('are remembered for the keeper who chose them, and for nobody else', async () => {
    const choices = await choicesOf('Q,W,species\nQ-1,03/04/2021,Aa bbb\n');
    set(choices, 0, { target: 'code' });
    set(choices, 1, { target: 'died' });
    set(choices, 1, { order: 'month-first' });
    choices.remember();
    const again = await choicesOf('W,species,Q\n05/06/2022,Aa bbb,Q-2\n');
    expect(again.columns.map(({ target, reason }) => [target, reason])).toEqual([
      ['died', 'kept'],
      ['species', 'kept'],
      ['code', 'kept'],
    ]);
    expect(again.columns[0]?.read('05/06/2022')).toBe('2022-05-06');
    expect(targets(await choicesOf('W,species,Q\n05/06/2022,Aa bbb,Q-2\n', 'another'))[0]).toBe('hatched');
  });
});

describe('dates of a sheet', () => {
  it('force one choice for a column that could be read in several ways', async () => {
    const choices = await choicesOf('code,species,hatched\nQ-1,Aa bbb,03/04/25\nQ-2,Aa bbb,05/06/24\n');
    expect(choices.columns[2]?.mustSayOrder).toBe(true);
    expect(choices.faults).toEqual(['Say in which order “hatched” writes its dates.']);
    set(choices, 2, { order: 'day-first' });
    expect(choices.faults).toEqual([]);
    expect((await mappedSheet(choices.cells, choices.mapping()).text()).split('\r\n').slice(1, 3)).toEqual([
      'Q-1,Aa bbb,2025-04-03',
      'Q-2,Aa bbb,2024-06-05',
    ]);
  });

  it('need no choice where one of them leaves only one order', () => {
    expect(dateOrdersOf(['03/04/2021', '23/04/2021'])).toEqual({ possible: ['day-first'], example: '23/04/2021' });
    expect(dateOrdersOf(['03/04/2021', '04/23/2021']).possible).toEqual(['month-first']);
    expect(dateOrdersOf(['13/04/2021', '04/23/2021']).possible).toEqual([]);
    expect(dateOrdersOf(['12.04.21', '1998', '']).possible).toEqual(['day-first']);
    expect(dateOrdersOf(['2021-04-12', '1994~', '12 April 2021']).example).toBe('');
  });

  it('are read as people write them, and left as they are where they say nothing', () => {
    const read = Object.fromEntries(
      [
        ...['12.4.2021', '2021/4/2', '12-Apr-2021', 'Mai 2019', '3 de abril de 2021', 'April 12, 2021', 'ca. 1994'],
        ...['04/2021', '44298', '2021-04-12 00:00:00', '199X', '1993/1996', 'summer', '03/04/2021', '31/02/2021'],
      ].map((text) => [text, readDate(text)]),
    );
    expect(read).toEqual({
      '12.4.2021': '2021-04-12',
      '2021/4/2': '2021-04-02',
      '12-Apr-2021': '2021-04-12',
      'Mai 2019': '2019-05',
      '3 de abril de 2021': '2021-04-03',
      'April 12, 2021': '2021-04-12',
      'ca. 1994': '1994~',
      '04/2021': '2021-04',
      '44298': '2021-04-12',
      '2021-04-12 00:00:00': '2021-04-12',
      '199X': '199X',
      '1993/1996': '1993/1996',
      summer: 'summer',
      '03/04/2021': '03/04/2021',
      '31/02/2021': '31/02/2021',
    });
  });
});

describe('refused rows', () => {
  it('can be taken away as they were written, with what is wrong behind each', async () => {
    const { cells } = await choicesOf(german);
    const file = refusedRows(cells, [
      { row: 4, column: 'sire', detail: 'No such animal.' },
      { row: 3, column: 'sex', detail: 'No sex.' },
      { row: 4, detail: 'Odd.' },
    ]);
    expect((await file.text()).replace(/^\uFEFF/, '').split('\r\n')).toEqual([
      'Tiernummer,Art,Zuchtlinie,Geschlecht (m/w),Vatertier,Muttertier,Geschlüpft,Verbleib,Bemerkungen,what is wrong',
      'Q-2,Epipedobates anthonyi,Große Schlucht,Weibchen,,,1998,verkauft,,sex: No sex.',
      'Q-3,Epipedobates anthonyi,Große Schlucht,unbekannt,Q-1,Q-2,12.04.2021,lebt,"klein; flink",sire: No such animal. Odd.',
      '',
    ]);
  });
});

async function asMapped(sheet: string): Promise<Parameters<typeof mappedSheet>> {
  const choices = await choicesOf(sheet);
  return [choices.cells, choices.mapping()];
}
