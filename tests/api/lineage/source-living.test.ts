import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SourceLivingView } from '../../../api/lineage/source-living/source-living.view.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';

let api: TestApi;
let keeper: TestKeeper;
let other: TestKeeper;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  [keeper, other] = [await api.addKeeper('Ulla'), await api.addKeeper('Vidar')];
  make = new Factory(keeper.http);
});
afterAll(() => api.close());

const living = async (id: string, by = keeper): Promise<Omit<SourceLivingView, 'asOf'>> => {
  const { founders, descendants, certain, animalsWorth } = bodyOf<SourceLivingView>(
    await by.http.get(`/api/v1/sources/${id}/living`).expect(200),
  );
  return { founders, descendants, certain, animalsWorth };
};

describe('what is alive of a source', () => {
  it('is its founders, all that descend from them, surely or perhaps, and what they hold of it together', async () => {
    const { id: speciesId } = await make.species();
    const source = await make.source({ kind: 'import' });
    const animal = (sex: string, fields: object = {}) => make.individual({ speciesId, sex, ...fields });
    expect(await living(source.id)).toEqual({ founders: 0, descendants: 0, certain: 0, animalsWorth: 0 });

    const sire = await animal('male', { sourceId: source.id });
    await animal('female', { sourceId: source.id, status: 'died' });
    const [otherSire, dam] = [await animal('male'), await animal('female')];
    const sure = await make.clutch({ sires: [{ individualId: sire.id }], dams: [{ individualId: dam.id }] });
    await make.individual({ speciesId, clutchId: sure.id });
    await make.individual({ speciesId, clutchId: sure.id, status: 'died' });
    const perhaps = await make.clutch({
      sires: [{ individualId: sire.id }, { individualId: otherSire.id }],
      dams: [{ individualId: dam.id }],
    });
    const young = await make.individual({ speciesId, clutchId: perhaps.id, sex: 'female' });
    // 1 of the founder, a half of the sure young, a quarter of the one whose sire may have been the other
    expect(await living(source.id)).toEqual({ founders: 1, descendants: 2, certain: 1, animalsWorth: 1.75 });

    // back to the founder: surely of it, whoever the sire of the dam was
    const back = await make.clutch({ sires: [{ individualId: sire.id }], dams: [{ individualId: young.id }] });
    const last = await make.individual({ speciesId, clutchId: back.id });
    expect(await living(source.id)).toEqual({ founders: 1, descendants: 3, certain: 2, animalsWorth: 1.75 + 0.625 });

    // what another keeper may not see does not count for them
    await keeper.http
      .patch(`/api/v1/individuals/${last.id}`)
      .set('If-Match', '*')
      .send({ visibility: 'private' })
      .expect(200);
    expect((await living(source.id, other)).descendants).toBe(2);
    expect((await living(source.id, other)).animalsWorth).toBe(1.75);
    expect((await living(source.id)).descendants).toBe(3);
  });

  it('is told of a source that may be seen only', async () => {
    const hidden = await make.source({ kind: 'purchase', visibility: 'private' });
    await other.http.get(`/api/v1/sources/${hidden.id}/living`).expect(404);
    await keeper.http.get(`/api/v1/sources/${hidden.id}/living`).expect(200);
    await keeper.http.get('/api/v1/sources/nowhere/living').expect(404);
  });
});
