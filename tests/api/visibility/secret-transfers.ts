import type { TestApi } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import type { Ledger } from './secret-register.ts';

/** Animals of the owner that pass, to a keeper who is none of those who ask. What is between two is told to nobody else. */
export async function makeTransfers(api: TestApi, owner: Factory, ledger: Ledger, speciesId: string): Promise<void> {
  const third = await api.addKeeper('Carla Dritte');
  const animal = (code: string, visibility: string): Promise<{ id: string; number: string }> =>
    owner.individual({ speciesId, code, visibility });
  const transfer = (body: Record<string, unknown>): Promise<{ id: string }> => owner.post('transfers', body);
  const inPrivate = ['owner', 'registrar'] as const;

  const waiting = await animal('WAITING-VEILED', 'private');
  ledger.keep('the private animal on offer', waiting, inPrivate, { code: 'WAITING-VEILED' });
  const words = { note: 'Offer note veiled', date: '2017-02-03' };
  const offer = await transfer({ to: third.id, animals: [waiting.id], ...words });
  ledger.keep('the open offer', offer, inPrivate, words);

  const open = await animal('LEFT-OF-CLUB', 'club');
  const left = { leftTo: 'Buyer veiled', note: 'Departure note veiled' };
  const departure = await transfer({ animals: [open.id], date: '2017-03-04', ...left });
  ledger.keep('the departure of a club animal', departure, ['owner', 'other', 'registrar']);
  ledger.addAll('the departure of a club animal', left, inPrivate);

  const given = await animal('GIVEN-VEILED', 'private');
  ledger.keep('the private animal that was given', given, inPrivate, { code: 'GIVEN-VEILED' });
  const gift = await transfer({ to: third.id, animals: [given.id], note: 'Gift note veiled' });
  await third.http.post(`/api/v1/transfers/${gift.id}/acceptance`).set('If-Match', '*').send({}).expect(201);
  ledger.keep('the gift of a private animal', gift, inPrivate, { note: 'Gift note veiled' });
  // the giver still sees the animal, but not where it lives now
  const members = [{ individualId: given.id, joined: '2018-04-05' }];
  const home = await new Factory(third.http).pairing({ name: 'Tank Dritte', members });
  ledger.keep('the new home of the given animal', home, ['registrar'], { name: 'Tank Dritte', joined: '2018-04-05' });
}
