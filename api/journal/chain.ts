import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';

/** An entry as it is sealed: every stored column. A column that comes later must be left out of entries that are older. */
export interface SealedContent {
  readonly id: string;
  /** RFC 3339 in UTC, milliseconds. */
  readonly at: string;
  readonly keeperId: string | null;
  readonly via: string;
  readonly requestId: string | null;
  readonly action: string;
  readonly kind: string;
  readonly recordId: string | null;
  readonly recordVersion: number | null;
  readonly ownerId: string | null;
  readonly visibility: string;
  readonly before: unknown;
  readonly after: unknown;
  readonly reason: string | null;
  readonly reversesId: string | null;
  readonly aboutIds: readonly string[];
}

/** What the first entry of a chain follows: 32 zero bytes, hexadecimal. */
export const beginning = '0'.repeat(64);

/** The SQL list of what `SealedContent` reads, for journal_entry under this alias. */
export function contentColumns(alias: string): string {
  return [
    'id',
    'keeper_id as "keeperId"',
    'via',
    'request_id as "requestId"',
    'action',
    'kind',
    'record_id as "recordId"',
    'record_version as "recordVersion"',
    'owner_id as "ownerId"',
    'visibility',
    'before',
    'after',
    'reason',
    'reverses_id as "reversesId"',
    'about_ids as "aboutIds"',
  ]
    .map((column) => `${alias}.${column}`)
    .concat(`to_char(${alias}.at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') as at`)
    .join(', ');
}

/**
 * The hash, hexadecimal, of an entry at its place in the chain: SHA-256 of the canonical JSON (RFC 8785) of
 * `{sequence, previousHash, entry}`. Numbers are doubles, as RFC 8785 has them.
 */
export function hashOfSeal(sequence: number, previousHash: string, entry: SealedContent): string {
  const text = canonicalize({ sequence, previousHash, entry });
  if (text === undefined) throw new Error('an entry is an object, which always has a canonical form');
  return createHash('sha256').update(text, 'utf8').digest('hex');
}
