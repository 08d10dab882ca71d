import type { LineAudit } from './audit-line.ts';
import { say } from '../../platform/say.ts';

/** Part of the members from which on it is said that dates are missing. */
const UNDATED_PART = 0.1;

/** What must stand beside an audit, in plain sentences. */
export function auditCautions({ members, living, years }: LineAudit): string[] {
  if (members === 0) return [say`The line has no members, or none that you may see.`];
  const cautions = [say`Only members that you may see are counted.`];
  if (living === 0) cautions.push(say`No member lives: parts of the gene pool are those of all members.`);
  if (members - years.dated > UNDATED_PART * members)
    cautions.push(
      say`${members - years.dated} of ${members} members are not dated to a year of hatching; no year counts them among its young.`,
    );
  if (years.untold > UNDATED_PART * members)
    cautions.push(
      say`The dates of ${years.untold} of ${members} members leave open in which years they lived; they are left out of those that lived at the end of a year.`,
    );
  cautions.push(say`Founders count as unrelated unless their source states a base kinship.`);
  return cautions;
}
