import { madePdf } from '../../support/made-pdf.ts';
import { picture } from '../../support/made-pictures.ts';
import type { Row } from './route-table.ts';
import type { World } from './route-world.ts';

/** In the order of the columns of the table. */
const reading: Row['outcomes'] = [401, '✓', '✓', '✓', '✓', '✓', '✓'];
const membersReading: Row['outcomes'] = [401, 401, '✓', '✓', '✓', '✓', '✓'];
const changing: Row['outcomes'] = [401, 401, 403, '✓', '✓', 403, 403];
/** Nobody puts a paper to what another keeper says of it, a registrar neither. */
const bringing: Row['outcomes'] = [401, 401, 403, '✓', 403, 403, 403];

const row = (outcomes: Row['outcomes'], ask: Row['ask']): Row => ({ outcomes, ask });

/** A photograph of a public animal of the owner. */
async function shown(world: World): Promise<{ at: string[] }> {
  const { id } = await world.owner.photograph();
  await world.publish();
  return { at: [id] };
}

/** The routes of files and of photographs. */
export const fileRoutes: Readonly<Record<string, Row>> = {
  'GET /api/v1/evidence/{id}/file': row(membersReading, async ({ owner, askers }) => {
    const { id } = await owner.evidence();
    const put = askers.owner.put(`/api/v1/evidence/${id}/file`).set('If-Match', '*');
    await put.attach('file', madePdf(), 'paper.pdf').expect(200);
    return { at: [id] };
  }),
  'PUT /api/v1/evidence/{id}/file': row(bringing, async ({ owner }) => ({
    at: [(await owner.evidence()).id],
    form: { file: madePdf() },
  })),
  'GET /api/v1/photographs': row(reading, () => ({})),
  'GET /api/v1/photographs/{id}': row(reading, shown),
  'GET /api/v1/photographs/{id}/file': row(reading, async (world) => ({
    ...(await shown(world)),
    query: '?size=small',
  })),
  // of one's own animal, or as a registrar
  'POST /api/v1/photographs': row(changing, async ({ owner }) => ({
    form: {
      file: await picture().jpeg().toBuffer(),
      fields: { individualId: (await owner.individual()).id, view: 'back' },
    },
  })),
  'PATCH /api/v1/photographs/{id}': row(changing, async ({ owner }) => ({
    at: [(await owner.photograph()).id],
    body: { notes: 'a scar' },
  })),
  'POST /api/v1/photographs/{id}/withdrawal': row(changing, async ({ owner }) => ({
    at: [(await owner.photograph()).id],
    body: { reason: 'entered twice' },
  })),
  'DELETE /api/v1/photographs/{id}/withdrawal': row(changing, async (world) => {
    const { id } = await world.owner.photograph();
    await world.withdraw('photographs', id);
    return { at: [id] };
  }),
};
