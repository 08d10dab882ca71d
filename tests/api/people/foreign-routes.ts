import { signSheet } from '../../../shared/sheet/sheet-file.ts';
import { publishedKeys } from '../../../shared/sheet/sheet-keys.ts';
import { madeKey, madeSheet } from '../../support/made-sheet.ts';
import type { Row } from './route-table.ts';
import type { World } from './route-world.ts';

/** In the order of the columns of the table. */
const membersReading: Row['outcomes'] = [401, 401, '✓', '✓', '✓', '✓', '✓'];
const adding: Row['outcomes'] = [401, 401, '✓', '✓', '✓', '✓', 403];
const vouching: Row['outcomes'] = [401, 401, 403, 403, '✓', 403, 403];

const row = (outcomes: Row['outcomes'], ask: Row['ask'] = () => ({})): Row => ({ outcomes, ask });

async function newRegister({ fresh }: World): Promise<{ name: string; keys: string }> {
  return { name: fresh('Circle '), keys: JSON.stringify(publishedKeys([await madeKey()])) };
}

async function known(world: World): Promise<string> {
  const answer = await world.askers.registrar
    .post('/api/v1/other-registers')
    .send(await newRegister(world))
    .expect(201);
  return (answer.body as { id: string }).id;
}

/** The routes of register sheets going out, of other clubs' registers and of their sheets. */
export const foreignRoutes: Readonly<Record<string, Row>> = {
  'GET /api/v1/exports/register-sheet': row(membersReading),
  'GET /api/v1/other-registers': row(membersReading),
  'GET /api/v1/other-registers/{id}': row(membersReading, async (world) => ({ at: [await known(world)] })),
  'POST /api/v1/other-registers': row(vouching, async (world) => ({ body: await newRegister(world) })),
  'POST /api/v1/other-registers/{id}/keys': row(vouching, async (world) => ({
    at: [await known(world)],
    body: { keys: (await newRegister(world)).keys },
  })),
  'POST /api/v1/other-registers/{id}/withdrawal': row(vouching, async (world) => ({
    at: [await known(world)],
    body: { reason: 'the key was stolen' },
  })),
  'DELETE /api/v1/other-registers/{id}/withdrawal': row(vouching, async (world) => {
    const id = await known(world);
    const at = `/api/v1/other-registers/${id}/withdrawal`;
    await world.askers.registrar.post(at).send({ reason: 'the key was stolen' }).expect(201);
    return { at: [id] };
  }),
  'POST /api/v1/foreign-sheets': row(adding, async ({ askers, fresh }) => {
    const key = await madeKey();
    const keys = JSON.stringify(publishedKeys([key]));
    await askers.registrar
      .post('/api/v1/other-registers')
      .send({ name: fresh('Circle '), keys })
      .expect(201);
    return { body: { file: await signSheet(madeSheet(), key), prefix: fresh('X') } };
  }),
};
