import type { TestApi } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import type { Factory } from '../../support/factories.ts';
import { adding, changing, restoring, withdrawing, type Scenario, type Written } from './writing-routes.ts';

/** Every route that changes kept plans, and what it must leave behind. */
export function matchWritingRoutes(api: TestApi, make: Factory): Readonly<Record<string, Scenario>> {
  const sent = async (): Promise<{ lineId: string; name: string }> => {
    const { id: speciesId } = await make.species();
    const { id: lineId } = await make.line({ speciesId });
    for (const sex of ['male', 'female']) await make.individual({ speciesId, lineId, sex });
    return { lineId, name: 'spring' };
  };

  const kept = async (): Promise<{ id: string }> => {
    const plan = { ...(await sent()), assumptions: { pairings: 1 } };
    return bodyOf<{ id: string }>(await api.http.post('/api/v1/kept-plans').send(plan).expect(201));
  };

  const keeping = async (): Promise<Written> => {
    const plan = await sent();
    return adding('kept-plans', () => Promise.resolve({ ...plan, assumptions: { pairings: 1 } }), plan)();
  };

  const accepting = async (): Promise<Written> => {
    const { id } = await kept();
    const answer = await api.http
      .post(`/api/v1/kept-plans/${id}/pairings`)
      .set('If-Match', '*')
      .send({ pairs: [{ place: 0 }] })
      .expect(201);
    const [before, after] = [{ pairs: [{ state: 'proposed' }] }, { pairs: [{ state: 'accepted' }] }];
    return { answer, recordId: id, before, after, others: ['pairing'] };
  };

  const declining = async (): Promise<Written> => {
    const { id } = await kept();
    const answer = await api.http
      .patch(`/api/v1/kept-plans/${id}/pairs`)
      .set('If-Match', '*')
      .send({ pairs: [{ place: 0 }], state: 'declined', reason: 'no room' })
      .expect(200);
    const [before, after] = [
      { pairs: [{ state: 'proposed', reason: null }] },
      { pairs: [{ state: 'declined', reason: 'no room' }] },
    ];
    return { answer, recordId: id, before, after };
  };

  return {
    'post /api/v1/kept-plans': ['added', 'kept_plan', keeping],
    'patch /api/v1/kept-plans/{id}': [
      'changed',
      'kept_plan',
      changing('kept-plans', kept, { visibility: 'private' }, { visibility: 'club' }),
    ],
    'post /api/v1/kept-plans/{id}/pairings': ['paired', 'kept_plan', accepting],
    'patch /api/v1/kept-plans/{id}/pairs': ['changed', 'kept_plan', declining],
    'post /api/v1/kept-plans/{id}/withdrawal': ['withdrawn', 'kept_plan', withdrawing('kept-plans', kept)],
    'delete /api/v1/kept-plans/{id}/withdrawal': ['restored', 'kept_plan', restoring('kept-plans', kept)],
  };
}
