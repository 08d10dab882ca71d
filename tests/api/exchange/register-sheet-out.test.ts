import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, type TestApi } from '../../support/api.ts';
import { importSheet } from './sheet-requests.ts';

/** Two sources, uncertain sires, a group that cannot be sexed, clutch-mates, an unknown dam, vague dates, a label, and notes of two lines. */
const sheet = `code,species,line,sex,sire,dam,parents,clutch,source,source kind,source date,source base kinship,country of export,label,label standing note,laid,hatched,out of water,died,status,notes
EA-01,Epipedobates anthonyi,Peñas Altas,m,,,,,S-1,import,1994~,0.125,EC,Peñas Altas,on the tub,,,,2006,died,
EA-02,Epipedobates anthonyi,Peñas Altas,m,,,,,S-1,,,,,,,,,,,gone,
EA-03,Epipedobates anthonyi,Peñas Altas,f,,,,,S-2,purchase,199X,,,,,,,,,unknown,"left eye clouded;
bred late"
EA-10,Epipedobates anthonyi,Peñas Altas,u,EA-01:0.7/EA-02:0.3,EA-03,,K-1,,,,,,,,2001-03~,2001-03-20,2001-06,,alive,
EA-11,Epipedobates anthonyi,Peñas Altas,u,EA-01:0.7/EA-02:0.3,EA-03,,K-1,,,,,,,,2001-03~,2001,,,alive,
EA-12,Epipedobates anthonyi,Peñas Altas,u,EA-02,?,,,,,,,,,,,2002,,,alive,
EA-20,Epipedobates anthonyi,Peñas Altas,f,,,EA-10/EA-11/EA-12,K-2,,,,,,,,2005-05-01,2005-05-15,,,alive,
EA-30,Epipedobates anthonyi,,f,,,,,,,,,,,,,2006,,,alive,
`;

interface Row {
  code: string;
  sire: string;
  dam: string;
  parents: string;
  source: string;
  notes: string;
}

describe('a register sheet that goes out', () => {
  let from: TestApi;
  let to: TestApi;

  beforeAll(async () => {
    from = await startApi();
    to = await startApi();
    expect((await importSheet(from, sheet)).status).toBe(201);
  });

  afterAll(async () => {
    await from.close();
    await to.close();
  });

  const sheetOf = async (api: TestApi, query = ''): Promise<string> =>
    (await api.http.get(`/api/v1/exports/register-sheet${query}`).expect(200)).text;
  const rowsOf = (text: string): Row[] => {
    const [head = '', ...rows] = text.trim().split('\r\n');
    return rows.map(
      (row) => Object.fromEntries(row.split(',').map((cell, at) => [head.split(',')[at], cell])) as unknown as Row,
    );
  };
  const inbreedingOf = async (api: TestApi): Promise<Record<string, number>> => {
    const { items } = (await api.http.get('/api/v1/individuals?limit=200').expect(200)).body as {
      items: { id: string; code: string }[];
    };
    const found: Record<string, number> = {};
    for (const { id, code } of items) {
      const lineage = (await api.http.get(`/api/v1/individuals/${id}/lineage`).expect(200)).body as {
        inbreeding: { expected: number };
      };
      found[code] = lineage.inbreeding.expected;
    }
    return found;
  };

  it('is taken by another register, which then has the same animals, parents, sources and figures', async () => {
    const out = await sheetOf(from);
    const answer = await importSheet(to, out);
    expect([answer.status, answer.body]).toEqual([201, expect.objectContaining({ rows: 8, warnings: [] })]);
    expect(await sheetOf(to)).toBe(out);
    const figures = await inbreedingOf(from);
    expect(figures['EA-20']).toBeGreaterThan(0.05);
    expect(await inbreedingOf(to)).toEqual(figures);
  });

  it('holds what the filters of the register show, and their ancestors where that is asked', async () => {
    expect(rowsOf(await sheetOf(from, '?hatchedFrom=2002&status=alive')).map(({ code }) => code)).toEqual([
      ...['EA-12', 'EA-20', 'EA-30'],
    ]);
    const [alone] = rowsOf(await sheetOf(from, '?code=EA-20'));
    // parents outside the sheet go by their registry numbers
    expect(alone?.parents).toMatch(/^\d+-[\dX]\/\d+-[\dX]\/\d+-[\dX]$/);
    const whole = rowsOf(await sheetOf(from, '?code=EA-20&ancestors=true'));
    expect(whole.map(({ code }) => code)).toEqual([...['EA-01', 'EA-02', 'EA-03', 'EA-10', 'EA-11', 'EA-12', 'EA-20']]);
    const { items } = (await from.http.get('/api/v1/individuals?code=EA-30')).body as { items: { number: string }[] };
    expect(rowsOf(await sheetOf(from, `?animals=${items[0]?.number ?? ''}`)).map(({ code }) => code)).toEqual([
      'EA-30',
    ]);
  });

  it('says nothing of parents and sources that whoever asks may not see', async () => {
    const { items } = (await from.http.get('/api/v1/individuals?q=EA-0')).body as {
      items: { id: string; code: string }[];
    };
    const sire = items.find(({ code }) => code === 'EA-01')?.id ?? '';
    await from.http
      .patch(`/api/v1/individuals/${sire}`)
      .set('If-Match', '*')
      .send({ visibility: 'private' })
      .expect(200);
    const { items: sources } = (await from.http.get('/api/v1/sources')).body as {
      items: { id: string; code: string }[];
    };
    const second = sources.find(({ code }) => code === 'S-2')?.id ?? '';
    await from.http.patch(`/api/v1/sources/${second}`).set('If-Match', '*').send({ visibility: 'private' }).expect(200);
    const stranger = await from.addKeeper('Somebody else');
    const out = (await stranger.http.get('/api/v1/exports/register-sheet?code=EA-10&ancestors=true').expect(200)).text;
    expect(out).not.toContain('EA-01');
    expect(out).not.toContain('S-2');
    const rows = rowsOf(out);
    expect(rows.find(({ code }) => code === 'EA-10')).toMatchObject({ sire: '?:0.7/EA-02:0.3', dam: 'EA-03' });
  });

  it('gives the registry number to an animal whose code another keeper uses, too', async () => {
    const other = await from.addKeeper('A third one');
    const { speciesId } =
      ((await from.http.get('/api/v1/individuals')).body as { items: { speciesId: string }[] }).items[0] ?? {};
    const twin = (await other.http.post('/api/v1/individuals').send({ code: 'ea-30', speciesId }).expect(201)).body as {
      number: string;
    };
    const codes = rowsOf(await sheetOf(from)).map(({ code }) => code);
    expect(codes.filter((code) => code.toLowerCase() === 'ea-30')).toEqual(['EA-30']);
    expect(codes).toContain(twin.number);
  });

  it('refuses an animal that is not there', async () => {
    const answer = await from.http.get('/api/v1/exports/register-sheet?animals=1001-9,9999999-1').expect(422);
    expect(JSON.stringify(answer.body)).toContain('/animals');
  });
});
