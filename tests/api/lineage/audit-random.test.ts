import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, type TestApi } from '../../support/api.ts';
import { writeClaims, type SketchClaim } from '../../support/claims-sketch.ts';
import {
  writeSketch,
  type RegisterSketch,
  type SketchCandidate,
  type SketchIds,
} from '../../support/register-sketch.ts';
import { byAnimals, byAudit, newLabels, type RegisterLabels } from './counted-flags.ts';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const maybe = <T>(...values: T[]) => fc.constantFrom(undefined, ...values);
const choice = fc.record({ pick: fc.nat(99), odds: fc.integer({ min: 1, max: 9 }) });
const drawnEvidence = fc.record({
  kind: fc.constantFrom(
    'collecting-permit' as const,
    'export-permit' as const,
    'invoice' as const,
    'letter' as const,
    'appearance' as const,
  ),
  bearing: fc.constantFrom('supports' as const, 'supports' as const, 'supports' as const, 'contradicts' as const),
  names: fc.constantFrom('claim' as const, 'country' as const),
  review: fc.constantFrom('accepted' as const, 'accepted' as const, 'pending' as const, 'rejected' as const),
  dated: maybe('1990-01-01', '1990-01-01', '1996-01-01', '1996-01-01'),
});

/** Draws of a register with claims; `toRegister` makes a valid one of any. */
const draws = fc.record({
  kinds: fc.array(
    fc.constantFrom('locality' as const, 'trade-name' as const, 'cross' as const, 'unlabelled' as const),
    {
      minLength: 3,
      maxLength: 3,
    },
  ),
  sources: fc.array(
    fc.record({
      label: fc.nat(3),
      kind: fc.constantFrom('import' as const, 'wild-collection' as const, 'purchase' as const),
      country: maybe('EC', 'DE'),
      date: fc.constantFrom(undefined, '1994-03-01', '1994-03-01', '1994-03-01'),
    }),
    { minLength: 3, maxLength: 3 },
  ),
  founders: fc.array(fc.record({ source: fc.integer({ min: -1, max: 2 }), line: fc.integer({ min: -1, max: 2 }) }), {
    minLength: 3,
    maxLength: 5,
  }),
  clutches: fc.array(
    fc.record({
      sires: fc.array(choice, { maxLength: 2 }),
      dams: fc.array(choice, { maxLength: 2 }),
      unknownOdds: fc.integer({ min: 0, max: 1 }),
      young: fc.array(fc.record({ line: fc.integer({ min: -1, max: 2 }), isDead: fc.boolean() }), {
        minLength: 1,
        maxLength: 3,
      }),
    }),
    { minLength: 1, maxLength: 5 },
  ),
  claims: fc.array(
    fc.record({
      about: fc.constantFrom('source' as const, 'source' as const, 'line' as const, 'individual' as const),
      pick: fc.nat(99),
      value: fc.nat(2),
      country: maybe('EC', 'BR'),
      evidence: fc.array(drawnEvidence, { maxLength: 2 }),
    }),
    { minLength: 3, maxLength: 9 },
  ),
});
type Draws = typeof draws extends fc.Arbitrary<infer Drawn> ? Drawn : never;

function side(drawn: Draws['clutches'][number]['sires'], count: number, taken: ReadonlySet<number>, unknown: number) {
  const odds = new Map(
    drawn.map(({ pick, odds: part }) => [pick % count, part]).filter(([one]) => !taken.has(one ?? 0)) as [
      number,
      number,
    ][],
  );
  if (odds.size > 0 && unknown > 0) odds.set(-1, unknown);
  const total = [...odds.values()].reduce((sum, part) => sum + part, 0);
  return [...odds].map(([individual, part]): SketchCandidate => ({ individual, probability: part / total }));
}

function toRegister({ kinds, sources, founders, clutches }: Draws, names: RegisterLabels): RegisterSketch {
  const given = [undefined, names.own, names.other, names.sameAsOwn];
  const lineNames = [names.own, names.other, names.sameAsOwn];
  const individuals: RegisterSketch['individuals'][number][] = founders.map(({ source, line }) => ({
    ...(source < 0 ? {} : { source }),
    ...(line < 0 ? {} : { line }),
  }));
  const written = clutches.map(({ sires, dams, unknownOdds, young }, clutch) => {
    const count = individuals.length;
    for (const { line, isDead } of young)
      individuals.push({ clutch, ...(line < 0 ? {} : { line }), status: isDead ? 'died' : 'alive' });
    const first = side(sires, count, new Set(), unknownOdds);
    return { sires: first, dams: side(dams, count, new Set(first.map(({ individual }) => individual)), 0) };
  });
  return {
    lines: lineNames.map((name, place) => ({ name, kind: kinds[place] ?? 'locality' })),
    sources: sources.map(({ label, kind, date }) => ({
      kind,
      ...(given[label] === undefined ? {} : { label: given[label] }),
      ...(date === undefined ? {} : { date }),
    })),
    clutches: written,
    individuals,
  };
}

function toClaims({ claims }: Draws, ids: SketchIds, names: RegisterLabels): SketchClaim[] {
  const values = [names.own, names.other, names.third];
  const once = new Map(
    claims.map(({ about, pick, value, country, evidence }) => {
      const all = { source: ids.sources, line: ids.lines, individual: ids.individuals }[about];
      const id = all[pick % all.length] ?? '';
      const claim = {
        about: { [about]: id } as SketchClaim['about'],
        value: values[value] ?? '',
        evidence: evidence.map(({ dated, ...piece }) => (dated === undefined ? piece : { ...piece, dated })),
        ...(country === undefined ? {} : { country }),
      };
      return [`${id} ${value}`, claim];
    }),
  );
  return [...once.values()];
}

describe('the audit of a line of a random register', () => {
  it('counts for each flag the members whose own view holds it, and names the records that these name', async () => {
    await fc.assert(
      fc.asyncProperty(draws, async (drawn) => {
        const names = newLabels();
        const sketch = toRegister(drawn, names);
        const ids = await writeSketch(api.dataSource, sketch);
        await api.dataSource.query(`update species set native_range = '{EC,PE}'`);
        for (const [place, { country }] of drawn.sources.entries())
          await api.dataSource.query('update source set country_of_export = $2 where id = $1', [
            ids.sources[place],
            country ?? null,
          ]);
        await writeClaims(api.dataSource, toClaims(drawn, ids, names));
        for (const line of ids.lines.keys()) {
          const found = await byAudit(api, ids.lines[line] ?? '');
          expect(found).toEqual(await byAnimals(api, sketch, ids, line));
        }
      }),
      { numRuns: 20 },
    );
  }, 120_000);
});
