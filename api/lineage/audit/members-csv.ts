import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { csvRow } from '../../platform/csv.ts';
import type { KnownFlags } from '../../provenance/acknowledgements/known-flags.ts';
import type { LineageSnapshot } from '../lineage-snapshot.ts';
import type { AuditedMember } from './audit-line.ts';
import { codesOf } from './audit-view.ts';
import type { MemberRow } from './audited-members.queries.ts';

const head = [
  'number',
  'code',
  'sex',
  'status',
  'hatched',
  'died',
  'keeper',
  'tracedShare',
  'tracedShareLeast',
  'outsideShare',
  'flags',
  'acknowledged',
];

/**
 * Members of a line as CSV, one row each in the order of their numbers, with their flags separated by spaces, then
 * those of them that are acknowledged of the animal; shares from 0 to 1 with full
 * precision. Members that came after the audit was computed are left out.
 */
export function membersCsv(
  snapshot: LineageSnapshot,
  members: readonly AuditedMember[],
  rows: readonly MemberRow[],
  known: KnownFlags,
): string {
  const found = new Map(members.map((member) => [snapshot.idOf(member.individual), member]));
  const told = rows.flatMap((row) => {
    const member = found.get(row.id);
    if (!member) return [];
    const { code, sex, status, hatched, died, keeper } = row;
    const shares = [member.traced, member.least, member.outside];
    const codes = codesOf(member.bits);
    const flags = [codes, known.among(row.id, codes)].map((some) => some.join(' '));
    return [csvRow([formatRegistryNumber(row.number), code, sex, status, hatched, died, keeper, ...shares, ...flags])];
  });
  return csvRow(head) + told.join('');
}
