import type { EntityManager } from 'typeorm';
import type { SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { readKnownAnimals } from '../knowledge.queries.ts';
import type { ForeignClaim } from './foreign-claims.ts';
import { animalKey, animalsOf, clutchKey, sourceKey } from './foreign-keys.ts';
import type { ForeignPlan } from './foreign-plan.ts';
import type { ForeignRecord } from './foreign-record.entity.ts';
import type { readMade } from './recognised.queries.ts';

type CameIn = Pick<ForeignRecord, 'kind' | 'key'> & { readonly id: string };
type Made = Awaited<ReturnType<typeof readMade>>;

/** The records here of all animals of a sheet, those that were known and those that came in. */
export async function recordsOf(
  manager: EntityManager,
  { codes, incoming, known }: ForeignPlan,
  made: Made,
): Promise<ForeignPlan['known']> {
  const idOf = (animal: (typeof incoming)[number]): string => made.individual.get(codes.animal(animal)) ?? '';
  const here = await readKnownAnimals(manager, incoming.map(idOf));
  const records = new Map(known);
  for (const animal of incoming) {
    const record = here.get(idOf(animal));
    if (record) records.set(animal.ref, record);
  }
  return records;
}

/** Which records here are which of the sheet, to know them again. */
export function cameIn(sheet: SheetDocument, { codes, incoming, known, knownRefs }: ForeignPlan, made: Made): CameIn[] {
  const told = animalsOf(sheet);
  const records: CameIn[] = [];
  const add = (kind: ForeignRecord['kind'], key: string | null, id: string | undefined): void => {
    if (key !== null && id !== undefined) records.push({ kind, key, id });
  };
  for (const animal of incoming)
    add('individual', animalKey(animal, sheet.number), made.individual.get(codes.animal(animal)));
  // an animal that the keeper named is recognised by itself from now on
  for (const [ref, { id }] of known) {
    const animal = told.get(ref);
    if (animal) add('individual', animalKey(animal, sheet.number), id);
  }
  for (const clutch of sheet.clutches)
    if (!knownRefs.has(clutch.ref)) add('clutch', clutchKey(clutch, told), made.clutch.get(codes.onSheet(clutch.ref)));
  for (const source of sheet.sources)
    if (!knownRefs.has(source.ref)) add('source', sourceKey(source), made.source.get(codes.onSheet(source.ref)));
  return records;
}

/** The claims of the sheet on sources and animals that came in. */
export function claimsOf(
  sheet: SheetDocument,
  { codes, incoming, knownRefs }: ForeignPlan,
  made: Made,
): ForeignClaim[] {
  const claims: ForeignClaim[] = [];
  for (const { ref, claims: told } of sheet.sources) {
    const sourceId = made.source.get(codes.onSheet(ref));
    if (sourceId !== undefined && !knownRefs.has(ref))
      claims.push(...told.map((claim) => ({ about: { sourceId }, claim })));
  }
  for (const animal of incoming) {
    const individualId = made.individual.get(codes.animal(animal));
    if (individualId !== undefined && 'claims' in animal)
      claims.push(...animal.claims.map((claim) => ({ about: { individualId }, claim })));
  }
  return claims;
}
