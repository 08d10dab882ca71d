import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LineAuditView } from '../../../api/lineage/audit/line-audit.view.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import type { ClaimView } from '../../../api/provenance/claims/claim.view.ts';
import type { EvidenceView } from '../../../api/provenance/evidence/evidence.view.ts';
import type { LabelHistoryView } from '../../../api/provenance/label-history/label-history.view.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { Registrar } from '../register/registrar.ts';

let api: TestApi;
let registrar: Registrar;
/** Who claims and brings papers; the registrar judges them. */
let keeper: TestKeeper;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  registrar = new Registrar(api);
  keeper = await api.addKeeper('Keeper of the line');
  make = new Factory(keeper.http);
});
afterAll(() => api.close());

const label = 'Quebrada Honda';

/** Records of one founder, whose young with another founder is asked about. */
async function founder(records: number): Promise<{ lineId: string; ids: string[]; young: string }> {
  const { id: speciesId } = await make.species();
  const { id: lineId } = await make.line({ speciesId, name: label });
  const ids: string[] = [];
  for (let record = 0; record < records; record++)
    ids.push((await make.individual({ speciesId, lineId, sex: 'male' })).id);
  const dam = await make.individual({ speciesId, lineId, sex: 'female' });
  const clutch = await make.clutchOf(ids[0] ?? '', dam.id);
  const [young] = await make.offspring(clutch.id, { count: 1, speciesId });
  return { lineId, ids, young: young?.id ?? '' };
}

/** Brings a paper and lets the registrar decide about it, unless it shall wait. */
async function bring(claimId: string, fields: Record<string, unknown>, verdict: string): Promise<EvidenceView> {
  const evidence = await make.evidence({ claimId, ...fields });
  if (verdict !== 'pending')
    await api.http
      .post(`/api/v1/evidence/${evidence.id}/review`)
      .set('If-Match', '*')
      .send({ verdict, reason: 'as the paper says' })
      .expect(201);
  return evidence;
}

const claimsOf = async (individualId: string): Promise<ClaimView[]> =>
  bodyOf<{ items: ClaimView[] }>(await api.http.get('/api/v1/claims').query({ individualId }).expect(200)).items;
const evidenceOf = async (claimId: string): Promise<string[]> =>
  bodyOf<{ items: EvidenceView[] }>(await api.http.get('/api/v1/evidence').query({ claimId }).expect(200)).items.map(
    ({ id }) => id,
  );
const labelOf = async (id: string): Promise<LineageView['label']> =>
  bodyOf<LineageView>(await api.http.get(`/api/v1/individuals/${id}/lineage`).expect(200)).label;

describe('the claims of two records of one animal', () => {
  it('are those of the record that goes on, for its label, its young, its line, its history and its papers', async () => {
    const { lineId, ids, young } = await founder(2);
    const [kept = '', duplicate = ''] = ids;
    const claim = await make.claim({ individualId: duplicate, value: label, statedBy: 'An importer' });
    const note = await bring(claim.id, {}, 'accepted');
    const photograph = await make.photograph({ individualId: duplicate });
    expect(await labelOf(young)).toMatchObject({ tracedShare: { expected: 0 } });

    const { id, moved } = await registrar.merge({ id: kept }, { id: duplicate });
    expect(moved).toMatchObject({ claims: 1, photographs: 1 });
    expect(await claimsOf(duplicate)).toEqual([]);
    expect(await claimsOf(kept)).toMatchObject([{ id: claim.id, standing: { standing: 'documented' } }]);
    expect(await labelOf(kept)).toMatchObject({ standing: 'documented', tracedShare: { expected: 1 }, flags: [] });
    expect(await labelOf(young)).toMatchObject({ tracedShare: { expected: 0.5, least: 0.5 } });
    const history = await api.http.get(`/api/v1/individuals/${kept}/label-history`).expect(200);
    expect(bodyOf<LabelHistoryView>(history).events.map(({ event }) => event)).toEqual(
      expect.arrayContaining(['claimed', 'evidence-accepted']),
    );
    const prov = await api.http.get(`/api/v1/individuals/${kept}/provenance`).expect(200);
    expect(prov.text).toContain(note.id);
    const pictures = await api.http.get('/api/v1/photographs').query({ individualId: kept }).expect(200);
    expect(pictures.body).toMatchObject({ items: [{ id: photograph.id, individualId: kept }] });
    const gapsOf = async (): Promise<string[]> =>
      bodyOf<LineAuditView>(await api.http.get(`/api/v1/lines/${lineId}/audit`).expect(200)).flags.map(
        ({ code, causeCount }) => `${code} of ${causeCount}`,
      );
    // of two founders without an origin one is left: the other's claim closes its gap
    expect(await gapsOf()).toContain('origin-gap of 1');

    await registrar.undo(id).expect(200);
    expect(await claimsOf(kept)).toEqual([]);
    expect(await claimsOf(duplicate)).toMatchObject([{ id: claim.id, standing: { standing: 'documented' } }]);
    expect(await labelOf(kept)).toMatchObject({ standing: 'unknown', tracedShare: { expected: 0 } });
    expect(await labelOf(young)).toMatchObject({ tracedShare: { expected: 0 } });
  });

  it('that say the same go on as one, with the evidence of both, and what one of them left out is filled', async () => {
    const { ids, young } = await founder(2);
    const [kept = '', duplicate = ''] = ids;
    const one = await make.claim({ individualId: kept, value: label, notes: 'kept' });
    const other = await make.claim({
      individualId: duplicate,
      value: label.toUpperCase(),
      statedBy: 'An importer',
      statedOn: '1994~',
      countryCode: 'PE',
      verbatimLocality: 'Qda. Honda',
      notes: 'duplicate',
    });
    const invoice = await bring(one.id, { kind: 'invoice', issuedBy: 'A dealer' }, 'accepted');
    const letter = await bring(other.id, { kind: 'letter', issuedBy: 'Another keeper' }, 'accepted');
    expect((await labelOf(kept)).standing).toBe('stated');
    const before = await registrar.wholeRegister();

    const { id, moved } = await registrar.merge({ id: kept }, { id: duplicate });
    expect(moved.claims).toBe(1);
    expect(await claimsOf(kept)).toMatchObject([
      {
        id: one.id,
        value: label,
        statedBy: 'An importer',
        statedOn: '1994~',
        notes: 'kept',
        place: { countryCode: 'PE', verbatimLocality: null },
        standing: { standing: 'corroborated' },
        evidence: { accepted: 2 },
      },
    ]);
    expect(await evidenceOf(one.id)).toEqual([invoice.id, letter.id].sort());
    expect(await labelOf(young)).toMatchObject({ tracedShare: { expected: 0.5 } });
    const joined = bodyOf<ClaimView>(await api.http.get(`/api/v1/claims/${other.id}`).expect(200));
    expect(joined).toMatchObject({ individualId: kept, place: { verbatimLocality: 'Qda. Honda' } });
    expect(joined.withdrawn?.reason).toContain('the same claim of');
    const restored = await api.http.delete(`/api/v1/claims/${other.id}/withdrawal`).set('If-Match', '*').expect(409);
    expect(restored.text).toContain('the same claim already');

    await registrar.undo(id).expect(200);
    expect(await registrar.wholeRegister()).toEqual(before);
    expect((await labelOf(kept)).standing).toBe('stated');
  });

  it('stay as they were changed since, when the records are parted; new evidence stays with the claim that it was brought to', async () => {
    const { ids } = await founder(2);
    const [kept = '', duplicate = ''] = ids;
    const one = await make.claim({ individualId: kept, value: label });
    const other = await make.claim({
      individualId: duplicate,
      value: label,
      statedBy: 'An importer',
      countryCode: 'PE',
    });
    const alone = await make.claim({ individualId: duplicate, value: 'Río Verde' });
    const letter = await bring(other.id, { kind: 'letter' }, 'pending');
    const { id } = await registrar.merge({ id: kept }, { id: duplicate });
    await keeper.http.patch(`/api/v1/claims/${one.id}`).set('If-Match', '*').send({ countryCode: 'EC' }).expect(200);
    await keeper.http.patch(`/api/v1/claims/${alone.id}`).set('If-Match', '*').send({ notes: 'later' }).expect(200);
    const later = await bring(one.id, { kind: 'invoice' }, 'pending');
    const copy = await bring(one.id, { kind: 'other-document', repeatsId: letter.id }, 'accepted');

    const refused = await registrar.undo(id).expect(409);
    expect(refused.body).toMatchObject({ changed: [{ kind: 'evidence', id: copy.id, name: copy.reference }] });
    await keeper.http
      .post(`/api/v1/evidence/${copy.id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'brought anew once the records are parted' })
      .expect(201);
    await registrar.undo(id).expect(200);
    expect(await claimsOf(kept)).toMatchObject([{ id: one.id, statedBy: null, place: { countryCode: 'EC' } }]);
    expect(await claimsOf(duplicate)).toMatchObject([
      { id: other.id, statedBy: 'An importer', withdrawn: null },
      { id: alone.id, notes: 'later' },
    ]);
    expect(await evidenceOf(one.id)).toEqual([later.id]);
    expect(await evidenceOf(other.id)).toEqual([letter.id]);
  });

  it('stand in the entry of the journal, which undoes and redoes it, and in their own histories', async () => {
    const { ids } = await founder(2);
    const [kept = '', duplicate = ''] = ids;
    const one = await make.claim({ individualId: kept, value: label });
    const other = await make.claim({ individualId: duplicate, value: label });
    const alone = await make.claim({ individualId: duplicate, value: 'Río Verde' });
    const letter = await bring(other.id, { kind: 'letter' }, 'accepted');
    const before = await registrar.wholeRegister();
    const answer = await registrar.post({ id: kept }, { id: duplicate }).expect(201);
    const entry = answer.headers['journal-entry'] ?? '';
    for (const id of [one.id, other.id, alone.id, letter.id]) {
      const history = await api.http.get(`/api/v1/journal?record=${id}`).expect(200);
      const [first] = bodyOf<{ items: { id: string; changes: { field: string; after: string | null }[] }[] }>(
        history,
      ).items;
      expect(first).toMatchObject({ id: entry, action: 'merged' });
      expect(first?.changes.find(({ field }) => field === 'moved')?.after).toContain('claim of “Río Verde”');
    }
    const undone = await api.http.post(`/api/v1/journal/${entry}/reversal`).expect(201);
    expect(await registrar.wholeRegister()).toEqual(before);
    await api.http.post(`/api/v1/journal/${bodyOf<{ id: string }>(undone).id}/reversal`).expect(201);
    expect((await claimsOf(kept)).map(({ id }) => id)).toEqual([one.id, alone.id]);
    expect(await evidenceOf(one.id)).toEqual([letter.id]);
  });

  it('bring the acknowledged flags of the duplicate along, but for those that the record that goes on has', async () => {
    const { ids } = await founder(2);
    const [kept = '', duplicate = ''] = ids;
    const acknowledge = async (individualId: string, code: string): Promise<string> =>
      bodyOf<{ id: string }>(
        await api.http
          .post('/api/v1/acknowledgements')
          .send({ individualId, code, reason: 'nobody left to ask' })
          .expect(201),
      ).id;
    const own = await acknowledge(kept, 'origin-gap');
    const twice = await acknowledge(duplicate, 'origin-gap');
    const other = await acknowledge(duplicate, 'label-beyond-evidence');
    const about = async (individualId: string): Promise<string[]> =>
      (
        await api.dataSource.query<{ id: string }[]>(
          'select id from flag_acknowledgement where individual_id = $1 order by id',
          [individualId],
        )
      ).map(({ id }) => id);
    const { id, moved } = await registrar.merge({ id: kept }, { id: duplicate });
    expect(moved.acknowledgements).toBe(1);
    expect(await about(kept)).toEqual([own, other].sort());
    expect(await about(duplicate)).toEqual([twice]);
    await registrar.undo(id).expect(200);
    expect(await about(kept)).toEqual([own]);
    expect(await about(duplicate)).toEqual([twice, other].sort());
  });

  it('are seen by whoever sees the record that goes on, which the comparison tells before', async () => {
    const { ids } = await founder(2);
    const [kept = '', duplicate = ''] = ids;
    await keeper.http
      .patch(`/api/v1/individuals/${duplicate}`)
      .set('If-Match', '*')
      .send({ visibility: 'private' })
      .expect(200);
    const claim = await make.claim({ individualId: duplicate, value: label });
    const member = await api.addKeeper('Another keeper');
    await member.http.get(`/api/v1/claims/${claim.id}`).expect(404);
    const { obstacles, moves } = await registrar.compare({ id: kept }, { id: duplicate });
    expect(moves.claims).toBe(1);
    expect(obstacles).toMatchObject([{ code: 'visibility', blocks: false }]);
    const { id } = await registrar.merge({ id: kept }, { id: duplicate });
    await member.http.get(`/api/v1/claims/${claim.id}`).expect(200);
    await registrar.undo(id).expect(200);
    await member.http.get(`/api/v1/claims/${claim.id}`).expect(404);
  });
});

/** What may be said of an animal, and where it is written: on the first record, the second, or both. */
const drawn = fc.array(
  fc.record({
    value: fc.constantFrom(label, 'quebrada  honda', 'Río Verde'),
    aspect: fc.constantFrom('locality', 'trade-name'),
    papers: fc.array(
      fc.record({
        record: fc.constantFrom(0, 1),
        kind: fc.constantFrom('field-note', 'invoice', 'letter', 'appearance'),
        bearing: fc.constantFrom('supports', 'supports', 'supports', 'contradicts'),
        names: fc.constantFrom('claim', 'claim', 'country'),
        issuedBy: fc.constantFrom('A dealer', 'Another keeper', null),
        verdict: fc.constantFrom('accepted', 'accepted', 'rejected', 'pending'),
      }),
      { maxLength: 4 },
    ),
    /** Where it stands even without a paper. */
    record: fc.constantFrom(0, 1),
  }),
  { minLength: 1, maxLength: 3 },
);

/** Writes what is said into a register whose founder has one record, or two. */
async function write(said: typeof drawn extends fc.Arbitrary<infer Said> ? Said : never, ids: readonly string[]) {
  const claims = new Map<string, string>();
  for (const { value, aspect, papers, record } of said) {
    const claimOn = async (of: number): Promise<string> => {
      const individualId = ids[of % ids.length] ?? '';
      const key = [individualId, aspect, value.toLowerCase()].join(' ');
      const id = claims.get(key) ?? (await make.claim({ individualId, aspect, value })).id;
      claims.set(key, id);
      return id;
    };
    await claimOn(record);
    for (const { record: of, verdict, ...paper } of papers) await bring(await claimOn(of), paper, verdict);
  }
}

const tellClaims = (claims: readonly ClaimView[]): unknown =>
  claims
    .map(({ aspect, value, standing, evidence }) => ({
      of: `${aspect} ${value.toLowerCase()}`,
      standing: standing.standing,
      because: standing.because,
      evidence,
    }))
    .sort((one, other) => one.of.localeCompare(other.of));

const tellLabel = ({ standing, shares, tracedShare, otherLabels, flags }: LineageView['label']): unknown => ({
  standing,
  shares,
  tracedShare,
  otherLabels: otherLabels.map(({ label: name, share }) => ({ name: name?.toLowerCase(), share })),
  flags: flags.map(({ code, severity }) => `${code} ${severity}`),
});

it('merged records stand as in a register that had one record from the start, and parted ones are as they were', async () => {
  await fc.assert(
    fc.asyncProperty(drawn, async (said) => {
      const [once, twice] = [await founder(1), await founder(2)];
      const [kept = '', duplicate = ''] = twice.ids;
      await write(said, once.ids);
      await write(said, twice.ids);
      const before = await registrar.wholeRegister();
      const { id } = await registrar.merge({ id: kept }, { id: duplicate });
      expect(tellClaims(await claimsOf(kept))).toEqual(tellClaims(await claimsOf(once.ids[0] ?? '')));
      for (const [one, other] of [
        [kept, once.ids[0] ?? ''],
        [twice.young, once.young],
      ] as const)
        expect(tellLabel(await labelOf(one))).toEqual(tellLabel(await labelOf(other)));
      await registrar.undo(id).expect(200);
      expect(await registrar.wholeRegister()).toEqual(before);
    }),
    { numRuns: 8, seed: 20261126 },
  );
});
