import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { ClaimView } from '../../../api/provenance/claims/claim.view.ts';
import type { EvidenceView } from '../../../api/provenance/evidence/evidence.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { setPublicReading } from '../people/route-world.ts';

let api: TestApi;
let keeper: TestKeeper;
let registrar: TestKeeper;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  keeper = await api.addKeeper('Kim');
  registrar = await api.addKeeper('Ria', ['registrar']);
  make = new Factory(keeper.http);
});

afterAll(() => api.close());

const review = (by: TestKeeper, id: string, verdict: string) =>
  by.http.post(`/api/v1/evidence/${id}/review`).set('If-Match', '*').send({ verdict, reason: 'looked at the paper' });

const claimOf = async (id: string): Promise<ClaimView> =>
  (await keeper.http.get(`/api/v1/claims/${id}`).expect(200)).body as ClaimView;

describe('a claim', () => {
  it('is somebody’s word until evidence was accepted, and stands by it at once', async () => {
    const claim = await make.claim({ value: 'Quebrada Honda', statedBy: 'the importer', statedOn: '1994~' });
    expect(claim.standing).toMatchObject({ standing: 'stated', decidedBy: [] });
    const note = await make.evidence({ claimId: claim.id, kind: 'field-note', issuedBy: 'the collector' });
    expect(await claimOf(claim.id)).toMatchObject({ standing: { standing: 'stated' }, evidence: { pending: 1 } });
    const reviewed = await review(registrar, note.id, 'accepted').expect(201);
    expect(reviewed.body).toMatchObject({
      review: 'accepted',
      reviewed: { reviewer: 'Ria', reason: 'looked at the paper' },
    });
    expect((await claimOf(claim.id)).standing).toMatchObject({
      standing: 'documented',
      because: "documented, because a collector's field note names it.",
      decidedBy: [note.id],
    });
    await review(registrar, note.id, 'rejected').expect(201);
    expect((await claimOf(claim.id)).standing.standing).toBe('stated');
  });

  it('is once about a record: its evidence stands together', async () => {
    const { sourceId, value } = await make.claim();
    const again = await keeper.http
      .post('/api/v1/claims')
      .send({ sourceId, aspect: 'locality', value: value.toUpperCase() })
      .expect(409);
    expect(again.body).toMatchObject({ errors: [{ pointer: '/value' }] });
  });

  it.each([
    ['nothing that it is about', {}, '/sourceId'],
    ['two things that it is about', { sourceId: 'a', lineId: 'b' }, '/sourceId'],
    ['a latitude alone', { decimalLatitude: -3.5 }, '/decimalLatitude'],
    ['coordinates without a datum', { decimalLatitude: -3.5, decimalLongitude: -79.5 }, '/decimalLatitude'],
    ['an uncertainty without coordinates', { coordinateUncertaintyM: 100 }, '/coordinateUncertaintyM'],
    [
      'an uncertainty of zero',
      { decimalLatitude: 1, decimalLongitude: 1, geodeticDatum: 'EPSG:4326', coordinateUncertaintyM: 0 },
      '/coordinateUncertaintyM',
    ],
    ['a country in words', { countryCode: 'Ecuador' }, '/countryCode'],
    ['a date that is none', { statedOn: 'about 1994' }, '/statedOn'],
  ])('with %s is refused, naming the field', async (what, fields, pointer) => {
    const [source, line] = [await make.source(), await make.line()];
    const ids = { sourceId: source.id, lineId: line.id };
    const about = what.includes('that it is about')
      ? Object.fromEntries(Object.keys(fields).map((key) => [key, ids[key as keyof typeof ids]]))
      : { sourceId: source.id, ...fields };
    const answer = await keeper.http
      .post('/api/v1/claims')
      .send({ aspect: 'locality', value: 'Quebrada Honda', ...about });
    expect([409, 422]).toContain(answer.status);
    expect(answer.body).toMatchObject({ errors: [{ pointer }] });
  });

  it('keeps the words of the label whatever happens', async () => {
    const claim = await make.claim({ verbatimLocality: 'Q. Honda, km 14' });
    const asked = keeper.http.patch(`/api/v1/claims/${claim.id}`).set('If-Match', '*');
    await asked.send({ verbatimLocality: 'Quebrada Honda' }).expect(422);
    await expect(
      api.dataSource.query(`update claim set verbatim_locality = 'other' where id = $1`, [claim.id]),
    ).rejects.toThrow(/never altered/);
    expect((await claimOf(claim.id)).place.verbatimLocality).toBe('Q. Honda, km 14');
  });

  it('is changed by its keeper and by nobody else but a registrar', async () => {
    const claim = await make.claim({ notes: 'heard' });
    const other = await api.addKeeper('Otto');
    const change = (by: TestKeeper) => by.http.patch(`/api/v1/claims/${claim.id}`).set('If-Match', '*');
    await change(other).send({ notes: 'x' }).expect(403);
    await change(keeper).send({ notes: 'read' }).expect(200);
    await change(registrar).send({ notes: 'checked' }).expect(200);
  });

  it('is listed by what it is about, a page after another', async () => {
    const { id: sourceId } = await make.source();
    const made = [await make.claim({ sourceId }), await make.claim({ sourceId }), await make.claim({ sourceId })];
    const first = await keeper.http.get(`/api/v1/claims?sourceId=${sourceId}&limit=2&total=true`).expect(200);
    const { items, next, total } = first.body as { items: ClaimView[]; next: string; total: number };
    const second = await keeper.http.get(`/api/v1/claims?sourceId=${sourceId}&limit=2&after=${next}`).expect(200);
    const rest = (second.body as { items: ClaimView[] }).items;
    expect([...items, ...rest].map(({ id }) => id)).toEqual(made.map(({ id }) => id));
    expect(total).toBe(3);
  });
});

describe('evidence', () => {
  it('is never reviewed by who brought it, not even by a registrar', async () => {
    const own = await new Factory(registrar.http).evidence();
    const answer = await review(registrar, own.id, 'accepted').expect(403);
    expect(answer.body).toMatchObject({ detail: 'Nobody reviews their own evidence. Ask another registrar.' });
    await review(keeper, own.id, 'accepted').expect(403);
    await review(await api.addKeeper('Rob', ['registrar']), own.id, 'accepted').expect(201);
  });

  it('stays as it was reviewed: a change needs a new piece', async () => {
    const { id } = await make.evidence();
    const change = () => keeper.http.patch(`/api/v1/evidence/${id}`).set('If-Match', '*').send({ reference: 'other' });
    await change().expect(200);
    await review(registrar, id, 'accepted').expect(201);
    expect((await change().expect(409)).body).toMatchObject({
      detail: expect.stringContaining('was reviewed') as string,
    });
  });

  it('counts no longer once it or its claim was withdrawn, and needs the claim to come back', async () => {
    const claim = await make.claim();
    const { id } = await make.evidence({ claimId: claim.id });
    await review(registrar, id, 'accepted').expect(201);
    const withdraw = (path: string) =>
      keeper.http.post(`/api/v1/${path}/withdrawal`).set('If-Match', '*').send({ reason: 'a mistake' });
    await withdraw(`evidence/${id}`).expect(201);
    expect((await claimOf(claim.id)).standing.standing).toBe('stated');
    await withdraw(`claims/${claim.id}`).expect(201);
    const restore = (path: string) => keeper.http.delete(`/api/v1/${path}/withdrawal`).set('If-Match', '*');
    const refused = await restore(`evidence/${id}`).expect(409);
    expect(refused.body).toMatchObject({ dependants: [{ kind: 'claim', id: claim.id }] });
    await restore(`claims/${claim.id}`).expect(200);
    await restore(`evidence/${id}`).expect(200);
    expect((await claimOf(claim.id)).standing.standing).toBe('documented');
  });

  it('repeats only evidence of the same claim', async () => {
    const [one, other] = [await make.evidence(), await make.evidence()];
    const told = { claimId: one.claimId, bearing: 'supports', kind: 'letter', reference: 'a copy' };
    const wrong = await keeper.http
      .post('/api/v1/evidence')
      .send({ ...told, repeatsId: other.id })
      .expect(422);
    expect(wrong.body).toMatchObject({ errors: [{ pointer: '/repeatsId' }] });
    await keeper.http
      .post('/api/v1/evidence')
      .send({ ...told, repeatsId: one.id })
      .expect(201);
  });

  it('waits in a list until somebody reviews it', async () => {
    const { id } = await make.evidence();
    const waiting = async (): Promise<string[]> => {
      const answer = await registrar.http.get('/api/v1/evidence?review=pending&limit=200').expect(200);
      return (answer.body as { items: EvidenceView[] }).items.map((item) => item.id);
    };
    expect(await waiting()).toContain(id);
    await review(registrar, id, 'rejected').expect(201);
    expect(await waiting()).not.toContain(id);
  });

  it('is reviewed on the version that the registrar saw', async () => {
    const { id, version } = await make.evidence();
    await keeper.http
      .patch(`/api/v1/evidence/${id}`)
      .set('If-Match', '*')
      .send({ reference: 'another paper' })
      .expect(200);
    await registrar.http
      .post(`/api/v1/evidence/${id}/review`)
      .set('If-Match', `"${version}"`)
      .send({ verdict: 'accepted', reason: 'seen' })
      .expect(412);
  });
});

describe('a stranger, where the club is open to read', () => {
  beforeEach(() => setPublicReading(api, true));

  it('is told what is claimed of a public source, without names, words of the place and coordinates', async () => {
    const source = await make.source({ visibility: 'public' });
    const claim = await make.claim({
      sourceId: source.id,
      value: 'Quebrada Honda',
      statedBy: 'the importer',
      verbatimLocality: 'Q. Honda, behind the bridge',
      countryCode: 'EC',
      decimalLatitude: -3.12345,
      decimalLongitude: -79.54321,
      geodeticDatum: 'EPSG:4326',
    });
    const answer = await api.stranger.get(`/api/v1/claims/${claim.id}`).expect(200);
    expect(answer.body).toMatchObject({
      value: 'Quebrada Honda',
      keeper: null,
      statedBy: null,
      place: { verbatimLocality: null, countryCode: 'EC' },
    });
    expect((answer.body as ClaimView).place.informationWithheld).not.toBeNull();
    expect(answer.text).not.toMatch(/3\.12345|79\.54321|bridge|importer/);
  });

  it('is told nothing of a source that is not public, and no evidence at all', async () => {
    const claim = await make.claim();
    await api.stranger.get(`/api/v1/claims/${claim.id}`).expect(404);
    await api.stranger.get('/api/v1/evidence').expect(401);
  });
});
