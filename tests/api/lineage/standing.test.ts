import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ClaimView } from '../../../api/provenance/claims/claim.view.ts';
import type { EvidenceView } from '../../../api/provenance/evidence/evidence.view.ts';
import type { FiguresView } from '../../../api/lineage/figures.view.ts';
import type { LineageSetView } from '../../../api/lineage/lineage-set.view.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import type { PedigreeView } from '../../../api/lineage/pedigree.view.ts';
import type { WhatIfView } from '../../../api/lineage/what-if.view.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, startApiOn, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';

let api: TestApi;
let copy: TestApi;
let keeper: TestKeeper;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  copy = await startApiOn(api.databaseUrl);
  keeper = await api.addKeeper('Keeper of the line');
  make = new Factory(keeper.http);
});
afterAll(async () => {
  await copy.close();
  await api.close();
});

const label = 'Quebrada Honda';

interface Family {
  readonly speciesId: string;
  readonly lineId: string;
  readonly sourceId: string;
  readonly founders: readonly [string, string];
  /** One animal of each generation below the founders. */
  readonly young: readonly string[];
}

/** A pair from one source under the label, and so many generations of brother and sister below it. */
async function family(generations: number): Promise<Family> {
  const { id: speciesId } = await make.species();
  const { id: lineId } = await make.line({ speciesId, name: label });
  const { id: sourceId } = await make.source({ labelAsReceived: label });
  const born = { speciesId, lineId };
  const founders = await make.individuals({ ...born, sourceId, sex: 'male' }, { ...born, sourceId, sex: 'female' });
  const ids = founders.map(({ id }) => id) as [string, string];
  const young: string[] = [];
  let parents = ids;
  for (let generation = 0; generation < generations; generation++) {
    const clutch = await make.clutchOf(parents[0], parents[1]);
    const mates = await make.offspring(clutch.id, { count: 2, speciesId });
    parents = mates.map(({ id }) => id) as [string, string];
    young.push(parents[0]);
  }
  return { speciesId, lineId, sourceId, founders: ids, young };
}

const labelOf = async (id: string, from: TestApi = api): Promise<LineageView['label']> =>
  bodyOf<LineageView>(await from.http.get(`/api/v1/individuals/${id}/lineage`).expect(200)).label;

/** Lets the registrar decide about evidence. */
async function review(evidence: { readonly id: string }, verdict: 'accepted' | 'rejected'): Promise<void> {
  await api.http
    .post(`/api/v1/evidence/${evidence.id}/review`)
    .set('If-Match', '*')
    .send({ verdict, reason: 'as the paper says' })
    .expect(201);
}

async function accepted(claim: ClaimView, fields: Record<string, unknown> = {}): Promise<EvidenceView> {
  const evidence = await make.evidence({ claimId: claim.id, ...fields });
  await review(evidence, 'accepted');
  return evidence;
}

/** Animals of a species by their stored traced share, the greatest first. */
async function byTracedShare(speciesId: string): Promise<string[]> {
  const answer = await api.http
    .get('/api/v1/individuals')
    .query({ species: speciesId, sort: 'tracedShare', order: 'desc' })
    .expect(200);
  return (answer.body as { items: { id: string }[] }).items.map(({ id }) => id);
}

async function storedShare(id: string): Promise<number> {
  const [row] = await api.dataSource.query<{ share: number }[]>(
    'select traced_share as share from individual_figures where individual_id = $1',
    [id],
  );
  return row?.share ?? NaN;
}

describe('evidence on a source', () => {
  it('makes a froglet four generations on documented at once, in every copy of the service', async () => {
    const { speciesId, sourceId, young } = await family(4);
    const froglet = young[3] ?? '';
    const stated = { standing: 'stated', tracedShare: { expected: 0, least: 0 } };
    expect(await labelOf(froglet)).toMatchObject(stated);
    const claim = await make.claim({ sourceId, value: label });
    expect(await labelOf(froglet)).toMatchObject(stated);
    const note = await make.evidence({ claimId: claim.id });
    expect(await labelOf(froglet)).toMatchObject(stated);
    await review(note, 'accepted');
    const documented = {
      standing: 'documented',
      shares: [{ standing: 'documented', share: 1 }],
      tracedShare: { expected: 1, least: 1 },
    };
    for (const each of [api, copy]) expect(await labelOf(froglet, each)).toMatchObject(documented);
    expect(await storedShare(froglet)).toBe(1);
    expect(await byTracedShare(speciesId)).toContain(froglet);
  });

  it('is taken back with the review, the evidence, the claim or an undo', async () => {
    const { sourceId, young } = await family(2);
    const froglet = young[1] ?? '';
    const claim = await make.claim({ sourceId, value: label });
    const evidence = await accepted(claim);
    const expectTraced = async (share: number): Promise<void> => {
      expect((await labelOf(froglet)).tracedShare.expected).toBe(share);
      expect((await labelOf(froglet, copy)).tracedShare.expected).toBe(share);
      expect(await storedShare(froglet)).toBe(share);
    };
    await expectTraced(1);
    await review(evidence, 'rejected');
    await expectTraced(0);
    await review(evidence, 'accepted');
    await expectTraced(1);
    const withdrawal = (resource: string, id: string) => `/api/v1/${resource}/${id}/withdrawal`;
    const withdrawn = await keeper.http
      .post(withdrawal('evidence', evidence.id))
      .set('If-Match', '*')
      .send({ reason: 'belongs to another shipment' })
      .expect(201);
    await expectTraced(0);
    await keeper.http.post(`/api/v1/journal/${withdrawn.headers['journal-entry'] ?? ''}/reversal`).expect(201);
    await expectTraced(1);
    await keeper.http
      .post(withdrawal('claims', claim.id))
      .set('If-Match', '*')
      .send({ reason: 'said of the wrong source' })
      .expect(201);
    await expectTraced(0);
    await keeper.http.delete(withdrawal('claims', claim.id)).set('If-Match', '*').expect(200);
    await expectTraced(1);
  });

  it('that contradicts makes the label disputed, and traces nothing', async () => {
    const { sourceId, young } = await family(1);
    const claim = await make.claim({ sourceId, value: label });
    await accepted(claim);
    await accepted(claim, { kind: 'letter', bearing: 'contradicts' });
    expect(await labelOf(young[0] ?? '')).toMatchObject({ standing: 'disputed', tracedShare: { expected: 0 } });
  });

  it('corroborates by two documents of two hands, not by two of one', async () => {
    const { sourceId, young } = await family(1);
    const claim = await make.claim({ sourceId, value: label });
    await accepted(claim, { kind: 'invoice', issuedBy: 'A dealer' });
    await accepted(claim, { kind: 'letter', issuedBy: 'a  DEALER' });
    expect((await labelOf(young[0] ?? '')).standing).toBe('stated');
    await accepted(claim, { kind: 'letter', issuedBy: 'Another keeper' });
    expect(await labelOf(young[0] ?? '')).toMatchObject({ standing: 'corroborated', tracedShare: { expected: 1 } });
  });

  it('that names another place carries the label no further than somebody’s word', async () => {
    const { sourceId, young } = await family(1);
    await accepted(await make.claim({ sourceId, value: 'Río Verde' }));
    const found = await labelOf(young[0] ?? '');
    expect(found).toMatchObject({ standing: 'stated', tracedShare: { expected: 0, least: 0 } });
    expect(found.otherLabels).toEqual([{ label: 'Río Verde', share: 1 }]);
  });
});

describe('a claim about one founder', () => {
  it('counts for that founder alone; its source is told in two parts', async () => {
    const { sourceId, founders, young, speciesId } = await family(2);
    const froglet = young[1] ?? '';
    await accepted(await make.claim({ individualId: founders[0], value: label }));
    const lineage = bodyOf<LineageView>(await api.http.get(`/api/v1/individuals/${froglet}/lineage`).expect(200));
    expect(lineage.label).toMatchObject({
      shares: [
        { standing: 'documented', share: 0.5 },
        { standing: 'stated', share: 0.5 },
      ],
      tracedShare: { expected: 0.5, least: 0.5 },
    });
    expect(
      lineage.shares.map(({ source, standing, share }) => [source?.id, source?.standing, standing, share]),
    ).toEqual(
      expect.arrayContaining([
        [sourceId, 'documented', 'documented', 0.5],
        [sourceId, 'stated', 'stated', 0.5],
      ]),
    );
    expect(await storedShare(froglet)).toBe(0.5);
    expect((await byTracedShare(speciesId))[0]).toBe(founders[0]);
    const figures = bodyOf<FiguresView>(
      await api.http
        .post('/api/v1/lineage/figures')
        .send({ individuals: [froglet] })
        .expect(200),
    );
    expect(figures.items[0]?.standings).toEqual(lineage.label.shares);
    const chart = bodyOf<PedigreeView>(await api.http.get(`/api/v1/individuals/${froglet}/pedigree`).expect(200));
    const node = chart.nodes.find(({ id }) => id === froglet);
    expect(node && 'standings' in node ? node.standings : null).toEqual(lineage.label.shares);
    const set = bodyOf<LineageSetView>(
      await api.http.get('/api/v1/lineage/set').query({ species: speciesId }).expect(200),
    );
    expect(set.contributions.standings).toEqual([
      { standing: 'documented', share: 0.5 },
      { standing: 'stated', share: 0.5 },
    ]);
    const whatIf = bodyOf<WhatIfView>(
      await api.http.post(`/api/v1/individuals/${froglet}/lineage/what-if`).send({}).expect(200),
    );
    expect(whatIf.recorded.standings).toEqual(lineage.label.shares);
  });

  it('that nobody knows the source of fills the gap of its origin', async () => {
    const { speciesId, lineId } = await family(0);
    const [lone] = await make.individuals({ speciesId, lineId });
    expect((await labelOf(lone?.id ?? '')).flags.map(({ code }) => code)).toContain('origin-gap');
    await accepted(await make.claim({ individualId: lone?.id, value: label }));
    const found = await labelOf(lone?.id ?? '');
    expect(found).toMatchObject({ standing: 'documented', tracedShare: { expected: 1, least: 1 } });
    expect(found.flags).toEqual([]);
  });
});

describe('uncertain parents', () => {
  it('leave a traced share with its least, and shares by the odds', async () => {
    const { speciesId, lineId, sourceId, founders } = await family(0);
    await accepted(await make.claim({ sourceId, value: label }));
    const { id: otherSource } = await make.source({ labelAsReceived: label });
    const [other] = await make.individuals({ speciesId, lineId, sourceId: otherSource, sex: 'male' });
    const clutch = await make.clutch({
      sires: [
        { individualId: founders[0], weight: 3 },
        { individualId: other?.id, weight: 1 },
      ],
      dams: [{ individualId: founders[1] }],
    });
    const [froglet] = await make.offspring(clutch.id, { count: 1, speciesId });
    const found = await labelOf(froglet?.id ?? '');
    expect(found.tracedShare).toEqual({ expected: 0.875, least: 0.5 });
    expect(found.shares).toEqual([
      { standing: 'documented', share: 0.875 },
      { standing: 'stated', share: 0.125 },
    ]);
    expect(await storedShare(froglet?.id ?? '')).toBe(0.875);
  });
});

describe('a label that took the place of another', () => {
  it('is told with the old one to whoever may see the parents, and without it to others', async () => {
    const { speciesId, founders } = await family(0);
    const clutch = await make.clutchOf(founders[0], founders[1]);
    const [froglet] = await make.offspring(clutch.id, { count: 1, speciesId });
    const { id: lineId } = await make.line({ speciesId, name: 'Río Verde' });
    const change = (id: string, body: object) =>
      keeper.http.patch(`/api/v1/individuals/${id}`).set('If-Match', '*').send(body).expect(200);
    await change(froglet?.id ?? '', { lineId });
    const other = await api.addKeeper('Somebody else');
    const toldOf = async (http: TestKeeper['http']): Promise<string | undefined> => {
      const answer = await http.get(`/api/v1/individuals/${froglet?.id ?? ''}/lineage`).expect(200);
      return bodyOf<LineageView>(answer).label.flags.find(({ code }) => code === 'label-changed')?.detail;
    };
    expect(await toldOf(other.http)).toContain(label);
    for (const founder of founders) await change(founder, { visibility: 'private' });
    expect(await toldOf(keeper.http)).toContain(label);
    expect(await toldOf(other.http)).toContain('another label');
    expect(await toldOf(other.http)).not.toContain(label);
  });
});
