import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { LineAuditView, LineFlagView } from '../../../api/lineage/audit/line-audit.view.ts';
import type { FiguresView } from '../../../api/lineage/figures.view.ts';
import type { FlagView, LineageView } from '../../../api/lineage/lineage.view.ts';
import type { AcknowledgementView } from '../../../api/provenance/acknowledgements/acknowledgement.view.ts';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import { bodyOf, having, textWith, type ProblemBody } from '../../support/answer.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { setPublicReading } from '../people/route-world.ts';

let api: TestApi;
let keeper: TestKeeper;
let ria: TestKeeper;
let rob: TestKeeper;
let make: Factory;
let registrar: Factory;

beforeAll(async () => {
  api = await startApi();
  keeper = await api.addKeeper('Kim');
  ria = await api.addKeeper('Ria', ['registrar']);
  rob = await api.addKeeper('Rob', ['registrar']);
  make = new Factory(keeper.http);
  registrar = new Factory(ria.http);
});

// tests send in seconds more than a keeper may in minutes
beforeEach(() => api.dataSource.query('delete from rate_limit'));

afterAll(() => api.close());

interface Bred {
  readonly lineId: string;
  readonly sire: IndividualView;
  readonly dam: IndividualView;
  readonly young: string;
  readonly other: string;
}

/** A line of two founders of unknown origin with two young. */
async function bred(): Promise<Bred> {
  const { id: speciesId } = await make.species();
  const { id: lineId } = await make.line({ speciesId, labelKind: 'trade-name' });
  const [sire, dam] = await make.individuals({ speciesId, lineId, sex: 'male' }, { speciesId, lineId, sex: 'female' });
  if (!sire || !dam) throw new Error('two were made');
  const clutch = await make.clutchOf(sire.id, dam.id);
  const [young, other] = await make.offspring(clutch.id, { animals: [{ lineId }, { lineId }] });
  return { lineId, sire, dam, young: young?.id ?? '', other: other?.id ?? '' };
}

const flagOf = async (id: string, code = 'origin-gap', by = keeper): Promise<FlagView> => {
  const { label } = bodyOf<LineageView>(await by.http.get(`/api/v1/individuals/${id}/lineage`).expect(200));
  const flag = label.flags.find((one) => one.code === code);
  if (!flag) throw new Error(`${id} does not carry ${code}`);
  return flag;
};
const auditOf = async (lineId: string): Promise<LineAuditView> =>
  bodyOf<LineAuditView>(await keeper.http.get(`/api/v1/lines/${lineId}/audit`).expect(200));
const lineFlagOf = async (lineId: string, code = 'origin-gap'): Promise<LineFlagView | undefined> =>
  (await auditOf(lineId)).flags.find((flag) => flag.code === code);
const acknowledge = (by: TestKeeper, body: object) => by.http.post('/api/v1/acknowledgements').send(body);

describe('a flag of an animal that a registrar acknowledged', () => {
  it('stays where it was, as grave as it was, with who, when and why beside it', async () => {
    const { young, other } = await bred();
    const before = await flagOf(young);
    expect(before.acknowledged).toBeNull();
    const made = await registrar.acknowledgement({ individualId: young, reason: 'The importer died.' });
    expect(made).toMatchObject({ keeper: 'Ria', individualId: young, lineId: null, code: 'origin-gap', causes: 2 });
    const after = await flagOf(young);
    expect(after).toEqual({
      ...before,
      acknowledged: {
        id: made.id,
        version: 1,
        by: 'Ria',
        at: made.createdAt,
        reason: 'The importer died.',
        otherCauses: false,
      },
    });
    expect((await flagOf(other)).acknowledged).toBeNull();
  });

  it('is told beside the flags of lists, too', async () => {
    const { young, other } = await bred();
    await registrar.acknowledgement({ individualId: young });
    const asked = await keeper.http.post('/api/v1/lineage/figures').send({ individuals: [young, other] });
    const { items } = bodyOf<FiguresView>(asked);
    expect(items.map(({ acknowledged }) => acknowledged)).toEqual([['origin-gap'], []]);
    expect(items.every(({ flags }) => flags.includes('origin-gap'))).toBe(true);
  });

  it('counts in the audit of its line, and stands in the table of its members', async () => {
    const { lineId, young } = await bred();
    await registrar.acknowledgement({ individualId: young });
    expect(await lineFlagOf(lineId)).toMatchObject({ members: 4, acknowledged: null, membersAcknowledged: 1 });
    const table = await keeper.http.get(`/api/v1/lines/${lineId}/audit.csv`).expect(200);
    const [head = '', ...rows] = table.text.trim().split('\n');
    const place = head.trim().split(',').indexOf('acknowledged');
    const cells = rows.map((row) => row.trim().split(',')[place]);
    expect(cells.sort()).toEqual(['', '', '', 'origin-gap']);
    expect(rows.every((row) => row.includes('origin-gap'))).toBe(true);
  });

  it('counts in the audit where its animals are named: those to take from breeding, and those whose label outruns its evidence', async () => {
    const { id: speciesId } = await make.species();
    const [own, foreign] = [await make.line({ speciesId, labelKind: 'locality' }), await make.line({ speciesId })];
    const [sire, dam] = await make.individuals(
      { speciesId, lineId: own.id, sex: 'male' },
      { speciesId, lineId: foreign.id, sex: 'female' },
    );
    const clutch = await make.clutchOf(sire?.id ?? '', dam?.id ?? '');
    const [young] = await make.offspring(clutch.id, { animals: [{ lineId: own.id }] });
    const individualId = young?.id ?? '';
    await registrar.acknowledgement({ individualId, code: 'outside-line' });
    await registrar.acknowledgement({ individualId, code: 'label-beyond-evidence' });
    const { removal, traced } = await auditOf(own.id);
    expect(removal.animals).toEqual([
      having({ animal: having({ id: individualId }), flags: ['outside-line'], acknowledged: ['outside-line'] }),
    ]);
    expect(new Map(traced.items.map(({ animal, isAcknowledged }) => [animal.id, isAcknowledged]))).toEqual(
      new Map([
        [sire?.id ?? '', false],
        [individualId, true],
      ]),
    );
  });

  it('says so where another record comes to cause it, and no longer where that is cleared', async () => {
    const { id: speciesId } = await make.species();
    const { id: lineId } = await make.line({ speciesId });
    const [sire, dam] = await make.individuals(
      { speciesId, lineId, sex: 'male' },
      { speciesId, lineId, sex: 'female' },
    );
    const source = await make.source();
    const animal = dam ?? { id: '', version: 1 };
    const origin = async (sourceId: string | null): Promise<void> => {
      await keeper.http.patch(`/api/v1/individuals/${animal.id}`).set('If-Match', '*').send({ sourceId }).expect(200);
    };
    await origin(source.id);
    const clutch = await make.clutchOf(sire?.id ?? '', animal.id);
    const [young] = await make.offspring(clutch.id, { animals: [{ lineId }] });
    const individualId = young?.id ?? '';
    const made = await registrar.acknowledgement({ individualId });
    const ofLine = await registrar.acknowledgement({ lineId });
    expect([made.causes, ofLine.causes]).toEqual([1, 1]);
    await origin(null);
    expect((await flagOf(individualId)).acknowledged).toMatchObject({ id: made.id, otherCauses: true });
    expect((await lineFlagOf(lineId))?.acknowledged).toMatchObject({ id: ofLine.id, otherCauses: true });
    await origin(source.id);
    expect((await flagOf(individualId)).acknowledged?.otherCauses).toBe(false);
    expect((await lineFlagOf(lineId))?.acknowledged?.otherCauses).toBe(false);
  });

  it('is told to strangers without names and words', async () => {
    const { young, sire, dam } = await bred();
    await registrar.acknowledgement({ individualId: young, reason: 'Mr. Veiled has died.' });
    for (const id of [young, sire.id, dam.id])
      await keeper.http
        .patch(`/api/v1/individuals/${id}`)
        .set('If-Match', '*')
        .send({ visibility: 'public' })
        .expect(200);
    await setPublicReading(api, true);
    const answer = await api.stranger.get(`/api/v1/individuals/${young}/lineage`).expect(200);
    await setPublicReading(api, false);
    const flag = bodyOf<LineageView>(answer).label.flags.find(({ code }) => code === 'origin-gap');
    expect(flag?.acknowledged).toMatchObject({ by: null, reason: null, otherCauses: false });
  });

  it('is compared by records that a reader may not see, without telling of them', async () => {
    const { young, sire } = await bred();
    const path = `/api/v1/individuals/${sire.id}`;
    await keeper.http.patch(path).set('If-Match', '*').send({ visibility: 'private' }).expect(200);
    const { id } = await registrar.acknowledgement({ individualId: young });
    const other = await api.addKeeper('Olga');
    const flag = await flagOf(young, 'origin-gap', other);
    expect(flag.records.map((record) => record.isPrivate).sort()).toEqual([false, true]);
    expect(flag.acknowledged).toMatchObject({ by: 'Ria', otherCauses: false });
    const told = await other.http.get(`/api/v1/journal?record=${id}`).expect(200);
    expect(told.text).toContain('2 records');
    expect(told.text).not.toContain(sire.id);
  });
});

describe('a flag of a line that a registrar acknowledged', () => {
  it('is acknowledged in the audit of the line, and of none of its animals', async () => {
    const { lineId, young } = await bred();
    const made = await registrar.acknowledgement({ lineId, reason: 'All of 1994 is lost.' });
    expect(await lineFlagOf(lineId)).toMatchObject({
      severity: 'weakens',
      members: 4,
      membersAcknowledged: 0,
      acknowledged: { id: made.id, by: 'Ria', reason: 'All of 1994 is lost.', otherCauses: false },
    });
    expect((await flagOf(young)).acknowledged).toBeNull();
  });
});

describe('to acknowledge a flag', () => {
  it('takes a registrar: not even the keeper of the animal may', async () => {
    const { young } = await bred();
    const body = { individualId: young, code: 'origin-gap', reason: 'mine' };
    await acknowledge(keeper, body).expect(403);
    await acknowledge(ria, body).expect(201);
  });

  it('takes a flag that is there: a refusal names those that are', async () => {
    const { young, lineId } = await bred();
    const ofAnimal = await acknowledge(ria, { individualId: young, code: 'mixed-labels', reason: 'no' }).expect(422);
    expect(bodyOf<ProblemBody>(ofAnimal).errors).toEqual([
      { pointer: '/code', detail: textWith('Carried are: origin-gap.') },
    ]);
    const ofLine = await acknowledge(ria, { lineId, code: 'mixed-labels', reason: 'no' }).expect(422);
    expect(bodyOf<ProblemBody>(ofLine).detail).toContain('origin-gap');
    const empty = await make.line({});
    const ofNone = await acknowledge(ria, { lineId: empty.id, code: 'origin-gap', reason: 'no' }).expect(422);
    expect(bodyOf<ProblemBody>(ofNone).detail).toContain('Carried are: none.');
  });

  it.each([
    ['nobody whose flag it is', {}, '/individualId'],
    ['two whose flag it is', { individualId: 'young', lineId: 'line' }, '/individualId'],
    ['an animal that is not there', { individualId: '00000000-0000-4000-8000-000000000000' }, '/individualId'],
    ['a line that is not there', { lineId: '00000000-0000-4000-8000-000000000000' }, '/lineId'],
    ['a flag of another name', { individualId: 'young', code: 'too-green' }, '/code'],
    ['no reason', { individualId: 'young', reason: '  ' }, '/reason'],
    ['a reason of a novel', { individualId: 'young', reason: 'x'.repeat(501) }, '/reason'],
  ])('with %s is refused, naming the field', async (_, fields, pointer) => {
    const { young, lineId } = await bred();
    const ids = new Map([
      ['young', young],
      ['line', lineId],
    ]);
    const sent = Object.entries<string>({ code: 'origin-gap', reason: 'lost', ...fields }).map(([field, value]) => [
      field,
      ids.get(value) ?? value,
    ]);
    const answer = await acknowledge(ria, Object.fromEntries(sent) as object).expect(422);
    expect(bodyOf<ProblemBody>(answer).errors).toEqual([having({ pointer })]);
  });

  it('of a withdrawn animal is refused', async () => {
    const animal = await make.individual();
    const withdrawal = keeper.http.post(`/api/v1/individuals/${animal.id}/withdrawal`).set('If-Match', '*');
    await withdrawal.send({ reason: 'twice' }).expect(201);
    const body = { individualId: animal.id, code: 'origin-gap', reason: 'no' };
    const answer = await acknowledge(ria, body).expect(422);
    expect(bodyOf<ProblemBody>(answer).errors).toEqual([having({ pointer: '/individualId' })]);
  });

  it('at once by two registrars makes one record, and the other is told', async () => {
    for (const subject of [{ individualId: (await bred()).young }, { lineId: (await bred()).lineId }]) {
      const body = { ...subject, code: 'origin-gap', reason: 'lost' };
      const answers = await Promise.all([ria, rob, ria, rob].map((by) => acknowledge(by, body)));
      expect(answers.map(({ status }) => status).sort()).toEqual([201, 409, 409, 409]);
      const refused = bodyOf<ProblemBody>(answers.find(({ status }) => status === 409) ?? { body: null });
      expect(refused.errors).toEqual([{ pointer: '/code', detail: textWith('acknowledged already') }]);
      const query = new URLSearchParams(subject as unknown as Record<string, string>).toString();
      const listed = await keeper.http.get(`/api/v1/acknowledgements?${query}&total=true`).expect(200);
      expect(listed.body).toMatchObject({ total: 1, items: [having(subject)] });
    }
  });

  it('twice with one key makes one record', async () => {
    const { young } = await bred();
    const body = { individualId: young, code: 'origin-gap', reason: 'lost' };
    const [first, again] = [
      await acknowledge(ria, body).set('Idempotency-Key', 'ack-1').expect(201),
      await acknowledge(ria, body).set('Idempotency-Key', 'ack-1').expect(201),
    ];
    expect(again.body).toEqual(first.body);
  });
});

describe('an acknowledgement', () => {
  it('is withdrawn by its version and restored; every step is in the journal and can be undone', async () => {
    const { young } = await bred();
    const { id } = await registrar.acknowledgement({ individualId: young });
    const path = `/api/v1/acknowledgements/${id}`;
    const reason = { reason: 'papers were found' };
    await keeper.http.post(`${path}/withdrawal`).set('If-Match', '"1"').send(reason).expect(403);
    await rob.http.post(`${path}/withdrawal`).send(reason).expect(428);
    await rob.http.post(`${path}/withdrawal`).set('If-Match', '"9"').send(reason).expect(412);
    const gone = await rob.http.post(`${path}/withdrawal`).set('If-Match', '"1"').send(reason).expect(201);
    expect((await flagOf(young)).acknowledged).toBeNull();
    expect((await keeper.http.get(path).expect(200)).body).toMatchObject({ version: 2, withdrawn: reason });
    await rob.http.post(`/api/v1/journal/${gone.headers['journal-entry']}/reversal`).expect(201);
    expect((await flagOf(young)).acknowledged).toMatchObject({ id, version: 3, by: 'Ria' });
    await rob.http.post(`${path}/withdrawal`).set('If-Match', '"3"').send(reason).expect(201);
    await rob.http.delete(`${path}/withdrawal`).set('If-Match', '"4"').expect(200);
    const told = await keeper.http.get(`/api/v1/journal?record=${id}`).expect(200);
    const { items } = bodyOf<{ items: { action: string; record: { title: string } }[] }>(told);
    expect(items.map(({ action }) => action).sort()).toEqual([
      'added',
      'restored',
      'restored',
      'withdrawn',
      'withdrawn',
    ]);
    expect(items[0]?.record.title).toMatch(/^acknowledgement of origin-gap of \d+-[\dX]$/);
  });

  it('that was withdrawn gives way to another one, and then cannot come back', async () => {
    const { young } = await bred();
    const first = await registrar.acknowledgement({ individualId: young });
    const path = `/api/v1/acknowledgements/${first.id}/withdrawal`;
    await ria.http.post(path).set('If-Match', '*').send({ reason: 'said anew' }).expect(201);
    const second = await new Factory(rob.http).acknowledgement({ individualId: young, reason: 'said anew' });
    expect((await flagOf(young)).acknowledged).toMatchObject({ id: second.id, by: 'Rob', reason: 'said anew' });
    await ria.http.delete(path).set('If-Match', '*').expect(409);
  });

  it('is undone where it was made by mistake', async () => {
    const { young } = await bred();
    const made = await acknowledge(ria, { individualId: young, code: 'origin-gap', reason: 'oops' }).expect(201);
    await ria.http.post(`/api/v1/journal/${made.headers['journal-entry']}/reversal`).expect(201);
    expect((await flagOf(young)).acknowledged).toBeNull();
  });

  it('of a private animal is hidden from other keepers', async () => {
    const animal = await make.individual({ visibility: 'private' });
    const { id } = await registrar.acknowledgement({ individualId: animal.id });
    const other = await api.addKeeper('Otto');
    await other.http.get(`/api/v1/acknowledgements/${id}`).expect(404);
    const listed = await other.http.get(`/api/v1/acknowledgements?individualId=${animal.id}`).expect(200);
    expect(bodyOf<{ items: AcknowledgementView[] }>(listed).items).toEqual([]);
  });

  it('is listed page by page, by animal and by line', async () => {
    const { young, other, lineId } = await bred();
    for (const subject of [{ individualId: young }, { individualId: other }, { lineId }])
      await registrar.acknowledgement(subject);
    const list = async (query: string): Promise<{ items: AcknowledgementView[]; next: string | null }> =>
      bodyOf(await keeper.http.get(`/api/v1/acknowledgements?${query}`).expect(200));
    expect((await list(`lineId=${lineId}`)).items).toEqual([having({ lineId, individualId: null })]);
    expect((await list(`individualId=${young}`)).items).toEqual([having({ individualId: young })]);
    expect((await list(`individualId=${lineId}`)).items).toEqual([]);
    const first = await list('limit=1');
    const second = await list(`limit=1&after=${first.next ?? ''}`);
    expect([first.items.length, second.items.length]).toEqual([1, 1]);
    expect(second.items[0]?.id).not.toBe(first.items[0]?.id);
  });
});
