import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { ClutchView } from '../../../api/register/clutches/clutch.view.ts';
import type { IndividualItemView, IndividualView } from '../../../api/register/individuals/individual.view.ts';
import type { PairingView } from '../../../api/register/pairings/pairing.view.ts';
import type { DescendantsView } from '../../../api/lineage/descendants/descendants.view.ts';
import type { KinshipView } from '../../../api/lineage/kinship.view.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import type { IndividualNodeView, PedigreeView } from '../../../api/lineage/pedigree.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { makeSecretRegister, setPublicReading, type SecretRegister } from './secret-register.ts';

let api: TestApi;
let register: SecretRegister;
let owner: TestKeeper;
let other: TestKeeper;
let speciesId: string;
/** Makes records of the owner. */
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  register = await makeSecretRegister(api);
  ({ owner, other } = register);
  make = new Factory(owner.http);
  ({ speciesId } = await read<IndividualView>(owner.http, `individuals/${idOf('the public young')}`));
  await setPublicReading(api, true);
});

beforeEach(() => api.dataSource.query('delete from rate_limit'));

afterAll(() => api.close());

const idOf = (name: string): string => register.ids[name] ?? '';
const numberOf = (name: string): string => register.numbers[name] ?? '';

async function read<T>(http: TestKeeper['http'], path: string): Promise<T> {
  return (await http.get(`/api/v1/${path}`).expect(200)).body as T;
}

describe('the visibility of a record', () => {
  it('is the club where nothing is said, for animals, sources, remarks, young and sheets', async () => {
    const [sire, dam] = await make.individuals({ speciesId, sex: 'male' }, { speciesId, sex: 'female' });
    const clutch = await make.clutchOf(sire?.id ?? '', dam?.id ?? '');
    const [young] = await make.offspring(clutch.id);
    const remark = await make.observation({ individualId: young?.id });
    const source = await make.source();
    expect([sire, young, remark, source].map((record) => record?.visibility)).toEqual(['club', 'club', 'club', 'club']);
    const sheet = 'code,species,source\nPLAIN-1,Inventus tabula,PLAIN-SOURCE\n';
    await owner.http.post('/api/v1/imports').set('Content-Type', 'text/csv').send(sheet).expect(201);
    const found = await read<{ items: IndividualItemView[] }>(owner.http, 'individuals?code=PLAIN-1');
    expect(found.items.map(({ visibility }) => visibility)).toEqual(['club']);
  });

  it.each(['private', 'club', 'public'])('is what the sender of a sheet says: %s', async (visibility) => {
    const sheet = `code,species,source\nSAID-${visibility},Inventus tabula,SAID-SOURCE-${visibility}\n`;
    await owner.http
      .post(`/api/v1/imports?visibility=${visibility}`)
      .set('Content-Type', 'text/csv')
      .send(sheet)
      .expect(201);
    const rows = await api.dataSource.query<unknown[]>(
      `select visibility from individual where code = $1 union all select visibility from source where code = $2`,
      [`SAID-${visibility}`, `SAID-SOURCE-${visibility}`],
    );
    expect(rows).toEqual([{ visibility }, { visibility }]);
  });

  it('is changed by the keeper, and read and filtered by', async () => {
    const animal = await make.individual({ speciesId, visibility: 'private' });
    await other.http.get(`/api/v1/individuals/${animal.id}`).expect(404);
    const change = (visibility: string) =>
      owner.http.patch(`/api/v1/individuals/${animal.id}`).set('If-Match', '*').send({ visibility });
    await change('club').expect(200);
    await other.http.get(`/api/v1/individuals/${animal.id}`).expect(200);
    await api.stranger.get(`/api/v1/individuals/${animal.id}`).expect(404);
    await change('public').expect(200);
    expect(await read(api.stranger, `individuals/${animal.id}`)).toMatchObject({ keeper: null, keeperId: null });
    await change('secret').expect(422);
    const found = await read<{ items: IndividualItemView[] }>(other.http, 'individuals?visibility=public&limit=200');
    expect(found.items.map(({ id }) => id)).toContain(animal.id);
    expect(new Set(found.items.map(({ visibility }) => visibility))).toEqual(new Set(['public']));
    for (const list of ['individuals', 'sources', 'observations'])
      expect(
        await read(
          other.http,
          `${list}?visibility=private&keeper=${list === 'individuals' ? owner.id : ''}`.replace(/&keeper=$/, ''),
        ),
      ).toMatchObject({
        items: list === 'observations' ? [{ text: 'remark of ben' }] : [],
      });
  });

  it('of a remark is made private by nobody but who made it', async () => {
    const remark = await make.observation({ individualId: idOf('the public young') });
    const hide = (http: TestKeeper['http']) =>
      http.patch(`/api/v1/observations/${remark.id}`).set('If-Match', '*').send({ visibility: 'private' });
    const refused = await hide(api.http).expect(422);
    expect(refused.body).toMatchObject({ errors: [{ pointer: '/visibility' }] });
    await hide(owner.http).expect(200);
    await api.http.get(`/api/v1/observations/${remark.id}`).expect(404);
  });
});

describe('a reference to a private animal', () => {
  it('says only that it is there, the same one by the same name throughout an answer', async () => {
    const clutch = await read<ClutchView>(other.http, `clutches/${idOf('the group clutch')}`);
    const pairs = clutch.parents.mode === 'pairs' ? clutch.parents.pairs.map(({ a, b }) => [a, b]) : [];
    const hidden = pairs.flat().filter(({ isPrivate }) => isPrivate);
    expect(hidden).toHaveLength(4);
    expect(hidden[0]).toEqual({
      id: 'private-1',
      number: null,
      code: null,
      sex: 'unsexed',
      status: 'unknown',
      isPrivate: true,
    });
    expect(new Set(hidden.map(({ id }) => id))).toEqual(new Set(['private-1', 'private-2']));
    const pairing = await read<PairingView>(other.http, `pairings/${idOf('the mixed pairing')}`);
    expect(pairing.members.map(({ individual, joined }) => [individual.isPrivate, joined])).toEqual([
      [false, '2003-03-03'],
      [true, null],
    ]);
    expect(pairing.notation).toBe('0.1.0');
    const mixed = await read<ClutchView>(other.http, `clutches/${idOf('the mixed clutch')}`);
    expect([mixed.young.length, mixed.privateYoung, mixed.warnings]).toEqual([2, 1, []]);
    const all = await read<ClutchView>(api.http, `clutches/${idOf('the mixed clutch')}`);
    expect([all.young.length, all.privateYoung]).toEqual([3, 0]);
    expect(all.warnings.map(({ code }) => code)).toEqual(['young-sire', 'close-clutches', 'cross']);
  });

  it('stands in a pedigree as nothing but its place, and every edge leads to a node', async () => {
    const charts = await Promise.all(
      [api.http, other.http, api.stranger].map((http) =>
        read<PedigreeView>(http, `individuals/${numberOf('the public young')}/pedigree?generations=12`),
      ),
    );
    const [whole, ...partial] = charts;
    for (const chart of partial) {
      expect([chart.nodes.length, chart.edges.length]).toEqual([whole?.nodes.length, whole?.edges.length]);
      const ids = new Set(chart.nodes.map(({ id }) => id));
      expect(chart.edges.filter(({ from, to }) => !ids.has(from) || !ids.has(to))).toEqual([]);
    }
    const hidden = partial[0]?.nodes.filter(
      (node): node is IndividualNodeView => node.kind === 'individual' && node.isPrivate,
    );
    expect(hidden).toHaveLength(3);
    for (const node of hidden ?? [])
      expect(node).toMatchObject({
        number: null,
        code: null,
        sex: 'unsexed',
        hatched: null,
        line: null,
        species: null,
        inbreeding: null,
        standings: [],
      });
    expect(partial[0]?.nodes.filter((node) => node.isPrivate).map(({ id }) => id)).toEqual([
      'private-1',
      'private-2',
      'private-3',
      'private-clutch-1',
      'private-source-1',
    ]);
  });

  it('stands among descendants as on the page of its parent, without shares', async () => {
    for (const http of [api.http, other.http, api.stranger]) {
      const parent = numberOf('the public young');
      const { root, families } = await read<DescendantsView>(http, `individuals/${parent}/descendants?generations=3`);
      const { young } = await read<IndividualView>(http, `individuals/${root.id}`);
      expect(families.filter((family) => family.parent === root.id)).toMatchObject(young);
      const told = families.flatMap(({ animals }) => animals);
      for (const { isPrivate, standings } of told) expect(standings.length > 0).toBe(!isPrivate);
    }
  });

  it('is counted as a private record where it stands in the way of a withdrawal', async () => {
    // the owner's clutch has a young of another keeper who keeps it to himself
    const clutch = await make.clutch({ laid: '2020-02-02' });
    const young = await new Factory(other.http).individual({
      speciesId,
      clutchId: clutch.id,
      visibility: 'private',
      code: 'BEN-VEILED',
    });
    const refused = await owner.http
      .post(`/api/v1/clutches/${clutch.id}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'a try' })
      .expect(409);
    expect((refused.body as { dependants: unknown }).dependants).toEqual([
      { kind: 'individual', id: 'private-1', name: 'a private record', isPrivate: true },
    ]);
    expect(refused.text).not.toContain(young.id);
  });

  it('closes a loop without being named', async () => {
    const top = await make.individual({ speciesId, sex: 'male' });
    const hidden = await new Factory(other.http).individual({
      speciesId,
      clutchId: (await make.clutch({ sires: [{ individualId: top.id }] })).id,
      sex: 'male',
      code: 'BEN-LOOP',
    });
    const below = await make.clutch({ sires: [{ individualId: hidden.id }] });
    await other.http
      .patch(`/api/v1/individuals/${hidden.id}`)
      .set('If-Match', '*')
      .send({ visibility: 'private' })
      .expect(200);
    const refused = await owner.http
      .patch(`/api/v1/individuals/${top.id}`)
      .set('If-Match', '*')
      .send({ clutchId: below.id })
      .expect(409);
    expect(refused.text).toContain('a private animal');
    expect(refused.text).not.toMatch(new RegExp(`BEN-LOOP|${hidden.number}|${hidden.id}`));
  });
});

describe('the figures of an animal with private ancestors', () => {
  it('are the same for everybody who may see it', async () => {
    const path = `individuals/${idOf('the public young')}/lineage`;
    const [all, some, few] = await Promise.all(
      [api.http, other.http, api.stranger].map((http) => read<LineageView>(http, path)),
    );
    const figures = (lineage: LineageView | undefined) => ({
      ...lineage,
      inbreeding: {
        ...lineage?.inbreeding,
        pairs: lineage?.inbreeding.pairs.map(({ probability, kinship }) => [probability, kinship]),
      },
      label: {
        ...lineage?.label,
        otherLabels: [],
        flags: lineage?.label.flags.map(({ code, severity, records }) => [code, severity, records.length]),
      },
      shares: lineage?.shares.map(({ share }) => share),
    });
    expect(figures(some)).toEqual(figures(all));
    expect(figures(few)).toEqual(figures(all));
    const otherShare = (lineage: LineageView | undefined): number =>
      (lineage?.label.otherLabels ?? []).reduce((sum, { share }) => sum + share, 0);
    expect(otherShare(some)).toBeCloseTo(otherShare(all), 12);
    expect(some?.label.otherLabels.map(({ label }) => label)).toEqual([null]);
    expect(all?.label.otherLabels.map(({ label }) => label)).toEqual(['Label Verhuellt']);
  });

  it('and kinships are the same among all that may be seen', async () => {
    const individuals = ['the club dam', 'the club young', 'the public young', 'a young of the group'].map(idOf);
    const ask = async (http: TestKeeper['http']): Promise<number[]> =>
      (
        (await http.post('/api/v1/lineage/kinship').send({ individuals }).expect(200)).body as KinshipView
      ).kinship.flat();
    const [all, some] = [await ask(api.http), await ask(other.http)];
    expect(Math.max(...all.map((value, place) => Math.abs(value - (some[place] ?? NaN))))).toBeLessThan(1e-12);
    // the young of the group may be inbred through animals that the other keeper cannot see
    expect(all[15]).toBeGreaterThan(0.5);
  });
});

describe("another keeper's record", () => {
  it('is changed through no route beneath it', async () => {
    const { http } = other;
    const [clutch, pairing, animal] = [idOf('the mixed clutch'), idOf('the mixed pairing'), idOf('the public young')];
    const { members } = await read<PairingView>(owner.http, `pairings/${pairing}`);
    const stay = members[0]?.id ?? '';
    const own = await new Factory(http).individual({ speciesId });
    const any = { 'If-Match': '*' };
    const asStored = (): Promise<unknown[]> =>
      api.dataSource.query('select version, xmin::text from clutch where id = $1', [clutch]);
    const before = await asStored();
    for (const [request, ask] of [
      ['add member', http.post(`/api/v1/pairings/${pairing}/members`).set(any).send({ individualId: own.id })],
      ['change member', http.patch(`/api/v1/pairings/${pairing}/members/${stay}`).set(any).send({ left: '2020' })],
      ['remove member', http.delete(`/api/v1/pairings/${pairing}/members/${stay}`).set(any)],
      ['raise young', http.post(`/api/v1/clutches/${clutch}/offspring`).send({ count: 1 })],
      [
        'name parents',
        http
          .patch(`/api/v1/clutches/${clutch}`)
          .set(any)
          .send({ sires: [{ individualId: null }] }),
      ],
      ['take a correction', http.patch(`/api/v1/clutches/${clutch}`).set(any).send({ parentsFromPairing: true })],
      ['accept a warning', http.post(`/api/v1/clutches/${clutch}/warnings/no-eggs/confirmation`).send({ reason: 'a' })],
      ['reject it', http.delete(`/api/v1/clutches/${clutch}/warnings/young-sire/confirmation`)],
      [
        'accept one of an animal',
        http.post(`/api/v1/individuals/${animal}/warnings/size/confirmation`).send({ reason: 'a' }),
      ],
      ['take that back', http.delete(`/api/v1/individuals/${animal}/warnings/size/confirmation`)],
      ['withdraw', http.post(`/api/v1/clutches/${clutch}/withdrawal`).set(any).send({ reason: 'a' })],
    ] as const)
      expect([request, (await ask).status]).toEqual([request, 403]);
    expect(await asStored()).toEqual(before);
  });
});
