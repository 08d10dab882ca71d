import { bodyOf } from '../../support/answer.ts';
import { signSheet } from '../../../shared/sheet/sheet-file.ts';
import { publishedKeys } from '../../../shared/sheet/sheet-keys.ts';
import type { TestApi } from '../../support/api.ts';
import { madeKey, madeSheet } from '../../support/made-sheet.ts';
import { idIn, type Scenario } from './writing-routes.ts';

/** The routes of other clubs' registers and of their sheets that write, and what each must leave behind. */
export function foreignRoutes(api: TestApi): Readonly<Record<string, Scenario>> {
  let made = 0;
  const known = async (key?: Awaited<ReturnType<typeof madeKey>>) => {
    const own = key ?? (await madeKey());
    const name = `Circle ${++made}`;
    const answer = await api.http
      .post('/api/v1/other-registers')
      .send({ name, keys: JSON.stringify(publishedKeys([own])) })
      .expect(201);
    return { answer, name, key: own, id: idIn(answer) };
  };
  const standing = { withdrawnReason: null };
  const withdrawn = { withdrawnReason: 'the key was stolen' };
  const withdraw = (id: string) =>
    api.http.post(`/api/v1/other-registers/${id}/withdrawal`).send({ reason: 'the key was stolen' }).expect(201);
  return {
    'post /api/v1/other-registers': [
      'added',
      'other_register',
      async () => {
        const { answer, id, name, key } = await known();
        return { answer, recordId: id, before: null, after: { name, keys: [key.kid] } };
      },
    ],
    'post /api/v1/other-registers/{id}/keys': [
      'changed',
      'other_register',
      async () => {
        const { id, key } = await known();
        const more = await madeKey();
        const keys = JSON.stringify(publishedKeys([more]));
        const answer = await api.http.post(`/api/v1/other-registers/${id}/keys`).send({ keys }).expect(201);
        return { answer, recordId: id, before: { keys: [key.kid] }, after: { keys: [key.kid, more.kid] } };
      },
    ],
    'post /api/v1/other-registers/{id}/withdrawal': [
      'withdrawn',
      'other_register',
      async () => {
        const { id } = await known();
        return {
          answer: await withdraw(id),
          recordId: id,
          before: standing,
          after: withdrawn,
          reason: 'the key was stolen',
        };
      },
    ],
    'delete /api/v1/other-registers/{id}/withdrawal': [
      'restored',
      'other_register',
      async () => {
        const { id } = await known();
        await withdraw(id);
        const answer = await api.http.delete(`/api/v1/other-registers/${id}/withdrawal`).expect(200);
        return { answer, recordId: id, before: withdrawn, after: standing };
      },
    ],
    'post /api/v1/foreign-sheets': [
      'imported',
      'import',
      async () => {
        const { key, name } = await known();
        const file = await signSheet(madeSheet(), key);
        const answer = await api.http.post('/api/v1/foreign-sheets').send({ file, prefix: 'CF' }).expect(201);
        const { created } = bodyOf<{ created: object }>(answer);
        return { answer, recordId: idIn(answer), before: null, after: { register: name, created } };
      },
    ],
  };
}
