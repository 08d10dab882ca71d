import type { TestApi } from '../../support/api.ts';
import { newId } from '../../../api/platform/ids.ts';
import { bodyOf } from '../../support/answer.ts';
import { Factory } from '../../support/factories.ts';
import { idIn, type Scenario, type Written } from './writing-routes.ts';

/** Every route that lets animals pass, and what it must leave behind. */
export function transferRoutes(api: TestApi, make: Factory): Readonly<Record<string, Scenario>> {
  const me = async (): Promise<string> =>
    bodyOf<{ keeper: { id: string } }>(await api.http.get('/api/v1/session').expect(200)).keeper.id;

  /** Another keeper offers an animal to the one who acts. */
  const offeredToMe = async (): Promise<{ id: string; animal: string; from: string }> => {
    const other = await api.addKeeper(`Giver ${newId()}`);
    const { id: speciesId } = await make.species();
    const { id: animal } = await new Factory(other.http).individual({ speciesId, code: `G ${newId()}`.slice(0, 40) });
    const answer = await other.http
      .post('/api/v1/transfers')
      .send({ to: await me(), animals: [animal] })
      .expect(201);
    return { id: idIn(answer), animal, from: other.id };
  };

  const adding = async (): Promise<Written> => {
    const { id: toId } = await api.addKeeper(`Receiver ${newId()}`);
    const { id: animal } = await make.individual();
    const answer = await api.http
      .post('/api/v1/transfers')
      .send({ to: toId, animals: [animal], note: 'x' })
      .expect(201);
    const after = { state: 'offered', toId, note: 'x', animals: [{ individualId: animal, keeperId: await me() }] };
    return { answer, recordId: idIn(answer), before: null, after };
  };

  const departed = async (): Promise<string> => {
    const { id: animal } = await make.individual();
    return idIn(
      await api.http
        .post('/api/v1/transfers')
        .send({ leftTo: null, animals: [animal] })
        .expect(201),
    );
  };

  const sent = (id: string, step: string, body: object): Promise<Written['answer']> =>
    api.http.post(`/api/v1/transfers/${id}/${step}`).set('If-Match', '*').send(body).expect(201);

  const accepting = async (): Promise<Written> => {
    const { id, animal, from } = await offeredToMe();
    const answer = await sent(id, 'acceptance', { codes: [{ individualId: animal, code: null }] });
    const passed = (keeperId: string): object => ({ individualId: animal, keeperId });
    return {
      answer,
      recordId: id,
      before: { state: 'offered', animals: [passed(from)] },
      after: { state: 'accepted', animals: [passed(await me())] },
    };
  };

  const declining = async (): Promise<Written> => {
    const { id } = await offeredToMe();
    const answer = await sent(id, 'refusal', { reason: 'no room' });
    return { answer, recordId: id, before: { state: 'offered' }, after: { state: 'declined', reason: 'no room' } };
  };

  const withdrawing = async (): Promise<Written> => {
    const id = await departed();
    const answer = await sent(id, 'withdrawal', { reason: 'a mistake' });
    const [before, after] = [{ animals: [{ status: 'gone' }] }, { state: 'withdrawn', animals: [{ status: 'alive' }] }];
    return { answer, recordId: id, before, after };
  };

  const returning = async (): Promise<Written> => {
    const id = await departed();
    const answer = await sent(id, 'returns', {});
    const [before, after] = [{ animals: [{ returned: null }] }, { animals: [{ status: 'alive' }] }];
    return { answer, recordId: id, before, after };
  };

  return {
    'post /api/v1/transfers': ['offered', 'transfer', adding],
    'post /api/v1/transfers/{id}/acceptance': ['accepted', 'transfer', accepting],
    'post /api/v1/transfers/{id}/refusal': ['declined', 'transfer', declining],
    'post /api/v1/transfers/{id}/withdrawal': ['departure-withdrawn', 'transfer', withdrawing],
    'post /api/v1/transfers/{id}/returns': ['came-back', 'transfer', returning],
  };
}
