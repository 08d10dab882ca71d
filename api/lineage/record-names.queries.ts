import type { EntityManager } from 'typeorm';
import { seen } from '../people/visibility.ts';
import { seenClutch } from '../register/seen-records.ts';
import type { SourceKind } from '../../shared/vocabulary.ts';

/**
 * Names and dates of the records that an answer shows, by their primary keys. They do not belong to the revision of the
 * lineage (a new code changes no figure), so they are read fresh for every answer. A record that may not be seen has none.
 */

export interface IndividualName {
  readonly id: string;
  readonly code: string | null;
  readonly species: string;
  readonly hatched: string | null;
  readonly hatched_earliest: string | null;
  readonly hatched_latest: string | null;
}

export interface ClutchName {
  readonly id: string;
  readonly code: string | null;
  readonly laid: string | null;
  readonly laid_earliest: string | null;
  readonly laid_latest: string | null;
}

export interface SourceName {
  readonly id: string;
  readonly code: string | null;
  readonly kind: SourceKind;
  readonly date: string | null;
  readonly date_earliest: string | null;
  readonly date_latest: string | null;
}

export function readIndividualNames(manager: EntityManager, ids: readonly string[]): Promise<IndividualName[]> {
  return manager.query(
    `select i.id, i.code, s.scientific_name as species, i.hatched, i.hatched_earliest::text, i.hatched_latest::text
     from individual i join species s on s.id = i.species_id where i.id = any($1) and ${seen('individual', 'i')}`,
    [ids],
  );
}

export function readClutchNames(manager: EntityManager, ids: readonly string[]): Promise<ClutchName[]> {
  return manager.query(
    `select id, code, laid, laid_earliest::text, laid_latest::text from clutch c where id = any($1) and ${seenClutch('c')}`,
    [ids],
  );
}

export function readSourceNames(manager: EntityManager, ids: readonly string[]): Promise<SourceName[]> {
  return manager.query(
    `select id, code, kind, date, date_earliest::text, date_latest::text from source o
     where id = any($1) and ${seen('source', 'o')}`,
    [ids],
  );
}
