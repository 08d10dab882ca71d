import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startApi, type TestApi } from '../../support/api.ts';
import { counts, importSheet, places } from './sheet-requests.ts';
import { containing, matching, some } from '../../unit/exchange/matchers.ts';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

/** A sheet as a spreadsheet program of a German keeper saves it. */
const club =
  '\uFEFFcode;species;line;sex;sire;dam;parents;clutch;source;Source Kind;source_date;source base kinship;country of export;label;laid;hatched;out of water;died;status;tank;notes\r\n' +
  'EA-01;Epipedobates anthonyi;Quebrada Honda;m;;;;;S-1;import;1994~;0,125;ec;Quebrada Honda;;;;;gone;7;"first; of all"\r\n' +
  'EA-02;epipedobates anthonyi;quebrada honda;f;;;;;S-1;;;;;;;;;2003;;;\r\n' +
  'EA-03;Epipedobates anthonyi;;u;;;;;;;;;;;;;;;;;\r\n' +
  '\r\n' +
  'EA-09;Epipedobates anthonyi;;;EA-07:0,75/?:0,25;EA-02;;;;;;;;;2023-01-02;;;;;;\r\n' +
  'EA-10;Epipedobates anthonyi;;;;;EA-03/EA-07/EA-08;C-10;;;;;;;;;;;;;\r\n' +
  'EA-07;Epipedobates anthonyi;;m;ea-01;EA-02;;;;;;;;;2021-04-12;2021-04-26;2021-07~;;;;"two\nlines"\r\n' +
  'EA-08;Epipedobates anthonyi;;;EA-01;EA-02;;;;;;;;;2021-04-12;;;;;;\r\n';

describe('a sheet that is taken', () => {
  test('a dry run tells what would be made and stores nothing', async () => {
    const before = await counts(api);
    const answer = await importSheet(api, club, '?dryRun=true');
    expect(answer.status).toBe(200);
    expect(answer.body).toMatchObject({
      id: null,
      rows: 7,
      created: { individuals: 7, clutches: 3, sources: 1, lines: 1, species: 1 },
    });
    expect(await counts(api)).toEqual(before);
  });

  test('all of it stands in the register, numbered in the order of the file', async () => {
    const answer = await importSheet(api, club);
    expect(answer.status).toBe(201);
    expect(answer.body).toMatchObject({
      rows: 7,
      created: { individuals: 7, clutches: 3, sources: 1, lines: 1, species: 1 },
    });
    expect((answer.body as { warnings: unknown[] }).warnings).toContainEqual({
      row: 1,
      column: 'tank',
      detail: containing('kept as notes'),
    });
    expect(await counts(api)).toEqual({
      species: 1,
      line: 1,
      source: 1,
      clutch: 3,
      individual: 7,
      clutch_candidate: 5,
      clutch_pair: 3,
      register_import: 1,
    });
    const animals = await api.dataSource.query<unknown[]>(
      `select i.code, s.scientific_name as species, l.name as line, i.sex, i.status, i.tier, i.hatched, i.out_of_water_latest::text as wet,
         i.died, i.notes, o.code as source from individual i join species s on s.id = i.species_id
         left join line l on l.id = i.line_id left join source o on o.id = i.source_id order by i.number`,
    );
    const plain = {
      species: 'Epipedobates anthonyi',
      line: null,
      hatched: null,
      wet: null,
      died: null,
      notes: null,
      source: null,
      status: 'alive',
    };
    expect(animals).toEqual([
      {
        ...plain,
        code: 'EA-01',
        line: 'Quebrada Honda',
        sex: 'male',
        status: 'gone',
        tier: 0,
        source: 'S-1',
        notes: 'first; of all\ntank: 7',
      },
      {
        ...plain,
        code: 'EA-02',
        line: 'Quebrada Honda',
        sex: 'female',
        status: 'died',
        tier: 0,
        source: 'S-1',
        died: '2003',
      },
      { ...plain, code: 'EA-03', sex: 'unsexed', tier: 0 },
      { ...plain, code: 'EA-09', sex: 'unsexed', tier: 4 },
      { ...plain, code: 'EA-10', sex: 'unsexed', tier: 4 },
      { ...plain, code: 'EA-07', sex: 'male', tier: 2, hatched: '2021-04-26', wet: '2021-07-31', notes: 'two\nlines' },
      { ...plain, code: 'EA-08', sex: 'unsexed', tier: 2 },
    ]);
  });

  test('its source, clutches and candidate parents too', async () => {
    expect(
      await api.dataSource.query<unknown[]>(
        'select kind, date, base_kinship, country_of_export, label_as_received from source',
      ),
    ).toEqual([
      {
        kind: 'import',
        date: '1994~',
        base_kinship: 0.125,
        country_of_export: 'EC',
        label_as_received: 'Quebrada Honda',
      },
    ]);
    const candidates = await api.dataSource.query<unknown[]>(
      `select (select string_agg(y.code, ' ' order by y.code) from individual y where y.clutch_id = c.id) as young, k.role, i.code, k.probability
       from clutch_candidate k join clutch c on c.id = k.clutch_id left join individual i on i.id = k.individual_id order by young, role desc, code`,
    );
    expect(candidates).toEqual([
      { young: 'EA-07 EA-08', role: 'sire', code: 'EA-01', probability: 1 },
      { young: 'EA-07 EA-08', role: 'dam', code: 'EA-02', probability: 1 },
      { young: 'EA-09', role: 'sire', code: 'EA-07', probability: 0.75 },
      { young: 'EA-09', role: 'sire', code: null, probability: 0.25 },
      { young: 'EA-09', role: 'dam', code: 'EA-02', probability: 1 },
    ]);
    const pairs = await api.dataSource.query<{ codes: string[]; probability: number }[]>(
      `select array(select code from individual where id in (a_id, b_id) order by code) as codes, probability from clutch_pair order by codes`,
    );
    expect(pairs).toEqual(
      [
        ['EA-03', 'EA-07'],
        ['EA-03', 'EA-08'],
        ['EA-07', 'EA-08'],
      ].map((codes) => ({ codes, probability: 1 / 3 })),
    );
  });

  test('the same sheet again is refused, naming the animals that are there', async () => {
    const before = await counts(api);
    const answer = await importSheet(api, club);
    expect(answer.status).toBe(422);
    expect(answer.headers['content-type']).toContain('application/problem+json');
    expect(answer.body).toMatchObject({ type: '/api/problems/invalid', problemCount: 8 });
    // the clutch with a code is there already too; rows 2, 3, 4, 6, 7, 8, 9
    expect(places(answer)).toEqual(['2 code', '3 code', '4 code', '6 code', '7 code', '7 parents', '8 code', '9 code']);
    expect(await counts(api)).toEqual(before);
  });

  test('a further sheet stands on what is there: parents by code or number, a source, a clutch, a line', async () => {
    const [numbered] = await api.dataSource.query<{ number: string }[]>(
      `select number from individual where code = 'EA-09'`,
    );
    const list = await api.http.get('/api/v1/individuals?code=EA-09');
    const number = (list.body as { items: { number: string }[] }).items[0]?.number ?? '';
    expect(number).toMatch(new RegExp(`^${numbered?.number}-[0-9X]$`));
    const answer = await importSheet(
      api,
      `code,line,sire,dam,clutch,source\nN-1,QUEBRADA HONDA,ea-07,${number},,\nN-2,,,,C-10,\nN-3,,,,,s-1\n`,
    );
    expect(answer.body).toMatchObject({
      rows: 3,
      created: { individuals: 3, clutches: 1, sources: 0, lines: 0, species: 0 },
    });
    const rows = await api.dataSource.query<unknown[]>(
      `select i.code, i.tier, c.code as clutch, o.code as source from individual i left join clutch c on c.id = i.clutch_id
       left join source o on o.id = i.source_id where i.code like 'N-%' order by i.code`,
    );
    expect(rows).toEqual([
      { code: 'N-1', tier: 6, clutch: null, source: null },
      { code: 'N-2', tier: 4, clutch: 'C-10', source: null },
      { code: 'N-3', tier: 0, clutch: null, source: 'S-1' },
    ]);
  });

  test('a form with a file is read as well', async () => {
    const answer = await api.http
      .post('/api/v1/imports')
      .attach('file', Buffer.from('code,species\nM-1,Ranitomeya imitator\n'), {
        filename: 'frogs.csv',
        contentType: 'application/vnd.ms-excel',
      });
    expect([answer.status, answer.body]).toEqual([201, expect.objectContaining({ rows: 1, warningCount: 0 })]);
  });

  test('imports of the past are listed, newest first, page by page', async () => {
    const all = await api.http.get('/api/v1/imports?total=true');
    expect(all.body).toMatchObject({
      next: null,
      total: 3,
      items: [{ rows: 1 }, { rows: 3 }, { rows: 7, created: { individuals: 7 }, keeper: some(String) }],
    });
    const first = await api.http.get('/api/v1/imports?limit=2');
    const page = first.body as { items: unknown[]; next: string };
    expect(page.items).toHaveLength(2);
    const rest = await api.http.get(`/api/v1/imports?limit=2&after=${page.next}`);
    expect(rest.body).toMatchObject({ items: [{ rows: 7 }], next: null });
    expect((await api.http.get('/api/v1/imports?after=nonsense')).status).toBe(422);
  });
});

describe('a sheet that is refused', () => {
  test('every problem comes in one answer with row and column', async () => {
    const before = await counts(api);
    const answer = await importSheet(
      api,
      'code,species,sex,sire,dam,hatched\nP-1,Ranitomeya imitator,m,,,\nP-2,Ranitomeya imitator,x,P-1,P-1,\nP-1,,,nobody,,30.2.2021\nP-4,,,P-5,,\nP-5,,,P-4:0.9/?:0.3,,2019\n',
    );
    expect(answer.status).toBe(422);
    expect(places(answer).sort()).toEqual(
      ['3 dam', '3 dam', '3 sex', '4 code', '4 hatched', '4 sire', '6 sire'].sort(),
    );
    expect(answer.body).toMatchObject({ detail: 'The sheet has 7 problems; nothing was stored.', problemCount: 7 });
    expect(await counts(api)).toEqual(before);
  });

  test('loops are refused with their members', async () => {
    const answer = await importSheet(api, 'code,species,sire\nL-1,Abc def,L-3\nL-2,Abc def,L-1\nL-3,Abc def,L-2\n');
    expect(answer.body).toMatchObject({
      errors: [
        {
          row: 2,
          column: 'sire',
          detail: matching(/L-1 \(row 2\) → L-2 \(row 3\) → L-3 \(row 4\) → L-1/),
        },
      ],
    });
  });

  test('a hopeless sheet is told its first thousand problems and their number', async () => {
    const answer = await importSheet(
      api,
      `code,sex\n${Array.from({ length: 1200 }, (_, place) => `H-${place},?x\n`).join('')}`,
    );
    expect(answer.body).toMatchObject({
      status: 422,
      problemCount: 1200,
      detail: containing('The first 1000 are listed'),
    });
    expect(places(answer)).toHaveLength(1000);
  });

  test.each([
    ['nothing', ''],
    ['a header only', 'code,sire\n'],
    ['no header', '1,2,3\n4,5,6\n'],
    ['UTF-16', Buffer.from('\uFEFFcode,sex\nA,m\n', 'utf16le')],
    ['Latin-1', Buffer.from('code,notes\nA,gr\u00fcn\n', 'latin1')],
    ['NUL', 'code\nA\0B\n'],
    ['a workbook', Buffer.from('PK\x03\x04\x14\x00\x08\x08', 'latin1')],
    ['an open quotation mark', 'code,notes\nA,"x\nB,y\n'],
    ['ragged rows', 'code,sex\nA\nB,m,x\n'],
    ['JSON', '{"code": "A"}'],
    ['noise', Buffer.from(Array.from({ length: 3000 }, (_, place) => (place * 7919 + 13) % 256))],
    ['a very long line', `code\n${'x'.repeat(1_000_000)}\n`],
    ['only delimiters', ',,,,\n;;;;\n'],
    ['a lone surrogate', Buffer.from([...Buffer.from('code\nA'), 0xed, 0xa0, 0x80, 10])],
    ['a huge weight', 'code,sire\nA,\nB,A:1e308/?:1e308\n'],
    ['a date beyond the calendar', 'code,hatched\nA,999999-01-01\n'],
    ['__proto__', '__proto__,constructor\nA,B\n'],
  ])('%s is told 422, never 500', async (_, sheet) => {
    const before = await counts(api);
    const answer = await importSheet(api, sheet);
    expect(answer.status).toBe(422);
    expect(places(answer).length).toBeGreaterThan(0);
    expect(await counts(api)).toEqual(before);
  });

  test('codes and words that are strange but sound are taken', async () => {
    const answer = await importSheet(
      api,
      'code,species,notes\n__proto__,Abc def,\\N\nconstructor,Abc def,\\.\n"a\\b",Abc def,"tab\there"\n蛙,Abc def,😀\n',
    );
    expect(answer.status).toBe(201);
    const rows = await api.dataSource.query<{ code: string; notes: string }[]>(
      `select code, notes from individual order by number desc limit 4`,
    );
    expect(rows.reverse()).toEqual([
      { code: '__proto__', notes: '\\N' },
      { code: 'constructor', notes: '\\.' },
      { code: 'a\\b', notes: 'tab\there' },
      { code: '蛙', notes: '😀' },
    ]);
  });

  test('a withdrawn species or line is not used again in silence', async () => {
    await api.dataSource.query(
      `update species set withdrawn_at = now(), withdrawn_reason = 'test' where scientific_name = 'Abc def'`,
    );
    const answer = await importSheet(api, 'code,species\nW-1,abc def\n');
    expect(answer.body).toMatchObject({
      status: 422,
      errors: [{ row: 2, column: 'species', detail: containing('was withdrawn') }],
    });
  });
});
