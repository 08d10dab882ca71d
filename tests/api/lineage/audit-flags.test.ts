import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LineAuditView } from '../../../api/lineage/audit/line-audit.view.ts';
import type { FlagCode } from '../../../shared/vocabulary.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { writeClaims, type SketchClaim } from '../../support/claims-sketch.ts';
import {
  writeSketch,
  type RegisterSketch,
  type SketchCandidate,
  type SketchIds,
} from '../../support/register-sketch.ts';
import { byAnimals, byAudit, newLabels, type CountedFlags, type RegisterLabels } from './counted-flags.ts';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const certain = (individual: number): SketchCandidate[] => [{ individual, probability: 1 }];

/** Two founders of one source, their son and their daughter, and a grandchild, all of line 0; changed by `fields`. */
function family(own: string, other: string, label: string | null = own): RegisterSketch {
  return {
    lines: [{ name: own }, { name: other }],
    sources: [{ ...(label === null ? {} : { label }), date: '1994-03-01' }],
    clutches: [
      { sires: certain(0), dams: certain(1) },
      { sires: certain(2), dams: certain(3) },
    ],
    individuals: [
      { source: 0, line: 0, sex: 'male', status: 'died' },
      { source: 0, line: 0, sex: 'female' },
      { clutch: 0, line: 0, sex: 'male' },
      { clutch: 0, line: 0, sex: 'female' },
      { clutch: 1, line: 0 },
    ],
  };
}

/** What is claimed, by the ids of a family, and the records that each flag raised should name, with how many members name each. */
interface Case {
  readonly what: string;
  readonly label?: (names: RegisterLabels) => string | null;
  readonly change?: (sketch: RegisterSketch) => RegisterSketch;
  readonly export?: { readonly kind?: string; readonly country: string };
  readonly claims: (ids: SketchIds, names: RegisterLabels) => SketchClaim[];
  readonly raised: (ids: SketchIds) => Partial<Record<FlagCode, Record<string, number>>>;
}

const sourceOf = ({ sources }: SketchIds): string => sources[0] ?? '';
const lineOf = ({ lines }: SketchIds): string => lines[0] ?? '';
const animalOf = ({ individuals }: SketchIds, place: number): string => individuals[place] ?? '';
const permit = { kind: 'collecting-permit' } as const;
const contradicted = [permit, { kind: 'letter', bearing: 'contradicts' }] as const;

const cases: readonly Case[] = [
  {
    what: 'a claim of a source is disputed',
    claims: (ids, { own }) => [{ about: { source: sourceOf(ids) }, value: own, evidence: contradicted }],
    raised: (ids) => ({ 'disputed-claim': { [sourceOf(ids)]: 5 } }),
  },
  {
    what: 'a claim of the line itself is disputed',
    claims: (ids, { own }) => [{ about: { line: lineOf(ids) }, value: own, evidence: contradicted }],
    raised: (ids) => ({ 'disputed-claim': { [lineOf(ids)]: 5 } }),
  },
  {
    what: 'a claim of an animal that hatched here is disputed, which none of its young inherits',
    claims: (ids, { own }) => [{ about: { individual: animalOf(ids, 2) }, value: own, evidence: contradicted }],
    raised: (ids) => ({ 'disputed-claim': { [animalOf(ids, 2)]: 1 } }),
  },
  {
    what: 'the contradiction was rejected',
    claims: (ids, { own }) => [
      { about: { source: sourceOf(ids) }, value: own, evidence: [{ ...contradicted[1], review: 'rejected' }] },
    ],
    raised: () => ({}),
  },
  {
    what: 'the place claimed of the source lies outside the range',
    claims: (ids, { own }) => [{ about: { source: sourceOf(ids) }, value: own, country: 'BR' }],
    raised: (ids) => ({ 'outside-range': { [sourceOf(ids)]: 5 } }),
  },
  {
    what: 'the place claimed of the line and of a founder lies outside the range',
    claims: (ids, { own }) => [
      { about: { line: lineOf(ids) }, value: own, country: 'BR' },
      { about: { individual: animalOf(ids, 0) }, value: own, country: 'BR' },
    ],
    raised: (ids) => ({ 'outside-range': { [lineOf(ids)]: 5, [animalOf(ids, 0)]: 4 } }),
  },
  {
    what: 'it lies inside',
    claims: (ids, { own }) => [{ about: { source: sourceOf(ids) }, value: own, country: 'PE' }],
    raised: () => ({}),
  },
  {
    what: 'only the line names a place, and the source was exported elsewhere',
    export: { country: 'DE' },
    claims: (ids, { own }) => [{ about: { line: lineOf(ids) }, value: own, country: 'EC' }],
    raised: (ids) => ({ 'export-route': { [sourceOf(ids)]: 5 } }),
  },
  {
    what: 'a wild collection was exported elsewhere than from the place claimed of it',
    export: { kind: 'wild-collection', country: 'DE' },
    claims: (ids, { own }) => [{ about: { source: sourceOf(ids) }, value: own, country: 'EC' }],
    raised: (ids) => ({ 'export-route': { [sourceOf(ids)]: 5 } }),
  },
  {
    what: 'it was exported from the country of the place',
    export: { country: 'EC' },
    claims: (ids, { own }) => [{ about: { source: sourceOf(ids) }, value: own, country: 'EC' }],
    raised: () => ({}),
  },
  {
    what: 'a permit is dated after the animals came',
    claims: (ids, { own }) => [
      { about: { source: sourceOf(ids) }, value: own, evidence: [{ ...permit, dated: '1996-01-01' }] },
    ],
    raised: (ids) => ({ 'date-conflict': { [sourceOf(ids)]: 5 } }),
  },
  {
    what: 'a permit is dated before they came',
    claims: (ids, { own }) => [
      { about: { source: sourceOf(ids) }, value: own, evidence: [{ ...permit, dated: '1994-01-01' }] },
    ],
    raised: () => ({}),
  },
  {
    what: 'papers of one founder name only the country',
    claims: (ids, { own }) => [
      { about: { individual: animalOf(ids, 1) }, value: own, evidence: [{ kind: 'export-permit', names: 'country' }] },
    ],
    raised: (ids) => ({ 'country-only': { [animalOf(ids, 1)]: 4 } }),
  },
  {
    what: 'one of the papers names the place',
    claims: (ids, { own }) => [
      {
        about: { individual: animalOf(ids, 1) },
        value: own,
        evidence: [{ kind: 'export-permit', names: 'country' }, permit],
      },
    ],
    raised: () => ({}),
  },
  {
    what: 'all founders came under another label',
    label: ({ other }) => other,
    claims: () => [],
    raised: (ids) => ({ 'label-changed': { [sourceOf(ids)]: 5 } }),
  },
  {
    what: 'a document says why the label of the founders changed',
    label: ({ other }) => other,
    claims: (ids, { own }) => [{ about: { source: sourceOf(ids) }, value: own, evidence: [permit] }],
    raised: () => ({}),
  },
  {
    what: 'an animal hatched under another label than it is kept under, and its young did not',
    change: (sketch) => ({
      ...sketch,
      individuals: sketch.individuals.map((animal, place) => (place < 2 ? { ...animal, line: 1 } : animal)),
    }),
    claims: () => [],
    raised: (ids) => ({
      'label-changed': { [animalOf(ids, 2)]: 1, [animalOf(ids, 3)]: 1 },
      'outside-line': { [animalOf(ids, 0)]: 3, [animalOf(ids, 1)]: 3 },
    }),
  },
  {
    what: 'a document of one of them says why',
    change: (sketch) => ({
      ...sketch,
      individuals: sketch.individuals.map((animal, place) => (place < 2 ? { ...animal, line: 1 } : animal)),
    }),
    claims: (ids, { own }) => [{ about: { individual: animalOf(ids, 2) }, value: own, evidence: [permit] }],
    raised: (ids) => ({
      'label-changed': { [animalOf(ids, 3)]: 1 },
      'outside-line': { [animalOf(ids, 0)]: 3, [animalOf(ids, 1)]: 3 },
    }),
  },
];

/** Without the flag that the labels of most families carry. */
function butForEvidence(flags: CountedFlags): CountedFlags {
  return Object.fromEntries(Object.entries(flags).filter(([code]) => code !== 'label-beyond-evidence'));
}

describe('the audit of a line', () => {
  it.each(cases)('names what raises a flag where $what', async ({ label, change, claims, raised, ...of }) => {
    const names = newLabels();
    const drawn = family(names.own, names.other, label ? label(names) : names.own);
    const sketch = change ? change(drawn) : drawn;
    const ids = await writeSketch(api.dataSource, sketch);
    await api.dataSource.query(`update species set native_range = '{EC,PE}'`);
    const { kind = 'import', country = null } = of.export ?? {};
    await api.dataSource.query('update source set kind = $2, country_of_export = $3 where id = $1', [
      sourceOf(ids),
      kind,
      country,
    ]);
    await writeClaims(api.dataSource, claims(ids, names));
    const found = butForEvidence(await byAudit(api, lineOf(ids)));
    expect(Object.fromEntries(Object.entries(found).map(([code, { causes }]) => [code, causes]))).toEqual(raised(ids));
    expect(found).toEqual(butForEvidence(await byAnimals(api, sketch, ids, 0)));
  });

  it('takes animals out of breeding whose founders all carry one other label, and no more', async () => {
    const names = newLabels();
    const sketch = family(names.own, names.other, null);
    const ids = await writeSketch(api.dataSource, {
      ...sketch,
      sources: [{ label: names.other }, { label: names.own }],
      individuals: [...sketch.individuals, { source: 1, line: 0 }],
    });
    const audit = bodyOf<LineAuditView>(await api.http.get(`/api/v1/lines/${lineOf(ids)}/audit`).expect(200));
    expect(audit.removal.count).toBe(4);
    expect(audit.removal.animals.map(({ animal }) => animal.id)).not.toContain(animalOf(ids, 5));
    expect(audit.removal.animals.map(({ flags }) => flags)).toEqual(new Array(4).fill(['label-changed']));
    expect(audit.removal.after.animals).toBe(1);
    // papers that name the label of the line clear them
    await writeClaims(api.dataSource, [{ about: { source: sourceOf(ids) }, value: names.own, evidence: [permit] }]);
    const cleared = bodyOf<LineAuditView>(await api.http.get(`/api/v1/lines/${lineOf(ids)}/audit`).expect(200));
    expect(cleared.removal).toMatchObject({ count: 0, animals: [] });
  });
});
