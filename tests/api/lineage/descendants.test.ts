import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DescendantsView, DescendantView } from '../../../api/lineage/descendants/descendants.view.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import { bodyOf, type ProblemBody } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { writeSketch, type RegisterSketch, type SketchIds } from '../../support/register-sketch.ts';

const certain = (individual: number) => [{ individual, probability: 1 }];

/** A wild pair, a stray, and two generations; a granddaughter of two descendants, a clutch with odds, young of another line. */
const sketch: RegisterSketch = {
  lines: [{ name: 'Quebrada Honda' }, { name: 'Rio Seco' }],
  sources: [
    { label: 'Quebrada Honda', kind: 'wild-collection', date: '1998-03-02' },
    { kind: 'purchase', date: '2000-01-01' },
  ],
  clutches: [
    { sires: certain(0), dams: certain(1), laid: '2001-05-01' },
    {
      sires: [
        { individual: 0, probability: 0.75 },
        { individual: 2, probability: 0.25 },
      ],
      dams: certain(1),
      laid: '2003-06-15',
    },
    { sires: certain(3), dams: certain(5), laid: '2007-07-01' },
    { sires: certain(7), dams: certain(2) },
  ],
  individuals: [
    { code: 'sire', source: 0, sex: 'male', line: 0, status: 'died' },
    { code: 'dam', source: 0, sex: 'female', line: 0 },
    { code: 'stray', source: 1 },
    { code: 'son', clutch: 0, sex: 'male', line: 0 },
    { code: 'brother', clutch: 0, line: 1 },
    { code: 'daughter', clutch: 1, sex: 'female', line: 0 },
    { code: 'sister', clutch: 1, line: 0 },
    { code: 'grandson', clutch: 2, sex: 'male', line: 0 },
    { code: 'last', clutch: 3, line: 1 },
  ],
};
const codes = sketch.individuals.map(({ code }) => code ?? '');

describe('what descends from an animal', () => {
  let api: TestApi;
  let ids: SketchIds;
  let make: Factory;
  const idOf = (code: string): string => ids.individuals[codes.indexOf(code)] ?? '';
  const read = async (code: string, query = ''): Promise<DescendantsView> =>
    bodyOf<DescendantsView>(await api.http.get(`/api/v1/individuals/${idOf(code)}/descendants${query}`).expect(200));

  beforeAll(async () => {
    api = await startApi();
    make = new Factory(api.http);
    ids = await writeSketch(api.dataSource, sketch);
  });

  afterAll(() => api.close());

  it('is told generation by generation, a clutch of two of them under each', async () => {
    const told = async (generations: number): Promise<string[]> =>
      (await read('sire', `?generations=${generations}`)).families.map(
        ({ parent, animals }) =>
          `${codes[ids.individuals.indexOf(parent)]}: ${animals.map(({ code }) => code).join(', ')}`,
      );
    const own = ['sire: daughter, sister', 'sire: son, brother'];
    expect(await told(1)).toEqual(own);
    expect(await told(2)).toEqual([...own, 'daughter: grandson', 'son: grandson']);
    expect(await told(3)).toEqual([...own, 'daughter: grandson', 'son: grandson', 'grandson: last']);
    const { root, truncated } = await read('sire');
    expect(root).toMatchObject({ code: 'sire', status: 'died', hatched: null, earliest: null, latest: null });
    expect(truncated).toBe(false);
  });

  it('has the same clutches as the page of each parent', async () => {
    const { families } = await read('sire', '?generations=3');
    for (const parent of new Set(families.map((family) => family.parent))) {
      const { young } = bodyOf<IndividualView>(await api.http.get(`/api/v1/individuals/${parent}`).expect(200));
      expect(families.filter((family) => family.parent === parent)).toMatchObject(young);
    }
  });

  it('bears the bounds of vague dates, and of none', async () => {
    const [sire] = await make.individuals({ sex: 'male', hatched: '1999' });
    await make.clutch({ sires: [{ individualId: sire?.id }], laid: '2003-06~' });
    await make.clutch({ sires: [{ individualId: sire?.id }] });
    const { root, families } = bodyOf<DescendantsView>(
      await api.http.get(`/api/v1/individuals/${sire?.number}/descendants`).expect(200),
    );
    expect(root).toMatchObject({ hatched: '1999', earliest: '1999-01-01', latest: '1999-12-31' });
    const [dated, undated] = families;
    expect(dated?.clutch).toMatchObject({ laid: '2003-06~' });
    expect((dated?.clutch.earliest ?? '~') <= '2003-06-01').toBe(true);
    expect((dated?.clutch.latest ?? '') >= '2003-06-30').toBe(true);
    expect(undated?.clutch).toMatchObject({ laid: null, earliest: null, latest: null });
  });

  it('has the shares by standing that the lineage of each animal has, by the odds and under its own line', async () => {
    const { root, families } = await read('sire', '?generations=3');
    const all: Pick<DescendantView, 'id' | 'standings'>[] = [root, ...families.flatMap(({ animals }) => animals)];
    for (const { id, standings } of all) {
      const { label } = bodyOf<LineageView>(await api.http.get(`/api/v1/individuals/${id}/lineage`).expect(200));
      expect(standings.map(({ standing }) => standing)).toEqual(label.shares.map(({ standing }) => standing));
      standings.forEach(({ share }, at) => expect(share).toBeCloseTo(label.shares[at]?.share ?? NaN, 12));
    }
    const sharesOf = (code: string) => all.find(({ id }) => id === idOf(code))?.standings;
    expect(sharesOf('daughter')).toEqual([
      { standing: 'stated', share: 0.875 },
      { standing: 'unknown', share: 0.125 },
    ]);
  });

  it('refuses more generations than three, and knows no animal that is not there', async () => {
    await api.http.get(`/api/v1/individuals/${idOf('sire')}/descendants?generations=4`).expect(422);
    const answer = await api.http.get('/api/v1/individuals/nobody/descendants').expect(404);
    expect(bodyOf<ProblemBody>(answer).status).toBe(404);
  });

  it('tells the clutches of forty animals at most, and says so', async () => {
    const [sire, dam] = await make.individuals({ sex: 'male' }, { sex: 'female' });
    const { speciesId } = sire ?? { speciesId: '' };
    const clutch = await make.clutchOf(sire?.id ?? '', dam?.id ?? '');
    const young = await make.offspring(clutch.id, { count: 41, speciesId });
    for (const { id } of young) await make.clutchOf(id, dam?.id ?? '');
    const answer = bodyOf<DescendantsView>(
      await api.http.get(`/api/v1/individuals/${sire?.id}/descendants?generations=2`).expect(200),
    );
    expect(new Set(answer.families.map(({ parent }) => parent)).size).toBe(answer.parentLimit);
    expect(answer).toMatchObject({ truncated: true, parentLimit: 40 });
  }, 60_000);
});
