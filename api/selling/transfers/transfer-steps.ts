import type { TransferState } from '../../../shared/vocabulary.ts';
import { may, permissionsOf } from '../../people/permissions.ts';
import type { Acting } from '../../platform/acting.ts';
import type { TransferStep } from './transfer.view.ts';

/** A transfer as far as it decides who may do what. */
export interface Between {
  readonly state: TransferState;
  readonly keeperId: string;
  readonly toId: string | null;
}

/** Whether somebody may change a transfer as its giver: the giver or a registrar. */
export function isForGiver(who: Acting, { keeperId }: Pick<Between, 'keeperId'>): boolean {
  return may(permissionsOf(who, { publicReading: false }), 'change', 'transfer', { keeperId });
}

/** Whether somebody may answer an offer: whom it is made to, or a registrar who did not make it. */
export function isForReceiver(who: Acting, { keeperId, toId }: Pick<Between, 'keeperId' | 'toId'>): boolean {
  if (toId === null || (who.id === keeperId && who.id !== toId)) return false;
  return may(permissionsOf(who, { publicReading: false }), 'change', 'transfer', { keeperId: toId });
}

/**
 * What somebody can do with a transfer as it is.
 *
 * @param back how many of its animals came back after they had left the club
 */
export function stepsFor(
  who: Acting,
  transfer: Between & { readonly count: number; readonly back: number },
): TransferStep[] {
  const [giver, receiver] = [isForGiver(who, transfer), isForReceiver(who, transfer)];
  if (transfer.state === 'offered')
    return [...(receiver ? (['accept', 'decline'] as const) : []), ...(giver ? (['withdraw'] as const) : [])];
  if (transfer.state !== 'accepted' || transfer.toId !== null || !giver) return [];
  return [
    ...(transfer.back === 0 ? (['withdraw'] as const) : []),
    ...(transfer.back < transfer.count ? (['return'] as const) : []),
  ];
}
