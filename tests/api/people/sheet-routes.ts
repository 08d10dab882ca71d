import { SigningKeys } from '../../../api/selling/signing-keys/signing-keys.service.ts';
import type { Row } from './route-table.ts';
import type { World } from './route-world.ts';

/** In the order of the columns of the table. */
const anyone: Row['outcomes'] = ['✓', '✓', '✓', '✓', '✓', '✓', '✓'];
const readByAdministrators: Row['outcomes'] = [401, 401, 403, 403, 403, '✓', '✓'];
const administering: Row['outcomes'] = [401, 401, 403, 403, 403, '✓', 403];

const row = (outcomes: Row['outcomes'], ask: Row['ask'] = () => ({})): Row => ({ outcomes, ask });

/** The key that the service signs with. */
async function ownKey({ api }: World): Promise<string> {
  const keys = api.app.get(SigningKeys);
  await keys.ready();
  return (await keys.list()).find(({ isOwn }) => isOwn)?.kid ?? '';
}

/** The routes of provenance sheets and of the keys that they are signed with. */
export const sheetRoutes: Readonly<Record<string, Row>> = {
  'GET /.well-known/jwks.json': row(anyone),
  'GET /api/v1/signing-keys': row(readByAdministrators),
  'POST /api/v1/signing-keys': row(administering, () => ({ body: { reason: 'a new year' } })),
  'POST /api/v1/signing-keys/{kid}/retirement': row(administering, async (world) => ({
    at: [await ownKey(world)],
    body: { reason: 'the disk broke' },
  })),
};
