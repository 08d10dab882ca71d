import { SigningKeys } from '../../../api/selling/signing-keys/signing-keys.service.ts';
import type { SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import type { Row } from './route-table.ts';
import type { World } from './route-world.ts';

/** In the order of the columns of the table. */
const anyone: Row['outcomes'] = ['✓', '✓', '✓', '✓', '✓', '✓', '✓'];
const readByAdministrators: Row['outcomes'] = [401, 401, 403, 403, 403, '✓', '✓'];
const administering: Row['outcomes'] = [401, 401, 403, 403, 403, '✓', 403];

const readByMembers: Row['outcomes'] = [401, 401, '✓', '✓', '✓', '✓', '✓'];
/** Its keeper and registrars; to others it is not there, which the tests of sheets hold. */
const readByOwners: Row['outcomes'] = [401, 401, 404, '✓', '✓', 404, '✓'];
const revoking: Row['outcomes'] = [401, 401, 404, '✓', '✓', 404, 403];
/** Of one's own animals, or as a registrar. */
const issuing: Row['outcomes'] = [401, 401, 403, '✓', '✓', 403, 403];

const row = (outcomes: Row['outcomes'], ask: Row['ask'] = () => ({})): Row => ({ outcomes, ask });

/** The key that the service signs with. */
async function ownKey({ api }: World): Promise<string> {
  const keys = api.app.get(SigningKeys);
  await keys.ready();
  return (await keys.list()).find(({ isOwn }) => isOwn)?.kid ?? '';
}

/** A sheet of an animal of the owner. */
async function signed({ owner }: World): Promise<{ id: string; token: string }> {
  const { id: animal } = await owner.individual();
  const sheet = await owner.post<{ id: string; lookUp: string }>('provenance-sheets', { animals: [animal] });
  return { id: sheet.id, token: sheet.lookUp.split('/').at(-1) ?? '' };
}

const byId = async (world: World): Promise<{ at: string[] }> => ({ at: [(await signed(world)).id] });
const byToken = async (world: World): Promise<{ at: string[] }> => ({ at: [(await signed(world)).token] });

/** The routes of provenance sheets and of the keys that they are signed with. */
export const sheetRoutes: Readonly<Record<string, Row>> = {
  'GET /.well-known/jwks.json': row(anyone),
  'GET /api/v1/provenance-sheets': row(readByMembers),
  'GET /api/v1/provenance-sheets/{id}': row(readByOwners, byId),
  'GET /api/v1/provenance-sheets/{id}/file': row(readByOwners, byId),
  'GET /api/v1/provenance-sheets/{id}/paper': row(readByOwners, byId),
  'POST /api/v1/provenance-sheets': row(issuing, async ({ owner }) => ({
    body: { animals: [(await owner.individual()).id] },
  })),
  'POST /api/v1/provenance-sheets/{id}/revocation': row(revoking, async (world) => ({
    ...(await byId(world)),
    body: { reason: 'the froglets were mixed up' },
  })),
  'GET /api/v1/sheets/{token}': row(anyone, byToken),
  'GET /api/v1/sheets/{token}/file': row(anyone, byToken),
  'GET /api/v1/sheets/{token}/paper': row(anyone, byToken),
  'GET /api/v1/sheets/{token}/photographs/{sha256}': row(anyone, async (world) => {
    const { id } = await world.owner.individual();
    await world.owner.photograph({ individualId: id });
    const sheet = await world.owner.post<{ id: string; lookUp: string }>('provenance-sheets', { animals: [id] });
    const token = sheet.lookUp.split('/').at(-1) ?? '';
    const { contents } = (await world.api.stranger.get(`/api/v1/sheets/${token}`).expect(200)).body as {
      contents: SheetDocument;
    };
    return { at: [token, contents.animals[0]?.photographs[0]?.sha256 ?? ''] };
  }),
  'POST /api/v1/sheets/verification': row(anyone, () => ({ bytes: Buffer.from('{}') })),
  'GET /api/v1/signing-keys': row(readByAdministrators),
  'POST /api/v1/signing-keys': row(administering, () => ({ body: { reason: 'a new year' } })),
  'POST /api/v1/signing-keys/{kid}/retirement': row(administering, async (world) => ({
    at: [await ownKey(world)],
    body: { reason: 'the disk broke' },
  })),
};
