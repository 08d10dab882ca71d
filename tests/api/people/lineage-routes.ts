import type { Row } from './route-table.ts';
import type { World } from './route-world.ts';

/** In the order of the columns of the table. */
const reading: Row['outcomes'] = [401, '✓', '✓', '✓', '✓', '✓', '✓'];

/** A public animal of the owner. */
async function shown(world: World): Promise<{ at: string[] }> {
  const { id } = await world.owner.individual();
  await world.publish();
  return { at: [id] };
}

/** Questions that cost arithmetic are for members; a token for reading may ask them. */
const membersReading: Row['outcomes'] = [401, 401, '✓', '✓', '✓', '✓', '✓'];

/** The routes of one animal's lineage, and of a line's. */
export const lineageRoutes: Readonly<Record<string, Row>> = {
  'GET /api/v1/individuals/{id}/lineage/common-ancestors': { outcomes: reading, ask: shown },
  'GET /api/v1/individuals/{id}/lineage/loops': { outcomes: reading, ask: shown },
  'GET /api/v1/individuals/{id}/lineage': { outcomes: reading, ask: shown },
  'GET /api/v1/individuals/{id}/pedigree': { outcomes: reading, ask: shown },
  'GET /api/v1/individuals/{id}/descendants': { outcomes: reading, ask: shown },
  'GET /api/v1/lines/{id}/over-time': {
    outcomes: membersReading,
    ask: async ({ owner }) => ({ at: [(await owner.line()).id] }),
  },
  'GET /api/v1/sources/{id}/living': {
    outcomes: membersReading,
    ask: async ({ owner }) => ({ at: [(await owner.source()).id] }),
  },
};
