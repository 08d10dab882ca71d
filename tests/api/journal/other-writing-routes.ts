import supertest from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import { DataSource } from 'typeorm';
import { expect } from 'vitest';
import { createApp } from '../../../api/create-app.ts';
import { offerSetup } from '../../../api/people/setup-code.ts';
import type { TestApi } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import { createDatabase } from '../../support/database.ts';
import type { Factory } from '../../support/factories.ts';
import { idIn, importing, unique, type Scenario, type Written } from './writing-routes.ts';

const passphrase = 'yellow moss under glass';

/** Every other route that writes, and what it must leave behind. `undo` ends what a case began. */
export function otherRoutes(
  api: TestApi,
  make: Factory,
  atEnd: (undo: () => Promise<void>) => void,
): Readonly<Record<string, Scenario>> {
  const text = expect.any(String) as unknown;

  const link = async (
    body: object = { kind: 'invitation', roles: ['registrar'], note: 'a friend' },
  ): Promise<{ id: string; secret: string; answer: supertest.Response }> => {
    const answer = await api.http.post('/api/v1/links').send(body).expect(201);
    const { id, path } = bodyOf<{ id: string; path: string }>(answer);
    return { id, secret: path.split('/').pop() ?? '', answer };
  };

  /** Somebody who joined by a link, and sends the cookie of a session. */
  const joined = async (): Promise<{ name: string; agent: TestAgent; answer: supertest.Response; id: string }> => {
    const { secret } = await link({ kind: 'invitation', roles: [] });
    const agent = supertest.agent(api.url);
    // a cookie counts only from a page of the service itself
    agent.set('Sec-Fetch-Site', 'same-origin');
    const name = unique();
    const answer = await agent.post(`/api/v1/links/${secret}/use`).send({ name, password: passphrase });
    expect(answer.status).toBeLessThan(300);
    return { name, agent, answer, id: bodyOf<{ keeper: { id: string } }>(answer).keeper.id };
  };

  const merging = async (): Promise<Written> => {
    const { id: speciesId } = await make.species();
    const [kept, duplicate] = [
      await make.individual({ speciesId }),
      await make.individual({ speciesId, notes: 'twice' }),
    ];
    const answer = await api.http
      .post('/api/v1/merges')
      .send({ keptId: kept.id, duplicateId: duplicate.id, take: ['notes'], reason: 'entered twice' })
      .expect(201);
    return {
      answer,
      recordId: kept.id,
      before: { notes: null },
      after: { notes: 'twice', duplicateId: duplicate.id },
      reason: 'entered twice',
    };
  };

  const leaving = async (): Promise<Written> => {
    const { id } = await api.addKeeper(unique());
    const answer = await api.http.post(`/api/v1/keepers/${id}/departure`).set('If-Match', '*').send({});
    expect(answer.status).toBeLessThan(300);
    return { answer, recordId: id, before: { leftAt: null }, after: { leftAt: text } };
  };

  /** A token makes no tokens: somebody with a session does. */
  const token = async (): Promise<{ id: string; name: string; agent: TestAgent; answer: supertest.Response }> => {
    const { agent, name } = await joined();
    const answer = await agent.post('/api/v1/account/tokens').send({ name: 'reader', scope: 'read' }).expect(201);
    return { id: idIn(answer), name, agent, answer };
  };

  const undoingImport = async (): Promise<Written> => {
    const { recordId } = await importing();
    const answer = await api.http
      .post(`/api/v1/imports/${recordId}/withdrawal`)
      .send({ reason: 'wrong sheet' })
      .expect(201);
    return {
      answer,
      recordId,
      before: { withdrawnAt: null },
      after: { withdrawnReason: 'wrong sheet' },
      reason: 'wrong sheet',
    };
  };

  return {
    'post /api/v1/imports/{id}/withdrawal': ['import-undone', 'import', undoingImport],
    'delete /api/v1/imports/{id}/withdrawal': [
      'import-restored',
      'import',
      async () => {
        const { recordId } = await undoingImport();
        const answer = await api.http.delete(`/api/v1/imports/${recordId}/withdrawal`).expect(200);
        return { answer, recordId, before: { withdrawnReason: 'wrong sheet' }, after: { withdrawnAt: null } };
      },
    ],
    'post /api/v1/merges': ['merged', 'individual', merging],
    'delete /api/v1/merges/{id}': [
      'unmerged',
      'individual',
      async () => {
        const { answer: merged, recordId } = await merging();
        const answer = await api.http.delete(`/api/v1/merges/${idIn(merged)}`).expect(200);
        return { answer, recordId, before: { notes: 'twice' }, after: { notes: null } };
      },
    ],
    'post /api/v1/links': [
      'link-made',
      'link',
      async () => {
        const { answer, id } = await link();
        return {
          answer,
          recordId: id,
          before: null,
          after: { kind: 'invitation', roles: ['registrar'], note: 'a friend' },
        };
      },
    ],
    'delete /api/v1/links/{link}': [
      'link-revoked',
      'link',
      async () => {
        const { id } = await link();
        const answer = await api.http.delete(`/api/v1/links/${id}`);
        expect(answer.status).toBeLessThan(300);
        return { answer, recordId: id, before: { note: 'a friend' }, after: null };
      },
    ],
    'post /api/v1/links/{link}/use': [
      'joined',
      'keeper',
      async () => {
        const { answer, name, id } = await joined();
        return { answer, recordId: id, before: null, after: { name, roles: [] }, by: { keeper: name, via: 'session' } };
      },
    ],
    'patch /api/v1/keepers/{id}': [
      'roles-changed',
      'keeper',
      async () => {
        const { id } = await api.addKeeper(unique());
        const answer = await api.http
          .patch(`/api/v1/keepers/${id}`)
          .set('If-Match', '*')
          .send({ roles: ['registrar'] })
          .expect(200);
        return { answer, recordId: id, before: { roles: [] }, after: { roles: ['registrar'] } };
      },
    ],
    'post /api/v1/keepers/{id}/departure': ['left', 'keeper', leaving],
    'delete /api/v1/keepers/{id}/departure': [
      'returned',
      'keeper',
      async () => {
        const { recordId } = await leaving();
        const answer = await api.http.delete(`/api/v1/keepers/${recordId}/departure`).set('If-Match', '*').expect(200);
        return { answer, recordId, before: { leftAt: text }, after: { leftAt: null } };
      },
    ],
    'patch /api/v1/club': [
      'club-changed',
      'club',
      async () => {
        const answer = await api.http
          .patch('/api/v1/club')
          .set('If-Match', '*')
          .send({ name: 'Our register' })
          .expect(200);
        return { answer, recordId: null, before: { name: 'My register' }, after: { name: 'Our register' } };
      },
    ],
    'post /api/v1/account/tokens': [
      'token-made',
      'token',
      async () => {
        const { id, name, answer } = await token();
        const after = { name: 'reader', scope: 'read' };
        return { answer, recordId: id, before: null, after, by: { keeper: name, via: 'session' } };
      },
    ],
    'delete /api/v1/account/tokens/{id}': [
      'token-revoked',
      'token',
      async () => {
        const { id, name, agent } = await token();
        const answer = await agent.delete(`/api/v1/account/tokens/${id}`);
        expect(answer.status).toBeLessThan(300);
        const by = { keeper: name, via: 'session' };
        return { answer, recordId: id, before: { name: 'reader' }, after: null, by };
      },
    ],
    'put /api/v1/account/password': [
      'password-changed',
      'keeper',
      async () => {
        const { agent, name, id } = await joined();
        const answer = await agent
          .put('/api/v1/account/password')
          .send({ current: passphrase, next: `${passphrase} bowls` });
        expect(answer.status).toBe(200);
        return { answer, recordId: id, before: null, after: null, by: { keeper: name, via: 'session' } };
      },
    ],
    'delete /api/v1/sessions': [
      'signed-out-everywhere',
      'keeper',
      async () => {
        const { agent, name, id } = await joined();
        const answer = await agent.delete('/api/v1/sessions');
        expect(answer.status).toBeLessThan(300);
        return { answer, recordId: id, before: null, after: null, by: { keeper: name, via: 'session' } };
      },
    ],
    'post /api/v1/setup': [
      'set-up',
      'club',
      async () => {
        const database = await createDatabase();
        const app = await createApp(database.url, { logLevel: 'silent' });
        await app.listen(0, '127.0.0.1');
        atEnd(async () => {
          await app.close();
          await database.drop();
        });
        const dataSource = app.get(DataSource);
        const body = {
          code: await offerSetup(dataSource),
          clubName: 'A new club',
          name: 'First',
          password: passphrase,
        };
        const answer = await supertest
          .agent(await app.getUrl())
          .post('/api/v1/setup')
          .send(body);
        expect(answer.status).toBeLessThan(300);
        const after = { name: 'A new club', administrator: 'First' };
        return { answer, recordId: null, before: null, after, by: { keeper: 'First', via: 'session' }, dataSource };
      },
    ],
  };
}
