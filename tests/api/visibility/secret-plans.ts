import type { KeptPlanView } from '../../../api/match/kept-plans/kept-plan.view.ts';
import type { TestKeeper } from '../../support/api.ts';
import type { Factory } from '../../support/factories.ts';
import type { Asker, Ledger } from './secret-register.ts';

const inPrivate: readonly Asker[] = ['owner', 'registrar'];
const inClub: readonly Asker[] = ['owner', 'other', 'registrar'];

/**
 * A plan with private animals that is shared with the club: in a pair that became a pairing, in an open one, left out, and such that may not
 * breed; and a plan that its keeper keeps to himself.
 */
export async function makePlans(make: Factory, ledger: Ledger, owner: TestKeeper): Promise<void> {
  const { id: speciesId } = await make.species();
  const { id: lineId } = await make.line({ speciesId, name: 'Rio Planeado' });
  const animal = async (name: string, fields: Record<string, string>): Promise<string> => {
    const told = { code: `PLAN-${name.replaceAll(' ', '-').toUpperCase()}`, hatched: '2019-01-11' };
    const made = await make.individual({ speciesId, lineId, ...told, ...fields });
    return ledger.keep(`the ${name}`, made, fields['visibility'] === 'private' ? inPrivate : inClub, {
      code: told.code,
    }).id;
  };
  const hidden = { visibility: 'private' };
  const male = await animal('planned private male', { sex: 'male', ...hidden });
  const open = await animal('planned male', { sex: 'male' });
  const female = await animal('planned female', { sex: 'female' });
  const other = await animal('planned private female', { sex: 'female', ...hidden });
  await animal('unplanned private female', { sex: 'female', ...hidden });
  await animal('unsexed private one', hidden);
  const assumptions = {
    pairings: 2,
    fixed: [
      { male, female },
      { male: open, female: other },
    ],
    uses: [{ individual: other, most: 1 }],
  };
  const shared = { name: 'Plan for the club', visibility: 'club' };
  const plan = await make.post<KeptPlanView>('kept-plans', { lineId, assumptions, ...shared });
  ledger.keep('the shared plan', { id: plan.id }, inClub, { name: shared.name });
  const own = { name: 'Plan verhuellt', notes: 'plan notes veiled' };
  const kept = await make.post<KeptPlanView>('kept-plans', { lineId, assumptions, ...own });
  ledger.keep('the private plan', { id: kept.id }, inPrivate, own);
  await owner.http
    .post(`/api/v1/kept-plans/${plan.id}/pairings`)
    .set('If-Match', '*')
    .send({ pairs: [{ place: 0 }], joined: '2026-02-12' })
    .expect(201);
}
