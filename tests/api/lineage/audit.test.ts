import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { LineAuditView, LineFlagView } from '../../../api/lineage/audit/line-audit.view.ts';
import type { LineageSetView } from '../../../api/lineage/lineage-set.view.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import { bodyOf, having } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { writeSketch, type RegisterSketch, type SketchIds } from '../../support/register-sketch.ts';

const certain = (individual: number) => [{ individual, probability: 1 }];

/**
 * A line of two founders of one import; a son of them was paired with a stranger of another line, another with one of two dams; a
 * clutch has an unknown sire.
 */
const sketch: RegisterSketch = {
  lines: [{ name: 'Quebrada Inventada' }, { name: 'Rio Ajeno' }, { name: 'Without members' }, { name: 'Rio Contado' }],
  sources: [
    { label: 'Quebrada Inventada', date: '1994-03-01' },
    { label: 'Rio Ajeno', date: '1996-05-01' },
  ],
  clutches: [
    { sires: certain(0), dams: certain(1) },
    { sires: certain(3), dams: certain(2) },
    {
      sires: certain(3),
      dams: [
        { individual: 1, probability: 0.5 },
        { individual: 4, probability: 0.5 },
      ],
    },
    { sires: certain(-1), dams: certain(4) },
    { sires: certain(8), dams: certain(9) },
  ],
  individuals: [
    { code: 'old sire', source: 0, sex: 'male', line: 0, status: 'died' },
    { code: 'old dam', source: 0, sex: 'female', line: 0, status: 'died' },
    { code: 'stranger', source: 1, sex: 'female', line: 1, status: 'died' },
    { code: 'son', clutch: 0, sex: 'male', line: 0 },
    { code: 'daughter', clutch: 0, sex: 'female', line: 0 },
    { code: 'half stranger', clutch: 1, line: 0 },
    { code: 'of one or the other', clutch: 2, line: 0 },
    { code: 'of an unknown sire', clutch: 3, line: 0 },
    { code: 'claimed founder', sex: 'male', line: 3, status: 'died' },
    { code: 'documented founder', sex: 'female', line: 3, status: 'died' },
    { code: 'young of both', clutch: 4, line: 3 },
  ],
};
const codes = sketch.individuals.map(({ code }) => code ?? '');
const hatched: Record<string, string> = {
  son: '2000-04-01',
  daughter: '2000-04-01',
  'half stranger': '2003-05-01',
  'of one or the other': '2004-05-01',
};

let api: TestApi;
let ids: SketchIds;
const idOf = (code: string): string => ids.individuals[codes.indexOf(code)] ?? '';
const auditOf = async (line: number): Promise<LineAuditView> =>
  bodyOf<LineAuditView>(await api.http.get(`/api/v1/lines/${ids.lines[line]}/audit`).expect(200));
const flagOf = ({ flags }: LineAuditView, code: string): LineFlagView | undefined =>
  flags.find((flag) => flag.code === code);

beforeAll(async () => {
  api = await startApi();
  ids = await writeSketch(api.dataSource, sketch);
  for (const [code, date] of Object.entries(hatched))
    await api.dataSource.query(
      'update individual set hatched = $2::text, hatched_earliest = $2::text::date, hatched_latest = $2::text::date where id = $1',
      [idOf(code), date],
    );
  await api.dataSource.query(
    `update individual set died = '2005-02-01', died_earliest = '2005-02-01', died_latest = '2005-02-01' where id = any($1)`,
    [[idOf('old sire'), idOf('old dam')]],
  );
});
/** The flags that the members of a line carry by their own lineage, counted. */
async function countedAnimalByAnimal(of: number): Promise<Map<string, { all: number; living: number }>> {
  const counted = new Map<string, { all: number; living: number }>();
  for (const [place, { line, status }] of sketch.individuals.entries()) {
    if (line !== of) continue;
    const { label } = bodyOf<LineageView>(
      await api.http.get(`/api/v1/individuals/${ids.individuals[place]}/lineage`).expect(200),
    );
    for (const flag of label.flags) {
      const count = counted.get(flag.code) ?? { all: 0, living: 0 };
      count.all++;
      if (status === undefined) count.living++;
      counted.set(flag.code, count);
    }
  }
  return counted;
}

beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

describe('the audit of a line', () => {
  it('counts its members, and the flags that each of them carries too', async () => {
    const audit = await auditOf(0);
    expect(audit.members).toMatchObject({ all: 7, living: 5 });
    expect(audit.members.byKeeper).toEqual([having({ members: 7, living: 5 })]);
    const counted = await countedAnimalByAnimal(0);
    expect(new Map(audit.flags.map(({ code, members, living }) => [code, { all: members, living }]))).toEqual(counted);
    expect(audit.flags.map(({ severity }) => severity)).toEqual([
      'breaks',
      'breaks',
      'weakens',
      'weakens',
      'worth-knowing',
    ]);
  });

  it('names what causes each flag, and how many members each record touches', async () => {
    const audit = await auditOf(0);
    // living pool: of five animals one is a quarter… the stranger gave half of one animal: 1/10
    expect(flagOf(audit, 'outside-line')?.causes).toEqual([
      having({ kind: 'individual', id: idOf('stranger'), members: 1, living: 1, share: 0.1 }),
    ]);
    expect(flagOf(audit, 'parents-uncertain')?.causes).toEqual([
      having({ kind: 'clutch', id: ids.clutches[2], members: 1, living: 1, share: 0.2 }),
    ]);
    expect(flagOf(audit, 'origin-gap')?.causes).toEqual([
      having({ kind: 'clutch', id: ids.clutches[3], members: 1, living: 1, share: 0.1 }),
    ]);
    expect(flagOf(audit, 'origin-gap')?.clearedBy).toContain('unknown parent');
    expect(flagOf(audit, 'mixed-labels')).toMatchObject({ members: 1, living: 1 });
  });

  it('tells of blood from outside: through whom, of which line, since when and how much', async () => {
    const { outsideBlood } = await auditOf(0);
    expect(outsideBlood).toEqual([
      { through: having({ code: 'stranger' }), line: 'Rio Ajeno', since: 2003, share: 0.1, members: 1, living: 1 },
    ]);
  });

  it('tells what removing foreign blood from breeding would leave, measured as sets of the living are', async () => {
    const { removal, now, traced } = await auditOf(0);
    expect(removal).toMatchObject({
      count: 1,
      animals: [{ animal: having({ code: 'half stranger' }), outside: 0.5, flags: ['mixed-labels', 'outside-line'] }],
    });
    const kept = ['son', 'daughter', 'of one or the other', 'of an unknown sire'].map(idOf);
    const set = bodyOf<LineageSetView>(
      await api.http.post('/api/v1/lineage/set').send({ individuals: kept }).expect(200),
    );
    expect(removal.after.founderGenomeEquivalents).toBeCloseTo(set.founderGenomeEquivalents ?? 0, 12);
    const living = bodyOf<LineageSetView>(
      await api.http.get('/api/v1/lineage/set').query({ line: 'Quebrada Inventada', status: 'alive' }).expect(200),
    );
    expect(now.geneDiversity).toBeCloseTo(living.geneDiversity ?? 0, 12);
    expect(now.effectiveFounders).toBeCloseTo(living.effectiveFounders ?? 0, 12);
    expect(traced).toMatchObject({ expected: 0, least: 0, outrunning: 5 });
    expect(traced.items).toHaveLength(5);
  });

  it('ranks what to find out first by how much of the living genome it would settle', async () => {
    const { questions, gaps } = await auditOf(0);
    // of five living animals: one tenth unknown, one tenth the stranger's; of the uncertain clutch only the dam's half is open
    expect(questions.items.map(({ kind, settles }) => [kind, Math.round(1000 * settles)])).toEqual([
      ['undocumented-source', 800],
      ['undocumented-source', 100],
      ['unknown-parent', 100],
      ['uncertain-clutch', 100],
    ]);
    expect(questions.items[0]?.record.id).toBe(ids.sources[0]);
    expect(gaps).toMatchObject({ count: 1, share: 0.1 });
  });

  it('follows the years: the young of each, and those that lived at its end', async () => {
    const { years, origins, untold } = await auditOf(0);
    expect(years.map(({ year, young, standing }) => [year, young.animals, standing.animals])).toEqual([
      // the founders arrived in 1994 and died in 2005
      [2000, 2, 4],
      [2003, 1, 5],
      [2004, 1, 6],
      [2005, 0, 4],
    ]);
    expect(untold).toBe(1);
    const place = origins.findIndex(({ source }) => source?.id === ids.sources[1]);
    expect(years[1]?.young.shares[place]).toBe(0.5);
    expect(years[1]?.standing.shares[place]).toBeCloseTo(0.1, 12);
    expect(years[0]?.young.geneDiversity).toBeCloseTo(1 - 0.375, 12);
  });

  it('of a line without members says so, and a line that is not there is not found', async () => {
    const empty = await auditOf(2);
    expect(empty).toMatchObject({ members: { all: 0, living: 0, byKeeper: [] }, flags: [], years: [] });
    expect(empty.cautions).toEqual(['The line has no members, or none that you may see.']);
    await api.http.get('/api/v1/lines/no-line/audit').expect(404);
    await api.http.get(`/api/v1/lines/${ids.sources[0]}/audit`).expect(404);
    await api.stranger.get(`/api/v1/lines/${ids.lines[0]}/audit`).expect(401);
  });

  it('goes by the claims of single founders, as each of their descendants does', async () => {
    const keeper = await api.addKeeper('Claimant');
    const make = new Factory(keeper.http);
    const accept = async (fields: object): Promise<void> => {
      const { id } = await make.evidence({ kind: 'field-note', ...fields });
      const review = { verdict: 'accepted', reason: 'read' };
      await api.http.post(`/api/v1/evidence/${id}/review`).set('If-Match', '*').send(review).expect(201);
    };
    const contested = await make.claim({ individualId: idOf('claimed founder'), value: 'Rio Disputado' });
    await accept({ claimId: contested.id, bearing: 'contradicts' });
    const ofLine = await make.claim({ individualId: idOf('documented founder'), value: 'Rio Contado' });
    await accept({ claimId: ofLine.id });
    const audit = await auditOf(3);
    expect(new Map(audit.flags.map(({ code, members, living }) => [code, { all: members, living }]))).toEqual(
      await countedAnimalByAnimal(3),
    );
    expect(flagOf(audit, 'disputed-claim')?.causes).toEqual([
      having({ kind: 'individual', id: idOf('claimed founder'), members: 2, share: 0.5 }),
    ]);
    expect(flagOf(audit, 'origin-gap')).toBeUndefined();
    expect(audit.traced.expected).toBe(0.5);
  });

  it('conceals what whoever asks may not see', async () => {
    await api.dataSource.query(`update individual set visibility = 'private' where id = any($1::uuid[])`, [
      [idOf('stranger'), idOf('son')],
    ]);
    const other = await api.addKeeper('Somebody else');
    const seen = bodyOf<LineAuditView>(await other.http.get(`/api/v1/lines/${ids.lines[0]}/audit`).expect(200));
    expect(seen.members.all).toBe(6);
    expect(seen.outsideBlood).toEqual([having({ through: having({ id: 'private-1', code: null }), line: null })]);
    expect(JSON.stringify(seen)).not.toContain(idOf('stranger'));
  });

  it('is there for a spreadsheet, a row a member, in which no text becomes a formula', async () => {
    const [line, other] = ids.lines;
    await api.dataSource.query(`update individual set code = '=1+1' where code = 'daughter'`);
    const answer = await api.http.get(`/api/v1/lines/${line}/audit.csv`).expect(200);
    expect(answer.headers['content-type']).toContain('text/csv');
    const [head, ...rows] = answer.text.trimEnd().split('\r\n');
    expect(head).toMatch(/^number,code,.*,tracedShare,tracedShareLeast,outsideShare,flags,acknowledged$/);
    expect(rows).toHaveLength(7);
    expect(rows.find((row) => row.includes('1+1'))).toContain(",'=1+1,");
    expect(rows.find((row) => row.includes(',half stranger,'))).toMatch(/,0\.5,.*outside-line/);
    await api.dataSource.query(`update individual set code = 'daughter' where code = '=1+1'`);
    expect((await api.http.get(`/api/v1/lines/${other}/audit.csv`).expect(200)).text.split('\r\n')).toHaveLength(3);
  });
});
