import { dateBounds } from '../../../shared/edtf.ts';
import { sourceTitle } from '../../register/titles.ts';
import { withoutPositions } from '../places/words-of-place.ts';
import type { ClaimRow, EntryRow, LineRow, SourceRow, VerdictRow } from './label-history.queries.ts';
import type { HistoryRecordView, LabelEvent, LabelEventView } from './label-history.view.ts';

/** An event of the register: when it was written there is when it happened. */
function written(event: LabelEvent, at: Date, told: Omit<LabelEventView, 'event' | 'date' | 'at'>): LabelEventView {
  return { event, date: at.toISOString().slice(0, 10), at: at.toISOString(), ...told };
}

/** That animals came under a label. */
export function receivedEvents(sources: readonly SourceRow[]): LabelEventView[] {
  return sources.map(({ id, kind, date, label, receivedFrom }) => ({
    event: 'received',
    date,
    at: null,
    who: receivedFrom,
    label,
    before: null,
    reason: null,
    record: { kind: 'source', id, title: sourceTitle({ kind, date }) },
  }));
}

/** What lines were called when: from their names of today, back through their changes of name. */
export class LineNames {
  readonly #lines: ReadonlyMap<string, LineRow>;
  readonly #renamings: readonly EntryRow[];

  constructor(lines: readonly LineRow[], entries: readonly EntryRow[]) {
    this.#lines = new Map(lines.map((line) => [line.id, line]));
    this.#renamings = entries.filter(({ isAdding }) => !isAdding);
  }

  /** The name of a line at an instant, as far as whoever asks may read its changes; null for no line. */
  at(lineId: string | null, instant: Date): string | null {
    if (lineId === null) return null;
    const later = this.#renamings.find(({ recordId, at }) => recordId === lineId && at > instant);
    return later?.from ?? this.#lines.get(lineId)?.name ?? null;
  }
}

/** Under which line an animal was entered, and every change of it since. */
export function lineEvents(
  animal: { readonly lineId: string | null; readonly createdAt: Date; readonly keeper: string | null },
  record: HistoryRecordView,
  entries: readonly EntryRow[],
  names: LineNames,
): LabelEventView[] {
  const changes = entries.filter(({ isAdding }) => !isAdding);
  const adding = entries.find(({ isAdding }) => isAdding);
  // of an animal that a sheet brought there is no entry of its own: what the first change found was there from the start
  const atFirst = adding ? adding.to : changes[0] ? changes[0].from : animal.lineId;
  const at = adding?.at ?? animal.createdAt;
  const entered = written('entered', at, {
    who: adding ? adding.keeper : animal.keeper,
    label: names.at(atFirst, at),
    before: null,
    reason: null,
    record,
  });
  return [
    entered,
    ...changes.map(({ at, keeper, reason, from, to }) =>
      written('line-changed', at, {
        who: keeper,
        label: names.at(to, at),
        before: names.at(from, at),
        reason,
        record,
      }),
    ),
  ];
}

/** Changes of the names of lines. */
export function renamingEvents(entries: readonly EntryRow[], lines: readonly LineRow[]): LabelEventView[] {
  const names = new Map(lines.map(({ id, name }) => [id, name]));
  return entries
    .filter(({ isAdding }) => !isAdding)
    .map(({ recordId, at, keeper, reason, from, to }) => {
      const record = { kind: 'line' as const, id: recordId, title: names.get(recordId) ?? '' };
      return written('line-renamed', at, { who: keeper, label: to, before: from, reason, record });
    });
}

/** That claims were made, changed and withdrawn. */
export function claimEvents(
  claims: readonly ClaimRow[],
  entries: readonly EntryRow[],
  isStranger: boolean,
): LabelEventView[] {
  const told = (value: string | null): string | null => (isStranger ? withoutPositions(value) : value);
  return claims.flatMap((claim) => {
    const record = { kind: 'claim' as const, id: claim.id, title: `claim of “${told(claim.value) ?? ''}”` };
    const changes = entries.filter(({ recordId, isAdding }) => recordId === claim.id && !isAdding);
    const common = { before: null, reason: null, record };
    const made = written('claimed', claim.createdAt, {
      ...common,
      who: claim.statedBy ?? claim.keeper,
      label: told(changes[0]?.from ?? claim.value),
    });
    const changed = changes.map(({ at, keeper, reason, from, to }) =>
      written('claim-changed', at, { who: keeper, label: told(to), before: told(from), reason, record }),
    );
    const { withdrawnAt, withdrawnReason: reason } = claim;
    if (withdrawnAt === null) return [made, ...changed];
    return [
      made,
      ...changed,
      written('claim-withdrawn', withdrawnAt, { ...common, who: null, label: told(claim.value), reason }),
    ];
  });
}

/** That evidence was accepted or turned down, and withdrawn after that. */
export function verdictEvents(verdicts: readonly VerdictRow[]): LabelEventView[] {
  return verdicts.flatMap((verdict) => {
    const record = { kind: 'evidence' as const, id: verdict.id, title: `evidence “${verdict.reference}”` };
    const common = { label: verdict.claim, before: null, record };
    const event = `evidence-${verdict.review}` as const;
    const judged = written(event, verdict.reviewedAt, {
      ...common,
      who: verdict.reviewer,
      reason: verdict.reviewReason,
    });
    if (verdict.withdrawnAt === null) return [judged];
    return [
      judged,
      written('evidence-withdrawn', verdict.withdrawnAt, { ...common, who: null, reason: verdict.withdrawnReason }),
    ];
  });
}

/** Events in the order in which they happened; what has no date, or only one from before the register, comes first. */
export function inOrder(events: readonly LabelEventView[]): LabelEventView[] {
  const instant = ({ at, date }: LabelEventView): string => at ?? dateBounds(date ?? '')?.earliest ?? '';
  return [...events].sort((one, other) => {
    const [first, second] = [instant(one), instant(other)];
    return first < second ? -1 : first > second ? 1 : 0;
  });
}
