import type { ClutchItem } from '../api/types.ts';
import type { QueueEntry } from './queue-entry.ts';

/** Where in the list of clutches one stands that an entry may have made: of its keeper, in its pairing, laid in its year. */
export function whereToLook({
  keeperId,
  body,
}: Pick<QueueEntry, 'keeperId' | 'body'>): Record<string, string | number> {
  const { pairingId, laid } = body;
  const year = typeof laid === 'string' ? /^\d{4}/.exec(laid)?.[0] : undefined;
  return {
    keeperId,
    ...(typeof pairingId === 'string' ? { pairingId } : {}),
    ...(year === undefined ? {} : { laidFrom: year, laidTo: year }),
    limit: 200,
  };
}

/** Whether a clutch is, by its day and its code, what an entry says; counts may have changed since. */
export const mayBe = (clutch: Pick<ClutchItem, 'laid' | 'code'>, { body }: Pick<QueueEntry, 'body'>): boolean =>
  (['laid', 'code'] as const).every((field) => (body[field] ?? null) === null || body[field] === clutch[field]);
