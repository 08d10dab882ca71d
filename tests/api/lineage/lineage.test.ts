import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import { anyText, bodyOf, having, textLike, textWith } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { writeSketch, type RegisterSketch, type SketchIds } from '../../support/register-sketch.ts';

/**
 * A small register worked by hand. A and B came in one import with base kinship 1/8, C from nobody knows where, W from the
 * wild, M and N in other shipments under other labels.
 */
const sketch = {
  lines: [
    { name: 'Quebrada Honda', kind: 'locality' },
    { name: 'Sunset', kind: 'trade-name' },
  ],
  sources: [
    { label: '  quebrada  HONDA ', kind: 'import', date: '1994-05-01', baseKinship: 1 / 8 },
    { label: 'Río Verde', kind: 'purchase' },
    { kind: 'wild-collection' },
  ],
  individuals: [
    { code: 'A', source: 0, line: 0, sex: 'male', status: 'died' },
    { code: 'B', source: 0, line: 0, sex: 'female', status: 'died' },
    { code: 'C', line: 0, sex: 'female', status: 'gone' },
    { code: 'W', source: 2, line: 1, sex: 'male' },
    { code: 'M', source: 1, line: 1, sex: 'female' },
    { code: 'X', clutch: 0, line: 0 },
    { code: 'Y', clutch: 0, line: 0 },
    { code: 'K', clutch: 1, line: 0 },
    { code: 'L', clutch: 2, line: 0 },
    { code: 'P', clutch: 3 },
    { code: 'Q', clutch: 4, line: 1 },
  ],
  clutches: [
    // A with B or C, equally likely
    {
      sires: [{ individual: 0, probability: 1 }],
      dams: [
        { individual: 1, probability: 0.5 },
        { individual: 2, probability: 0.5 },
      ],
      laid: '2019-04-12',
    },
    // any two of A, X and Y: (A,X) ½, (A,Y) ¼, (X,Y) ¼
    {
      pairs: [
        { a: 0, b: 5, probability: 0.5 },
        { a: 0, b: 6, probability: 0.25 },
        { a: 5, b: 6, probability: 0.25 },
      ],
      laid: '2021-04-12',
    },
    // K with M, of another line and another label
    { sires: [{ individual: 7, probability: 1 }], dams: [{ individual: 4, probability: 1 }] },
    // W with nobody knows whom
    { sires: [{ individual: 3, probability: 1 }], dams: [] },
    // W with M
    { sires: [{ individual: 3, probability: 1 }], dams: [{ individual: 4, probability: 1 }] },
  ],
} satisfies RegisterSketch;

const codes = sketch.individuals.map(({ code }) => code);

describe('the lineage of an animal', () => {
  let api: TestApi;
  let ids: SketchIds;
  const idOf = (code: string): string => ids.individuals[codes.indexOf(code)] ?? '';
  const lineageOf = async (code: string): Promise<LineageView> => {
    const answer = await api.http.get(`/api/v1/individuals/${idOf(code)}/lineage`).expect(200);
    return answer.body as LineageView;
  };

  beforeAll(async () => {
    api = await startApi();
    ids = await writeSketch(api.dataSource, sketch);
  });
  afterAll(() => api.close());

  it('gives a founder the base kinship of its source as inbreeding, and no depth', async () => {
    // founder-groups.json, convention gamete-pool: founder F = θ
    const lineage = await lineageOf('A');
    expect(lineage.inbreeding).toEqual({
      expected: 1 / 8,
      least: 1 / 8,
      greatest: 1 / 8,
      nothingKnown: false,
      bothParentsKnown: 0,
      pairs: [],
    });
    expect(lineage).toMatchObject({
      depth: 0,
      fullDepth: 0,
      generationEquivalents: 0,
      completeness: { generations: 5, index: 0 },
    });
  });

  it('averages inbreeding over candidate dams and tells its range and its pairs', async () => {
    // φ(A,B) = θ = 1/8, φ(A,C) = 0: F = ½·1/8 + ½·0
    const { inbreeding } = await lineageOf('X');
    expect(inbreeding).toMatchObject({ expected: 1 / 16, least: 0, greatest: 1 / 8, nothingKnown: false });
    expect(inbreeding.pairs.map(({ a, b, probability, kinship }) => [a?.code, b?.code, probability, kinship])).toEqual(
      expect.arrayContaining([
        ['A', 'B', 0.5, 1 / 8],
        ['A', 'C', 0.5, 0],
      ]),
    );
    expect(inbreeding.pairs[0]?.a).toMatchObject({
      id: idOf('A'),
      sex: 'male',
      number: textLike(/^\d+-[\dX]$/),
    });
  });

  it('sums joint pairs as they are recorded, clutch-mates by what they share', async () => {
    // φ(A,X) = ½(φ(A,A) + ½φ(A,B) + ½φ(A,C)) = ½(9/16 + 1/16) = 5/16
    // φ(X,Y) = ½·¼(9/16+9/16+2/8) + ½·¼(9/16+1/2) = 0.3046875, the value "within" of lineage maths §1
    const { inbreeding, depth, fullDepth } = await lineageOf('K');
    expect(inbreeding.expected).toBeCloseTo(0.75 * (5 / 16) + 0.25 * 0.3046875, 14);
    expect(inbreeding.least).toBeCloseTo(0.3046875, 14);
    expect(inbreeding.greatest).toBeCloseTo(5 / 16, 14);
    expect({ depth, fullDepth }).toEqual({ depth: 2, fullDepth: 1 });
  });

  it('tells how complete the pedigree is', async () => {
    // both parents known, nothing above them: known shares 1, 0, 0, 0, 0 on either side, mean 1/5; one generation equivalent
    const { completeness, generationEquivalents } = await lineageOf('X');
    expect(completeness?.index).toBeCloseTo(0.2, 14);
    expect(generationEquivalents).toBeCloseTo(1, 14);
  });

  it('gives the mean kinship with the living of its line', async () => {
    // living of Quebrada Honda: X, Y, K, L; of these φ(X,X) = 17/32, φ(X,Y) = 0.3046875,
    // φ(X,K) = ½·½(φ(X,A)+φ(X,X)) + ¼·½(φ(X,A)+φ(X,Y)) + ¼·½(φ(X,X)+φ(X,Y)), φ(X,L) = ½φ(X,K), M being unrelated
    const [xa, xx, xy] = [5 / 16, 17 / 32, 0.3046875];
    const xk = 0.25 * (xa + xx) + 0.125 * (xa + xy) + 0.125 * (xx + xy);
    const { meanKinship } = await lineageOf('X');
    expect(meanKinship).toBeCloseTo((xx + xy + xk + xk / 2) / 4, 14);
  });

  it('has no mean kinship without a line', async () => {
    expect((await lineageOf('P')).meanKinship).toBeNull();
  });

  it('counts generations from the wild by the least of the parents, and only where that is known', async () => {
    // standards.md, CITES Resolution Conf. 10.16: one wild parent makes F1
    expect((await lineageOf('W')).filialGeneration).toBe(0);
    expect((await lineageOf('Q')).filialGeneration).toBe(1);
    expect((await lineageOf('X')).filialGeneration).toBeNull();
  });

  it('resolves the genome into sources and founders of unknown origin', async () => {
    // half from A; half from B or C, equally likely
    const { shares, label } = await lineageOf('X');
    expect(shares).toEqual([
      {
        source: {
          id: ids.sources[0],
          title: 'Import, 1994-05-01',
          standing: 'stated',
          label: '  quebrada  HONDA ',
          isPrivate: false,
        },
        share: 0.75,
        standing: 'stated',
      },
      {
        founder: { id: idOf('C'), number: anyText, code: 'C', sex: 'female', isPrivate: false },
        share: 0.25,
        standing: 'unknown',
      },
    ]);
    expect(label.shares).toEqual([
      { standing: 'stated', share: 0.75 },
      { standing: 'unknown', share: 0.25 },
    ]);
    expect(label).toMatchObject({ name: 'Quebrada Honda', kind: 'locality', standing: 'unknown' });
  });

  it('gives the unknown parent of a clutch its half', async () => {
    const { shares, inbreeding } = await lineageOf('P');
    expect(shares).toEqual([
      { source: having({ id: ids.sources[2], standing: 'unknown' }), share: 0.5, standing: 'unknown' },
      {
        unknownParentOf: { id: ids.clutches[3], title: textWith('clutch'), isPrivate: false },
        share: 0.5,
        standing: 'unknown',
      },
    ]);
    expect(inbreeding.pairs).toEqual([{ a: having({ code: 'W' }), b: null, probability: 1, kinship: 0 }]);
  });

  it('never shows an inbreeding of 0 that rests on nothing without saying so', async () => {
    expect((await lineageOf('C')).inbreeding).toMatchObject({ expected: 0, nothingKnown: true });
    expect((await lineageOf('P')).inbreeding).toMatchObject({ expected: 0, nothingKnown: false, bothParentsKnown: 0 });
    expect((await lineageOf('Q')).inbreeding).toMatchObject({ expected: 0, nothingKnown: false, bothParentsKnown: 1 });
  });

  it('takes labels for the same that differ by case and spaces only', async () => {
    expect((await lineageOf('X')).label.otherLabels).toEqual([]);
    expect((await lineageOf('L')).label.otherLabels).toEqual([{ label: 'Río Verde', share: 0.5 }]);
  });

  it('traces nothing while labels rest on somebody’s word', async () => {
    expect((await lineageOf('A')).label).toMatchObject({ standing: 'stated', tracedShare: { expected: 0, least: 0 } });
  });

  it('raises the flags that the records call for, and names those records', async () => {
    const flags = Object.fromEntries((await lineageOf('L')).label.flags.map((flag) => [flag.code, flag]));
    expect(Object.keys(flags).sort()).toEqual([
      'label-beyond-evidence',
      'mixed-labels',
      'origin-gap',
      'outside-line',
      'parents-uncertain',
    ]);
    expect(flags['mixed-labels']?.records.map(({ id }) => id).sort()).toEqual([ids.sources[0], ids.sources[1]].sort());
    expect(flags['outside-line']?.records).toEqual([
      { kind: 'individual', id: idOf('M'), name: textLike(/^M \(\d+-[\dX]\)$/), isPrivate: false },
    ]);
    expect(flags['outside-line']?.detail).toContain('Sunset');
    expect(flags['origin-gap']?.records.map(({ id }) => id)).toEqual([idOf('C')]);
    expect(flags['parents-uncertain']?.records.map(({ id, name }) => [id, name])).toEqual([
      [ids.clutches[1], 'clutch of 2021-04-12'],
      [ids.clutches[0], 'clutch of 2019-04-12'],
    ]);
  });

  it('asks an animal of a trade name with certain parents of its own line for no place, only why its founders were renamed', async () => {
    expect((await lineageOf('Q')).label.flags).toMatchObject([
      { code: 'label-changed', severity: 'breaks', records: [{ kind: 'source', id: ids.sources[1] }] },
    ]);
  });

  it('says which state of the register it belongs to, and a newer one after a change', async () => {
    const before = await lineageOf('X');
    expect(before.current).toBe(true);
    await api.dataSource.query('update source set base_kinship = 0.25 where id = $1', [ids.sources[0]]);
    const after = await lineageOf('X');
    await api.dataSource.query('update source set base_kinship = 0.125 where id = $1', [ids.sources[0]]);
    expect(after.asOf.revision).toBeGreaterThan(before.asOf.revision);
    expect(Date.parse(after.asOf.at)).toBeGreaterThanOrEqual(Date.parse(before.asOf.at));
    expect(after.inbreeding.expected).toBe(0.125);
  });

  it('shows a code as it is now, though a code changes no figure', async () => {
    const before = await lineageOf('X');
    await api.dataSource.query(`update individual set code = 'A-new' where id = $1`, [idOf('A')]);
    const after = await lineageOf('X');
    await api.dataSource.query(`update individual set code = 'A' where id = $1`, [idOf('A')]);
    expect(after.asOf).toEqual(before.asOf);
    expect(after.inbreeding.pairs[0]?.a?.code).toBe('A-new');
  });

  it('answers for a withdrawn animal, and keeps it among the ancestors of others', async () => {
    const before = await lineageOf('L');
    await api.dataSource.query(
      `update individual set withdrawn_at = now(), withdrawn_reason = 'twice entered' where id = $1`,
      [idOf('K')],
    );
    expect((await lineageOf('K')).depth).toBe(2);
    expect((await lineageOf('L')).shares).toEqual(before.shares);
    await api.dataSource.query('update individual set withdrawn_at = null, withdrawn_reason = null where id = $1', [
      idOf('K'),
    ]);
  });

  it('can be asked by registry number', async () => {
    const number = (await lineageOf('X')).inbreeding.pairs[0]?.a?.number ?? '';
    const answer = await api.http.get(`/api/v1/individuals/${number}/lineage`).expect(200);
    expect(bodyOf<LineageView>(answer).inbreeding.expected).toBe(1 / 8);
  });

  it.each(['nobody', '00000000-0000-7000-8000-000000000000', '1-1', '\0', '%00', 'x'.repeat(3000), "' or 1=1 --"])(
    'answers 404 to an animal that does not exist: %s',
    async (id) => {
      const answer = await api.http.get(`/api/v1/individuals/${encodeURIComponent(id)}/lineage`);
      expect(answer.status).toBe(404);
      expect(answer.body).toMatchObject({ type: '/api/problems/not-found', status: 404 });
    },
  );

  it.each(['lineage', 'pedigree'])('answers 400 to an address that cannot be read: %s', async (view) => {
    const answer = await api.http.get(`/api/v1/individuals/%E0%A4%A/${view}`).expect(400);
    expect(answer.body).toMatchObject({ type: '/api/problems/malformed', status: 400 });
  });
});
