import type { EntityManager } from 'typeorm';
import type { JournalAction } from '../../../shared/vocabulary.ts';
import type { EntryToUndo, JournalKind, Undo } from '../../journal/journal-kinds.ts';
import type { KeptForm } from '../../platform/journal-entry.ts';
import { say, together } from '../../platform/say.ts';
import { sayOfChange } from '../../register/kept/note-change.ts';
import { pairingKind } from '../../register/pairings/pairings.service.ts';
import { recordKind } from '../../register/undo/record-kind.ts';
import { entriesOfRequest } from '../../register/undo/entries-of-request.queries.ts';
import { undoOf, type AnyKind } from '../../register/undo/undo-change.ts';
import { KeptPlanPair, type PairState } from './kept-plan-pair.entity.ts';
import { keptPlanKind } from './kept-plan.queries.ts';

/** A pair as an entry of the journal keeps it. */
interface KeptPair {
  readonly place: number;
  readonly state: PairState;
  readonly pairingId: string | null;
  readonly reason: string | null;
  readonly warnings: string[];
}

const kind = keptPlanKind as unknown as AnyKind;
const pairsIn = (form: KeptForm | null): readonly KeptPair[] => (form?.['pairs'] ?? []) as readonly KeptPair[];

/** A change is undone with what it decided of pairs. */
const undoDeciding: Undo = async (manager, entry) => {
  await undoOf(kind).changed(manager, entry);
  await writePairs(manager, entry);
};

/**
 * All that the request did to pairings is undone: those that it made are withdrawn, stays that it ended go on. Refused where one of them was
 * changed since.
 */
function undoAccepting(action: JournalAction): Undo {
  return async (manager, entry) => {
    // first the plan, whose entry is the one that tells of all
    await undoDeciding(manager, entry);
    sayOfChange(manager, entry.recordId, { action });
    const undo: Partial<Record<JournalAction, Undo>> = undoOf(pairingKind);
    for (const one of await entriesOfRequest(manager, entry.id, ['pairing'])) await undo[one.action]?.(manager, one);
  };
}

async function writePairs(manager: EntityManager, { recordId, before }: EntryToUndo): Promise<void> {
  for (const { place, state, pairingId, reason, warnings } of pairsIn(before))
    await manager.update(KeptPlanPair, { planId: recordId, place }, { state, pairingId, reason, warnings });
}

/** What the journal has to know of kept plans. Of their pairs only what was decided is told. */
export const keptPlanJournalKind: JournalKind = recordKind(
  'kept_plan',
  kind,
  { columns: 'r.name', title: ({ name }) => say`plan “${name ?? ''}”` },
  {
    hidden: say`a plan of somebody else`,
    rows: {
      pairs: {
        field: 'pairs',
        line: ({ state, maleId, femaleId, pairingId, reason, warnings }, nameOf) => {
          if (state === 'proposed') return '';
          const two = [maleId, femaleId].map((id) => nameOf('individual', id as string)).join(' × ');
          const decided =
            state === 'declined'
              ? say`${two}: declined`
              : typeof pairingId === 'string'
                ? say`${two}: accepted as ${nameOf('pairing', pairingId)}`
                : say`${two}: accepted`;
          const because = typeof reason === 'string' ? ` (${reason})` : '';
          const asKept = [because, ...(warnings as string[])].join('. ');
          return together([decided], ([told]) => `${told ?? ''}${asKept}`);
        },
      },
    },
    undo: {
      changed: undoDeciding,
      paired: undoAccepting('pairing-undone'),
      'pairing-restored': undoAccepting('pairing-undone'),
      'pairing-undone': undoAccepting('pairing-restored'),
    },
  },
);
