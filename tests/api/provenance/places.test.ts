import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlacesView } from '../../../api/provenance/places/places.view.ts';
import type { LineView } from '../../../api/register/lines/line.view.ts';
import type { SourceView } from '../../../api/register/sources/source.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { setPublicReading } from '../people/route-world.ts';

const placed = {
  decimalLatitude: -3.41873,
  decimalLongitude: -79.96142,
  geodeticDatum: 'EPSG:4326',
  coordinateUncertaintyM: 30,
  countryCode: 'EC',
  stateProvince: 'El Oro',
  locality: 'Quebrada Sonora below the bridge',
  verbatimLocality: 'Q. Sonora, bridge',
};

let api: TestApi;
let keeper: TestKeeper;
let make: Factory;
let other: TestKeeper;
let line: LineView;
let open: SourceView;
let kept: SourceView;

const placesOf = async (who: TestKeeper['http'], query = ''): Promise<PlacesView> =>
  (await who.get(`/api/v1/places${query}`).expect(200)).body as PlacesView;

beforeAll(async () => {
  api = await startApi();
  keeper = await api.addKeeper('Kim');
  other = await api.addKeeper('Olu');
  make = new Factory(keeper.http);
  line = await make.line({ name: 'Quebrada Sonora' });
  const { id: lineId, speciesId } = line;
  open = await make.source({ visibility: 'public' });
  kept = await make.source({ visibility: 'private' });
  for (const visibility of ['public', 'club', 'private'])
    await make.individual({ speciesId, lineId, sourceId: open.id, visibility });
  await make.individual({ speciesId, sourceId: kept.id, visibility: 'private' });
  await make.claim({ sourceId: open.id, value: 'Quebrada Sonora', ...placed });
  await make.claim({ sourceId: kept.id, value: 'Rio Oculto', ...placed });
  await make.claim({ lineId, value: 'El Oro', countryCode: 'EC' });
  await make.claim({ sourceId: open.id, value: 'without a place' });
  await make.claim({ sourceId: open.id, value: 'Orange', aspect: 'trade-name', countryCode: 'EC' });
  await setPublicReading(api, true);
});

afterAll(() => api.close());

describe('the places of a map', () => {
  it('are those of claims with coordinates or a country, each with its standing and its founders', async () => {
    const { items, total, isGeneralised } = await placesOf(keeper.http);
    expect({ total, isGeneralised }).toEqual({ total: 3, isGeneralised: false });
    expect(items.map(({ value, founders, standing, about }) => [value, founders, standing, about])).toEqual([
      ['Quebrada Sonora', 3, 'stated', 'source'],
      ['Rio Oculto', 1, 'stated', 'source'],
      ['El Oro', 3, 'stated', 'line'],
    ]);
    expect(items[0]).toMatchObject({ aboutId: open.id, aboutTitle: 'Import, about 1994', place: placed });
  });

  it('leave out those of private sources, and count only the animals that one sees', async () => {
    const { items } = await placesOf(other.http);
    expect(items.map(({ value, founders }) => [value, founders])).toEqual([
      ['Quebrada Sonora', 2],
      ['El Oro', 2],
    ]);
  });

  it('are generalised for strangers, and say so', async () => {
    const { items, isGeneralised } = await placesOf(api.stranger);
    expect(isGeneralised).toBe(true);
    expect(items.map(({ value, founders }) => [value, founders])).toEqual([
      ['Quebrada Sonora', 1],
      ['El Oro', 1],
    ]);
    expect(items[0]?.place).toMatchObject({
      decimalLatitude: -3.45,
      decimalLongitude: -79.95,
      coordinateUncertaintyM: 7869,
      countryCode: 'EC',
      stateProvince: 'El Oro',
      locality: null,
      verbatimLocality: null,
      dataGeneralizations: expect.stringContaining('0.1 degree') as string,
      informationWithheld: expect.stringContaining('withheld') as string,
    });
  });

  it('are found by line and by species, through the animals of a source too', async () => {
    for (const query of [`?lineId=${line.id}`, `?speciesId=${line.speciesId}`])
      expect((await placesOf(other.http, query)).items.map(({ value }) => value)).toEqual([
        'Quebrada Sonora',
        'El Oro',
      ]);
    const nowhere = await make.line();
    expect(await placesOf(keeper.http, `?lineId=${nowhere.id}`)).toMatchObject({ items: [], total: 0 });
  });

  it('are no more than was asked for, while all are counted', async () => {
    const { items, total } = await placesOf(keeper.http, '?limit=1');
    expect([items.length, total]).toEqual([1, 3]);
    await keeper.http.get('/api/v1/places?limit=0').expect(422);
    await keeper.http.get('/api/v1/places?lineId=here').expect(422);
  });
});
