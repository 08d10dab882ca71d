import { trio, type Factory } from '../../support/factories.ts';
import { acknowledgementRoutes } from './acknowledgement-routes.ts';
import { fileRoutes } from './file-routes.ts';
import { foreignRoutes } from './foreign-routes.ts';
import { lineageRoutes } from './lineage-routes.ts';
import { matchRoutes } from './match-routes.ts';
import { sheetRoutes } from './sheet-routes.ts';
import { todayRoutes } from './today-routes.ts';
import { togetherRoutes } from './together-routes.ts';
import { transferRoutes } from './transfer-routes.ts';
import type { World } from './route-world.ts';

/** Who comes to a route: the columns of the table. */
export const askers = [
  'stranger',
  'stranger, public',
  'keeper',
  'owner',
  'registrar',
  'administrator',
  'reader',
] as const;
export type Asker = (typeof askers)[number];

/** What happens to whom: ✓ is answered, a number is the refusal. In the order of the columns. */
type Outcomes = readonly ('✓' | 401 | 403 | 404)[];

/** What is sent so that whoever may do it succeeds; made anew for each asker, with records that belong to the owner. */
interface Ask {
  /** What stands in the address in place of {id} and so on, in order. */
  readonly at?: readonly string[];
  readonly query?: string;
  readonly body?: object;
  readonly sheet?: string;
  /** A file as the whole body. */
  readonly bytes?: Buffer;
  /** A form with a file, and its fields. */
  readonly form?: { readonly file: Buffer; readonly fields?: Record<string, string> };
}

export interface Row {
  readonly outcomes: Outcomes;
  readonly ask: (world: World, asker: Asker) => Promise<Ask> | Ask;
}

/*
 * The columns: a stranger while public reading is off, and on; a keeper without a role; the keeper whose record it is; a registrar;
 * an administrator; and a token for reading only, made by somebody who has every role. Written from what a club wants, not from
 * permissions.ts.
 */
const anyone: Outcomes = ['✓', '✓', '✓', '✓', '✓', '✓', '✓'];
const reading: Outcomes = [401, '✓', '✓', '✓', '✓', '✓', '✓'];
const membersReading: Outcomes = [401, 401, '✓', '✓', '✓', '✓', '✓'];
const adding: Outcomes = [401, 401, '✓', '✓', '✓', '✓', 403];
const changing: Outcomes = [401, 401, 403, '✓', '✓', 403, 403];

const administering: Outcomes = [401, 401, 403, 403, 403, '✓', 403];
const nobody: Outcomes = [403, 403, 403, 403, 403, 403, 403];
const merging: Outcomes = [401, 401, 403, 403, '✓', 403, 403];
const reviewing: Outcomes = [401, 401, 403, 403, '✓', 403, 403];

const nothing = (): Ask => ({});
const row = (outcomes: Outcomes, ask: Row['ask'] = nothing): Row => ({ outcomes, ask });

type Made = { readonly id: string };
const one =
  (make: (factory: Factory) => Promise<Made>, body?: object): Row['ask'] =>
  async ({ owner }) => ({ at: [(await make(owner)).id], ...(body ? { body } : {}) });

const species = (make: Factory): Promise<Made> => make.species();
const line = (make: Factory): Promise<Made> => make.line();
const source = (make: Factory): Promise<Made> => make.source();
const individual = (make: Factory): Promise<Made> => make.individual();
const pairing = (make: Factory): Promise<Made> => make.pairing();
const observation = async (make: Factory): Promise<Made> =>
  make.observation({ individualId: (await make.individual()).id });
const claim = (make: Factory): Promise<Made> => make.claim();
const evidence = (make: Factory): Promise<Made> => make.evidence();
async function clutch(make: Factory): Promise<Made> {
  const { sire, dam } = await trio(make);
  return make.clutchOf(sire.id, dam.id, { laid: '2021-04-12' });
}

/** One that was withdrawn, to be restored. */
const withdrawn =
  (kind: string, make: (factory: Factory) => Promise<Made>): Row['ask'] =>
  async (world) => {
    const { id } = await make(world.owner);
    await world.withdraw(kind, id);
    return { at: [id] };
  };

/** An animal that strangers may see, too. */
const publicAnimal: Row['ask'] = async (world) => {
  const { id } = await individual(world.owner);
  await world.publish();
  return { at: [id] };
};

/** Reading a list and one record, adding, changing, withdrawing and restoring: the same for every kind. */
function recordRoutes(
  kind: string,
  make: (factory: Factory) => Promise<Made>,
  read: Outcomes,
  added: Row['ask'],
  change: object,
): Record<string, Row> {
  return {
    [`GET /api/v1/${kind}`]: row(read),
    [`GET /api/v1/${kind}/{id}`]: row(read, async (world) => {
      const { id } = await make(world.owner);
      await world.publish();
      return { at: [id] };
    }),
    [`POST /api/v1/${kind}`]: row(adding, added),
    [`PATCH /api/v1/${kind}/{id}`]: row(changing, one(make, change)),
    [`POST /api/v1/${kind}/{id}/withdrawal`]: row(changing, one(make, { reason: 'entered twice' })),
    [`DELETE /api/v1/${kind}/{id}/withdrawal`]: row(changing, withdrawn(kind, make)),
  };
}

async function member(world: World): Promise<{ pairingId: string; memberId: string }> {
  const animal = await world.owner.individual();
  const { id, members } = await world.owner.pairing({ members: [{ individualId: animal.id, joined: '2020' }] });
  return { pairingId: id, memberId: members[0]?.id ?? '' };
}

const confirmed = { reason: 'seen so' };

/** A clutch with a warning: its dam was a few months old. */
async function youngMother(make: Factory): Promise<string> {
  const { sire, speciesId } = await trio(make);
  const dam = await make.individual({ speciesId, sex: 'female', hatched: '2020-11-10' });
  return (await make.clutchOf(sire.id, dam.id, { laid: '2021-04-12' })).id;
}

/** An animal with a warning: it left the water when it had just hatched. */
async function earlyLand(make: Factory): Promise<string> {
  const { speciesId } = await trio(make);
  return (await make.individual({ speciesId, hatched: '2021-04-14', outOfWater: '2021-05-01' })).id;
}

const animals = async ({ owner }: World): Promise<string[]> =>
  (await owner.individuals({ sex: 'male' }, { sex: 'female' })).map(({ id }) => id);

const ofAnimals = async (world: World): Promise<Ask> => ({ body: { individuals: await animals(world) } });

/** Two records of the owner that may be of one animal. */
async function twoRecords({ owner }: World): Promise<[string, string]> {
  const { id: speciesId } = await owner.species();
  return [(await owner.individual({ speciesId })).id, (await owner.individual({ speciesId })).id];
}

/** A merging, made by the registrar. */
async function merged(world: World): Promise<string> {
  const [keptId, duplicateId] = await twoRecords(world);
  const body = { keptId, duplicateId, take: [], reason: 'entered twice' };
  const answer = await world.askers.registrar.post('/api/v1/merges').send(body).expect(201);
  return (answer.body as { id: string }).id;
}

/** An import of the owner. */
async function imported({ askers: { owner }, fresh }: World): Promise<string> {
  const sheet = `code,species\n${fresh('W-')},Inventus walk\n`;
  const answer = await owner.post('/api/v1/imports').type('text/csv').send(sheet).expect(201);
  return (answer.body as Made).id;
}

/** The entry of a change that the owner made. */
async function noted({ owner, askers }: World): Promise<string> {
  const { id } = await owner.individual();
  const answer = await askers.owner.patch(`/api/v1/individuals/${id}`).set('If-Match', '*').send({ notes: 'calls' });
  return answer.headers['journal-entry'] ?? 'none';
}

/** A keeper whom no asker is. */
function somebody(body?: object): Row['ask'] {
  return async ({ api, fresh }) => ({ at: [(await api.addKeeper(fresh('Somebody '))).id], ...(body ? { body } : {}) });
}

/** An invitation that nobody used yet. */
async function invited({ api }: World): Promise<{ id: string; secret: string }> {
  const answer = await api.http.post('/api/v1/links').send({ kind: 'invitation' }).expect(201);
  const { id, path } = answer.body as { id: string; path: string };
  return { id, secret: path.split('/').at(-1) ?? '' };
}

/** Every route. One that is not here fails the test. */
export const table: Record<string, Row> = {
  'GET /api/health/live': row(anyone),
  'GET /api/health/ready': row(anyone),
  'GET /api/metrics': row([401, 401, 403, 403, 403, '✓', '✓']),
  'GET /api/docs': row(anyone),
  'GET /api/openapi.json': row(anyone),

  'GET /api/v1/session': row(anyone),
  'POST /api/v1/session': row(anyone, async ({ withPassphrase, fresh }) => {
    const { name, password } = await withPassphrase(fresh('Signing in '));
    return { body: { name, password } };
  }),
  // the club of the walk is no demo, and nobody gave out a code for setting it up
  'POST /api/v1/session/demo': row(nobody, async ({ api }) => ({
    body: { keeperId: (await api.addKeeper('Invented')).id },
  })),
  'POST /api/v1/setup': row(nobody, () => ({
    body: { code: 'ABCD-EFGH-JKMN', clubName: 'Theirs', name: 'Intruder', password: 'a passphrase of an intruder' },
  })),
  'DELETE /api/v1/session': row(anyone),
  'DELETE /api/v1/sessions': row(adding),

  'GET /api/v1/club': row(membersReading),
  'PATCH /api/v1/club': row(administering, ({ fresh }) => ({ body: { name: fresh('Circle ') } })),

  'GET /api/v1/keepers': row(membersReading),
  'GET /api/v1/keepers/{id}': row(membersReading, somebody()),
  'PATCH /api/v1/keepers/{id}': row(administering, somebody({ roles: ['registrar'] })),
  'POST /api/v1/keepers/{id}/departure': row(administering, somebody()),
  'DELETE /api/v1/keepers/{id}/departure': row(administering, async (world) => {
    const { id } = await world.api.addKeeper(world.fresh('Former '));
    await world.api.http.post(`/api/v1/keepers/${id}/departure`).set('If-Match', '*').expect(201);
    return { at: [id] };
  }),

  'GET /api/v1/links': row([401, 401, 403, 403, 403, '✓', '✓']),
  'POST /api/v1/links': row(administering, () => ({ body: { kind: 'invitation' } })),
  'DELETE /api/v1/links/{link}': row(administering, async (world) => ({ at: [(await invited(world)).id] })),
  'GET /api/v1/links/{link}': row(anyone, async (world) => ({ at: [(await invited(world)).secret] })),
  'POST /api/v1/links/{link}/use': row(anyone, async (world) => ({
    at: [(await invited(world)).secret],
    body: { name: world.fresh('Joining '), password: 'a passphrase of somebody new' },
  })),

  // everybody of this walk comes with a token; in a session it is one's own
  'POST /api/v1/account/tokens': row([401, 401, 403, 403, 403, 403, 403], () => ({
    body: { name: 'another', scope: 'read' },
  })),
  'GET /api/v1/account/tokens': row(membersReading),
  'DELETE /api/v1/account/tokens/{id}': row(adding, async (world, asker) => ({ at: [await world.spareToken(asker)] })),
  'PUT /api/v1/account/password': row(adding, async (world, asker) => ({
    body: { current: await world.givePassphrase(asker), next: `${world.fresh('moss and ')} under glass` },
  })),

  ...recordRoutes('species', species, reading, ({ fresh }) => ({ body: { scientificName: fresh('Inventus walk') } }), {
    commonName: 'walking frog',
  }),
  ...recordRoutes(
    'lines',
    line,
    reading,
    async ({ owner, fresh }) => ({
      body: { name: fresh('Rio '), labelKind: 'locality', speciesId: (await owner.species()).id },
    }),
    { labelKind: 'trade-name' },
  ),
  ...recordRoutes('sources', source, reading, () => ({ body: { kind: 'import' } }), { notes: 'seen' }),
  ...recordRoutes(
    'individuals',
    individual,
    reading,
    async ({ owner }) => ({ body: { speciesId: (await owner.species()).id } }),
    { notes: 'seen' },
  ),
  ...recordRoutes('pairings', pairing, membersReading, ({ fresh }) => ({ body: { name: fresh('Tank ') } }), {
    notes: 'seen',
  }),
  ...recordRoutes('clutches', clutch, membersReading, () => ({ body: { laid: '2021-04-12' } }), { notes: 'seen' }),
  ...recordRoutes(
    'observations',
    observation,
    reading,
    // a remark is added to whatever one sees, also to another keeper's animal
    async ({ owner }) => ({
      body: { individualId: (await owner.individual()).id, kind: 'note', observedOn: '2024', text: 'calls' },
    }),
    { text: 'called' },
  ),
  // a claim is added to whatever one sees
  ...recordRoutes(
    'claims',
    claim,
    reading,
    async ({ owner, fresh }) => ({
      body: { sourceId: (await owner.source()).id, aspect: 'locality', value: fresh('Rio ') },
    }),
    { notes: 'heard' },
  ),
  ...recordRoutes(
    'evidence',
    evidence,
    membersReading,
    async ({ owner }) => ({
      body: { claimId: (await owner.claim()).id, bearing: 'supports', kind: 'letter', reference: 'letter' },
    }),
    { notes: 'read' },
  ),
  ...fileRoutes,
  ...togetherRoutes,
  ...sheetRoutes,
  ...foreignRoutes,
  ...lineageRoutes,
  ...matchRoutes,
  ...todayRoutes,
  ...transferRoutes,
  ...acknowledgementRoutes,
  'GET /api/v1/places': row(reading),
  'GET /api/v1/individuals/{id}/provenance': row(reading, publicAnimal),
  'GET /api/v1/individuals/{id}/occurrence': row(reading, publicAnimal),
  'GET /api/v1/individuals/{id}/label-history': row(reading, publicAnimal),
  'GET /api/v1/lines/{id}/label-history': row(reading, one(line)),
  'POST /api/v1/evidence/{id}/review': row(reviewing, one(evidence, { verdict: 'accepted', reason: 'seen' })),

  'GET /api/v1/pairings/{id}/parent-corrections': row(membersReading, one(pairing)),
  'POST /api/v1/pairings/{id}/members': row(changing, async ({ owner }) => {
    const [animal, tank] = [await owner.individual(), await owner.pairing()];
    return { at: [tank.id], body: { individualId: animal.id } };
  }),
  'PATCH /api/v1/pairings/{id}/members/{memberId}': row(changing, async (world) => {
    const { pairingId, memberId } = await member(world);
    return { at: [pairingId, memberId], body: { left: '2023' } };
  }),
  'DELETE /api/v1/pairings/{id}/members/{memberId}': row(changing, async (world) => {
    const { pairingId, memberId } = await member(world);
    return { at: [pairingId, memberId] };
  }),
  'POST /api/v1/clutches/{id}/offspring': row(changing, one(clutch, { count: 2 })),

  'POST /api/v1/clutches/{id}/warnings/{code}/confirmation': row(changing, async ({ owner }) => ({
    at: [await youngMother(owner), 'young-dam'],
    body: confirmed,
  })),
  'DELETE /api/v1/clutches/{id}/warnings/{code}/confirmation': row(changing, async (world) => {
    const id = await youngMother(world.owner);
    await world.owner.post(`clutches/${id}/warnings/young-dam/confirmation`, confirmed);
    return { at: [id, 'young-dam'] };
  }),
  'POST /api/v1/individuals/{id}/warnings/{code}/confirmation': row(changing, async (world) => {
    const id = await earlyLand(world.owner);
    return { at: [id, await world.warningOf(id)], body: confirmed };
  }),
  'DELETE /api/v1/individuals/{id}/warnings/{code}/confirmation': row(changing, async (world) => {
    const id = await earlyLand(world.owner);
    const code = await world.warningOf(id);
    await world.owner.post(`individuals/${id}/warnings/${code}/confirmation`, confirmed);
    return { at: [id, code] };
  }),

  // questions cost arithmetic, so they are for members; a token for reading may ask them
  'POST /api/v1/lineage/kinship': row(membersReading, ofAnimals),
  'POST /api/v1/lineage/figures': row(membersReading, ofAnimals),
  'GET /api/v1/lineage/progress': row(membersReading),
  'GET /api/v1/lines/{id}/audit.csv': row(membersReading, async ({ owner }) => ({ at: [(await owner.line()).id] })),
  'GET /api/v1/lines/{id}/audit': row(membersReading, async ({ owner }) => ({ at: [(await owner.line()).id] })),
  'GET /api/v1/lines/{id}/audit.pdf': row(membersReading, async ({ owner }) => ({ at: [(await owner.line()).id] })),
  'GET /api/v1/lineage/set': row(membersReading),
  'POST /api/v1/lineage/set': row(membersReading, ofAnimals),
  'GET /api/v1/individuals/{id}/lineage/spread': row(membersReading, async ({ owner }) => ({
    at: [(await owner.individual()).id],
  })),
  'POST /api/v1/individuals/{id}/lineage/what-if': row(membersReading, async ({ owner }) => ({
    at: [(await owner.individual()).id],
    body: {},
  })),
  'POST /api/v1/lineage/forecast': row(membersReading, async (world) => {
    const [sire, dam] = await animals(world);
    return { body: { sires: [sire], dams: [dam] } };
  }),

  'GET /api/v1/merges/comparison': row(merging, async (world) => {
    const [kept, duplicate] = await twoRecords(world);
    return { query: `?kept=${kept}&duplicate=${duplicate}` };
  }),
  'POST /api/v1/merges': row(merging, async (world) => {
    const [keptId, duplicateId] = await twoRecords(world);
    return { body: { keptId, duplicateId, take: [], reason: 'entered twice' } };
  }),
  'GET /api/v1/merges/{id}': row(merging, async (world) => ({ at: [await merged(world)] })),
  'DELETE /api/v1/merges/{id}': row(merging, async (world) => ({ at: [await merged(world)] })),

  'GET /api/v1/journal': row(membersReading),
  'GET /api/v1/journal/head': row(membersReading),
  'GET /api/v1/journal/{id}': row(membersReading, async (world) => ({ at: [await noted(world)] })),
  // whoever may change a record may undo its changes
  'POST /api/v1/journal/{id}/reversal': row(changing, async (world) => ({ at: [await noted(world)] })),

  'GET /api/v1/imports': row(membersReading),
  'GET /api/v1/imports/{id}': row(membersReading, async (world) => ({ at: [await imported(world)] })),
  'POST /api/v1/imports/{id}/withdrawal': row(changing, async (world) => ({
    at: [await imported(world)],
    body: { reason: 'the wrong sheet' },
  })),
  'DELETE /api/v1/imports/{id}/withdrawal': row(changing, async (world) => {
    const id = await imported(world);
    await world.owner.post(`imports/${id}/withdrawal`, { reason: 'the wrong sheet' });
    return { at: [id] };
  }),
  'POST /api/v1/imports': row(adding, ({ fresh }) => ({ sheet: `code,species\n${fresh('W-')},Inventus walk\n` })),
};
