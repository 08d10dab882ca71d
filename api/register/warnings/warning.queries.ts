import type { EntityManager } from 'typeorm';
import { forMembers } from '../../people/visibility.ts';
import { warningsForClutch, warningsForIndividual } from '../plausibility.ts';
import type { ClutchFacts, Warning } from './facts.ts';
import { readClutchFacts, readFactsOfClutches, readFactsOfIndividuals, readIndividualFacts } from './facts.queries.ts';
import type { WarningView } from './warning.view.ts';

/** The kinds of record that carry warnings. */
export type WarnedKind = 'individual' | 'clutch';

/** What looks implausible in an animal, as it is now; empty where there is no such animal. */
export async function readIndividualWarnings(manager: EntityManager, id: string): Promise<WarningView[]> {
  const facts = await readIndividualFacts(manager, id);
  return facts ? withConfirmations(manager, 'individual', id, warningsForIndividual(facts)) : [];
}

/** What looks implausible in a clutch, as it is now; empty where there is no such clutch. */
export async function readClutchWarnings(manager: EntityManager, id: string): Promise<WarningView[]> {
  const facts = await readClutchFacts(manager, id);
  return facts ? warningsByFacts(manager, id, facts) : [];
}

/** Warnings that nobody confirmed in their present words, of those of some records that carry any; by their ids. */
export async function readOpenWarnings(
  manager: EntityManager,
  kind: WarnedKind,
  ids: readonly string[],
): Promise<Map<string, WarningView[]>> {
  const found =
    kind === 'individual'
      ? mapped(await readFactsOfIndividuals(manager, ids), warningsForIndividual)
      : mapped(await readFactsOfClutches(manager, ids), warningsForClutch);
  const warned = [...found].filter(([, warnings]) => warnings.length > 0);
  const confirmed = await readConfirmed(
    manager,
    kind,
    warned.map(([id]) => id),
  );
  return new Map(
    warned.flatMap(([id, warnings]): [string, WarningView[]][] => {
      const open = toViews(
        warnings,
        confirmed.filter((row) => row.of === id),
      ).filter((warning) => warning.confirmed === null);
      return open.length > 0 ? [[id, open]] : [];
    }),
  );
}

const mapped = <Facts>(facts: Map<string, Facts>, warn: (facts: Facts) => Warning[]): Map<string, Warning[]> =>
  new Map([...facts].map(([id, each]) => [id, warn(each)]));

/** As `readClutchWarnings`, by facts that were read before. */
export function warningsByFacts(manager: EntityManager, id: string, facts: ClutchFacts): Promise<WarningView[]> {
  return withConfirmations(manager, 'clutch', id, warningsForClutch(facts));
}

/** A confirmation holds for the words that were confirmed: once the figures change, the warning stands again (confirmed_warning_once). */
async function withConfirmations(
  manager: EntityManager,
  kind: WarnedKind,
  id: string,
  warnings: readonly Warning[],
): Promise<WarningView[]> {
  return warnings.length === 0 ? [] : toViews(warnings, await readConfirmed(manager, kind, [id]));
}

interface ConfirmedRow {
  readonly of: string;
  readonly code: string;
  readonly detail: string;
  readonly reason: string;
  readonly keeper: string | null;
  readonly at: Date;
}

function readConfirmed(manager: EntityManager, kind: WarnedKind, ids: readonly string[]): Promise<ConfirmedRow[]> {
  return manager.query<ConfirmedRow[]>(
    `select w.${kind}_id as of, w.code, w.detail, w.reason, ${forMembers('k.name')} as keeper, w.confirmed_at as at
     from confirmed_warning w join keeper k on k.id = w.keeper_id where w.${kind}_id = any($1)`,
    [ids],
  );
}

function toViews(warnings: readonly Warning[], rows: readonly ConfirmedRow[]): WarningView[] {
  return warnings.map((warning) => {
    const confirmed = rows.find((row) => row.code === warning.code && row.detail === warning.detail);
    return {
      code: warning.code,
      detail: warning.detail,
      fields: [...warning.fields],
      confirmed: confirmed
        ? { reason: confirmed.reason, keeper: confirmed.keeper, at: confirmed.at.toISOString() }
        : null,
    };
  });
}

/** Stores that a keeper accepts a warning in its present words; a second time replaces the first. */
export async function storeConfirmation(
  manager: EntityManager,
  kind: WarnedKind,
  id: string,
  warning: { readonly code: string; readonly detail: string },
  reason: string,
  keeperId: string,
): Promise<void> {
  await manager.query(
    `insert into confirmed_warning (${kind}_id, code, detail, reason, keeper_id) values ($1, $2, $3, $4, $5)
     on conflict (individual_id, clutch_id, code) do update
       set detail = excluded.detail, reason = excluded.reason, keeper_id = excluded.keeper_id, confirmed_at = now()`,
    [id, warning.code, warning.detail, reason, keeperId],
  );
}

/** Takes a confirmation back; gives whether there was one. */
export async function removeConfirmation(
  manager: EntityManager,
  kind: WarnedKind,
  id: string,
  code: string,
): Promise<boolean> {
  const [rows] = await manager.query<[unknown[], number]>(
    `delete from confirmed_warning where ${kind}_id = $1 and code = $2 returning 1`,
    [id, code],
  );
  return rows.length > 0;
}
