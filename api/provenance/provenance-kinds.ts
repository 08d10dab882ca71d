import { formatRegistryNumber } from '../../shared/registry-number.ts';
import type { JournalKind, Undo } from '../journal/journal-kinds.ts';
import { ConflictProblem } from '../platform/problem.ts';
import { recordKind } from '../register/undo/record-kind.ts';
import { undoOf, type AnyKind } from '../register/undo/undo-change.ts';
import { acknowledgementKind } from './acknowledgements/acknowledgement.queries.ts';
import { claimKind } from './claims/claims.service.ts';
import { evidenceKind } from './evidence/evidence.service.ts';
import { photographKind } from './photographs/photographs.service.ts';
import { say } from '../platform/say.ts';

const claims = claimKind as unknown as AnyKind;
const evidence = evidenceKind as unknown as AnyKind;
const photographs = photographKind as unknown as AnyKind;
const acknowledgements = acknowledgementKind as unknown as AnyKind;

/** Evidence that was reviewed stays as it was reviewed. */
const undoUnreviewed: Undo = async (manager, entry) => {
  if (entry.after?.['review'] !== 'pending')
    throw new ConflictProblem(say`This evidence was reviewed as it is. Withdraw it instead.`);
  await undoOf(evidence).changed(manager, entry);
};

/** Which records caused a flag is not for everybody who may read of it. */
const countOfCauses = (ids: unknown): string =>
  Array.isArray(ids) ? (ids.length === 1 ? say`1 record` : say`${ids.length} records`) : '';

/** What the journal has to know of claims, evidence, photographs and acknowledged flags. A review is not undone: a registrar reviews again, with a reason. */
export const provenanceKinds: readonly JournalKind[] = [
  recordKind(
    'claim',
    claims,
    { columns: 'r.value as name', title: ({ name }) => say`claim of “${name ?? ''}”` },
    { hidden: say`a private claim` },
  ),
  recordKind(
    'evidence',
    evidence,
    { columns: 'r.reference as name', title: ({ name }) => say`evidence “${name ?? ''}”` },
    { hidden: say`private evidence`, undo: { changed: undoUnreviewed } },
  ),
  recordKind(
    'photograph',
    photographs,
    {
      columns: 'r.view, (select i.number::text from individual i where i.id = r.individual_id) as number',
      title: ({ view, number }) =>
        say`photograph of ${view === 'other' ? '' : say`the ${view ?? ''} of `}${formatRegistryNumber(number ?? '')}`,
    },
    { hidden: say`a private photograph` },
  ),
  recordKind(
    'flag_acknowledgement',
    acknowledgements,
    {
      columns:
        'r.code, (select l.name from line l where l.id = r.line_id) as line, (select i.number::text from individual i where i.id = r.individual_id) as number',
      title: ({ code, line, number }) =>
        say`acknowledgement of ${code ?? ''} of ${number === null || number === undefined ? say`the line ${line ?? ''}` : formatRegistryNumber(number)}`,
    },
    { hidden: say`a private acknowledgement`, words: { recordIds: countOfCauses } },
  ),
];
