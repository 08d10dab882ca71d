import { hidden, hiddenAtHome, isStranger, owned, seen, seenAtHome } from '../people/visibility.ts';
import { tableOf, type KindWord } from './kind-words.ts';
import type { RecordKind } from './kept/kept-form.queries.ts';

/**
 * SQL conditions under which whoever asks may see a record of any kind. Animals, sources and remarks say it themselves; a clutch is
 * seen by its keeper and registrars, and by whoever may see one of its standing young or is kept from none (a clutch without young
 * hides nothing); a pairing likewise by its animals; a remark only together with what it is about.
 */
export type Seen = (alias: string) => string;

const seenIndividual: Seen = (alias) => seen('individual', alias);
const seenSource: Seen = (alias) => seen('source', alias);
const everything: Seen = () => 'true';

/** Clutches (individual_clutch_index, individual_private_index). To a stranger only those with public young. */
export const seenClutch: Seen = (alias) => {
  if (owned(alias) === 'true') return 'true';
  // a scalar, since the planner would rather read all animals into a hash than look for those of fifty clutches
  const shown = `(select true from individual y where y.clutch_id = ${alias}.id and y.withdrawn_at is null and ${seen('individual', 'y')} limit 1) is true`;
  if (isStranger()) return shown;
  const concealed = `exists (select from individual y where y.clutch_id = ${alias}.id and ${hidden('individual', 'y')})`;
  return `(${owned(alias)} or not ${concealed} or ${shown})`;
};

/** Pairings (pairing_member_pairing_index). To a stranger none. */
export const seenPairing: Seen = (alias) => {
  if (isStranger()) return 'false';
  if (owned(alias) === 'true') return 'true';
  const member = (condition: string): string =>
    `exists (select from pairing_member m join individual y on y.id = m.individual_id where m.pairing_id = ${alias}.id and ${condition})`;
  return `(${owned(alias)} or not ${member(hiddenAtHome('individual', 'y'))} or ${member(`y.withdrawn_at is null and ${seenAtHome('individual', 'y')}`)})`;
};

/** Remarks, together with what they are about (primary keys). */
export const seenObservation: Seen = (alias) => {
  const about = (table: 'individual' | 'pairing' | 'clutch' | 'source'): string[] => {
    const condition = seenIn[table]('s');
    return condition === 'true'
      ? []
      : [
          `(${alias}.${table}_id is null or exists (select from ${table} s where s.id = ${alias}.${table}_id and ${condition}))`,
        ];
  };
  const subjects = (['individual', 'pairing', 'clutch', 'source'] as const).flatMap(about);
  return `(${[seen('observation', alias), ...subjects].join(' and ')})`;
};

/** Rows that are seen together with one of the records that they are about (primary keys). */
const seenWith =
  (subjects: readonly ('source' | 'individual' | 'claim')[]): Seen =>
  (alias) => {
    const conditions = subjects.flatMap((table) => {
      const condition = seenIn[table]('s');
      return condition === 'true'
        ? []
        : [
            `(${alias}.${table}_id is null or exists (select from ${table} s where s.id = ${alias}.${table}_id and ${condition}))`,
          ];
    });
    return conditions.length === 0 ? 'true' : `(${conditions.join(' and ')})`;
  };

/** Claims, together with what they are about. */
const seenClaim: Seen = (alias) => seenWith(['source', 'individual'])(alias);

/** Evidence, to members who may see its claim: papers name people. */
const seenEvidence: Seen = (alias) =>
  isStranger() ? 'false' : `exists (select from claim c where c.id = ${alias}.claim_id and ${seenClaim('c')})`;

/** Kept plans that are shared with the club, and one's own; to registrars all, to strangers none. */
const seenPlan: Seen = (alias) => {
  if (isStranger()) return 'false';
  return owned(alias) === 'true' ? 'true' : `(${alias}.visibility = 'club' or ${owned(alias)})`;
};

/** The condition for the rows of a table. */
export const seenIn: Readonly<Record<RecordKind, Seen>> = {
  species: everything,
  line: everything,
  source: seenSource,
  individual: seenIndividual,
  pairing: seenPairing,
  clutch: seenClutch,
  observation: (alias) => seenObservation(alias),
  claim: seenClaim,
  evidence: seenEvidence,
  photograph: seenWith(['individual']),
  flag_acknowledgement: seenWith(['individual']),
  kept_plan: seenPlan,
};

/** The condition for the records of a kind. */
export function seenOf(word: KindWord, alias: string): string {
  return seenIn[tableOf(word)](alias);
}
