import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ForeignSheetView } from '../../../api/exchange/foreign/foreign-sheet.view.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import type { SheetView } from '../../../api/selling/sheets/sheets.view.ts';
import { fileOf } from '../selling/sheet-world.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';

let here: TestApi;
let there: TestApi;
let make: Factory;

beforeAll(async () => {
  [here, there] = await Promise.all([startApi(), startApi()]);
  make = new Factory(there.http);
});
afterAll(() => Promise.all([here.close(), there.close()]));

async function sheetOf(api: TestApi, ...animals: string[]): Promise<{ file: string }> {
  const made = await api.http.post('/api/v1/provenance-sheets').send({ animals }).expect(201);
  return { file: (await fileOf(api.http, (made.body as SheetView).id)).toString('utf8') };
}

const lineageOf = async (api: TestApi, id: string): Promise<LineageView> =>
  (await api.http.get(`/api/v1/individuals/${id}/lineage`).expect(200)).body as LineageView;

describe('an animal that goes from one register to another', () => {
  let froglet: string;
  let view: ForeignSheetView;

  it('takes its inbreeding, depth and sources along, to the last digit that a sheet tells', async () => {
    const speciesId = (await make.species({ scientificName: 'Inventus iter' })).id;
    const line = await make.line({ speciesId, name: 'Río Inventado' });
    const source = await make.source({ kind: 'import', date: '1994~', countryOfExport: 'EC', baseKinship: 0.0625 });
    const founder = (sex: string) =>
      make.individual({ speciesId, lineId: line.id, sourceId: source.id, sex, hatched: '1996' });
    const [sire, other, dam] = [await founder('male'), await founder('male'), await founder('female')];
    const first = await make.clutch({
      laid: '1999-02-10',
      sires: [
        { individualId: sire.id, weight: 0.7 },
        { individualId: other.id, weight: 0.3 },
      ],
      dams: [{ individualId: dam.id }],
    });
    const young = (sex: string, clutchId: string) =>
      make.individual({ speciesId, lineId: line.id, sex, clutchId, hatched: '1999-03-01' });
    const [brother, sister] = [await young('male', first.id), await young('female', first.id)];
    const second = await make.clutchOf(brother.id, sister.id, { laid: '2002-02-10' });
    froglet = (await make.individual({ speciesId, lineId: line.id, clutchId: second.id, hatched: '2002-03-01' })).id;

    const { file } = await sheetOf(there, froglet);
    const keys = await there.stranger.get('/.well-known/jwks.json').expect(200);
    await here.http.post('/api/v1/other-registers').send({ name: 'The other club', keys: keys.text }).expect(201);
    const taken = await here.http.post('/api/v1/foreign-sheets').send({ file }).expect(201);
    view = taken.body as ForeignSheetView;
    expect(view.created).toEqual({ individuals: 6, clutches: 2, sources: 1, lines: 1, species: 1 });
    const came = view.animals.find(({ isOnSheet }) => isOnSheet)?.here?.id ?? '';
    const [was, is] = [await lineageOf(there, froglet), await lineageOf(here, came)];
    for (const bound of ['expected', 'least', 'greatest'] as const)
      expect(is.inbreeding[bound]).toBeCloseTo(was.inbreeding[bound], 12);
    expect([is.depth, is.fullDepth, is.generationEquivalents]).toEqual([
      was.depth,
      was.fullDepth,
      was.generationEquivalents,
    ]);
    expect(is.shares.map(({ share }) => share).sort()).toEqual(was.shares.map(({ share }) => share).sort());
    expect(is.inbreeding.expected).toBeGreaterThan(0.25);
  });

  it('is known again when its sibling comes', async () => {
    const clutch = (await there.http.get(`/api/v1/individuals/${froglet}`).expect(200)).body as {
      clutch: { id: string };
      speciesId: string;
      lineId: string;
    };
    const sibling = await make.individual({
      speciesId: clutch.speciesId,
      lineId: clutch.lineId,
      clutchId: clutch.clutch.id,
      hatched: '2002-03-01',
    });
    const { file } = await sheetOf(there, sibling.id);
    const taken = await here.http.post('/api/v1/foreign-sheets').send({ file }).expect(201);
    expect((taken.body as ForeignSheetView).created).toEqual({
      individuals: 1,
      clutches: 0,
      sources: 0,
      lines: 0,
      species: 0,
    });
  });

  it('comes back on a sheet of its new register, and its first keeper says which animal it is', async () => {
    const came = view.animals.find(({ isOnSheet }) => isOnSheet)?.here?.id ?? '';
    const { file } = await sheetOf(here, came);
    const refused = await there.http.post('/api/v1/foreign-sheets').send({ file }).expect(422);
    expect(JSON.stringify(refused.body)).toContain('A registrar can add the register');
    const keys = await here.stranger.get('/.well-known/jwks.json').expect(200);
    await there.http.post('/api/v1/other-registers').send({ name: 'Where it went', keys: keys.text }).expect(201);
    const document = (JSON.parse(file) as { sheet: { animals: { ref: string }[] } }).sheet;
    const own = await there.http.post('/api/v1/foreign-sheets?dryRun=true').send({ file }).expect(200);
    expect((own.body as ForeignSheetView).created.individuals).toBe(6);
    const first = await there.http
      .post('/api/v1/foreign-sheets?dryRun=true')
      .send({ file, known: [{ ref: document.animals[0]?.ref ?? '', individual: froglet }] })
      .expect(200);
    expect((first.body as ForeignSheetView).created.individuals).toBe(5);
  });
});
