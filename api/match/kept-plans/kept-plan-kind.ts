import type { EntityManager } from 'typeorm';
import type { JournalAction } from '../../../shared/vocabulary.ts';
import { ChangedSince, type EntryToUndo, type JournalKind, type Undo } from '../../journal/journal-kinds.ts';
import type { KeptForm } from '../../platform/journal-entry.ts';
import { sayOfChange } from '../../register/kept/note-change.ts';
import { pairingKind } from '../../register/pairings/pairings.service.ts';
import { recordKind } from '../../register/undo/record-kind.ts';
import { undoOf, type AnyKind } from '../../register/undo/undo-change.ts';
import { restoreRecord, withdrawRecord } from '../../register/withdrawal.service.ts';
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
const pairingsIn = (form: KeptForm | null): string[] => pairsIn(form).flatMap(({ pairingId }) => pairingId ?? []);
const without = (ids: readonly string[], others: readonly string[]): string[] =>
  ids.filter((id) => !others.includes(id));

/** A change is undone with what it decided of pairs. */
const undoDeciding: Undo = async (manager, entry) => {
  await undoOf(kind).changed(manager, entry);
  await writePairs(manager, entry);
};

/** Pairings that came of the change are withdrawn, those that it withdrew stand again, and the pairs are as they were. */
function undoAccepting(action: JournalAction): Undo {
  return async (manager, entry) => {
    // first the plan, whose entry is the one that tells of all
    await undoDeciding(manager, entry);
    sayOfChange(manager, entry.recordId, { action });
    const [was, became] = [pairingsIn(entry.before), pairingsIn(entry.after)];
    const [made, lost] = [without(became, was), without(was, became)];
    await requireUnchanged(manager, entry, [...made, ...lost]);
    for (const id of made) await withdrawRecord(manager, pairingKind, id, 'any', 'Accepting it was undone');
    for (const id of lost) await restoreRecord(manager, pairingKind, id, 'any');
  };
}

async function writePairs(manager: EntityManager, { recordId, before }: EntryToUndo): Promise<void> {
  for (const { place, state, pairingId, reason, warnings } of pairsIn(before))
    await manager.update(KeptPlanPair, { planId: recordId, place }, { state, pairingId, reason, warnings });
}

/** Refuses where a pairing was changed by another request than the one that is undone (journal_entry_record_index). */
async function requireUnchanged(manager: EntityManager, { id }: EntryToUndo, pairingIds: string[]): Promise<void> {
  const rows = await manager.query<{ id: string; version: number; then: number | null }[]>(
    `select p.id, p.version, (select max(j.record_version) from journal_entry j join journal_entry e on e.id = $2
        where j.record_id = p.id and j.request_id = e.request_id) as then
     from pairing p where p.id = any($1::uuid[]) order by p.id for update of p`,
    [pairingIds, id],
  );
  const changed = rows.find(({ version, then }) => version !== then);
  if (changed) throw new ChangedSince(changed.id, changed.then);
}

const words = (state: unknown): string => (state === 'declined' ? 'declined' : 'accepted');

/** What the journal has to know of kept plans. Of their pairs only what was decided is told. */
export const keptPlanJournalKind: JournalKind = recordKind(
  'kept_plan',
  kind,
  { columns: 'r.name', title: ({ name }) => `plan “${name ?? ''}”` },
  {
    hidden: 'a plan of somebody else',
    rows: {
      pairs: {
        field: 'pairs',
        line: ({ state, maleId, femaleId, pairingId, reason, warnings }, nameOf) => {
          if (state === 'proposed') return '';
          const two = [maleId, femaleId].map((id) => nameOf('individual', id as string)).join(' × ');
          const became = typeof pairingId === 'string' ? ` as ${nameOf('pairing', pairingId)}` : '';
          const because = typeof reason === 'string' ? ` (${reason})` : '';
          return [`${two}: ${words(state)}${became}${because}`, ...(warnings as string[])].join('. ');
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
