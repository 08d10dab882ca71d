import { expect } from 'vitest';
import { SigningKeys } from '../../../api/selling/signing-keys/signing-keys.service.ts';
import type { TestApi } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import type { Response } from 'supertest';
import type { Factory } from '../../support/factories.ts';
import type { Scenario } from './writing-routes.ts';

/** The routes of provenance sheets and their keys that write, and what each must leave behind. */
export function sheetRoutes(api: TestApi, make: Factory): Readonly<Record<string, Scenario>> {
  const keys = (): SigningKeys => api.app.get(SigningKeys);
  const ownKey = async (): Promise<{ id: string; kid: string }> => {
    await keys().ready();
    const kid = (await keys().list()).find(({ isOwn }) => isOwn)?.kid ?? '';
    const [row] = await api.dataSource.query<{ id: string }[]>('select id from signing_key where kid = $1', [kid]);
    return { id: row?.id ?? '', kid };
  };
  const signed = async (): Promise<{ id: string; number: string; animal: string; answer: Response }> => {
    await keys().ready();
    const { id, number: animal } = await make.individual();
    const answer = await api.http
      .post('/api/v1/provenance-sheets')
      .send({ animals: [id] })
      .expect(201);
    const sheet = bodyOf<{ id: string; number: string }>(answer);
    return { ...sheet, animal, answer };
  };
  return {
    'post /api/v1/provenance-sheets': [
      'added',
      'provenance_sheet',
      async () => {
        const { id, number, animal, answer } = await signed();
        return { answer, recordId: id, before: null, after: { number, animals: [animal], validUntil: null } };
      },
    ],
    'post /api/v1/provenance-sheets/{id}/revocation': [
      'revoked',
      'provenance_sheet',
      async () => {
        const { id } = await signed();
        const reason = 'the froglets were mixed up';
        const answer = await api.http
          .post(`/api/v1/provenance-sheets/${id}/revocation`)
          .set('If-Match', '"1"')
          .send({ reason })
          .expect(201);
        return { answer, recordId: id, before: { revokedReason: null }, after: { revokedReason: reason }, reason };
      },
    ],
    'post /api/v1/signing-keys': [
      'key-made',
      'signing_key',
      async () => {
        const old = await ownKey();
        const answer = await api.http.post('/api/v1/signing-keys').send({ reason: 'a new year' }).expect(201);
        const { id, kid } = await ownKey();
        expect(bodyOf<{ kid: string }>(answer).kid).toBe(kid);
        return { answer, recordId: id, before: { kid: old.kid }, after: { kid }, reason: 'a new year' };
      },
    ],
    'post /api/v1/signing-keys/{kid}/retirement': [
      'key-retired',
      'signing_key',
      async () => {
        const { id, kid } = await ownKey();
        const answer = await api.http
          .post(`/api/v1/signing-keys/${kid}/retirement`)
          .send({ reason: 'the disk broke' })
          .expect(201);
        return { answer, recordId: id, before: { kid }, after: null, reason: 'the disk broke' };
      },
    ],
  };
}
