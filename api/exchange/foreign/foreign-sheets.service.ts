import { createHash } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { verifySheet } from '../../../shared/sheet/verify-sheet.ts';
import type { Visibility } from '../../../shared/vocabulary.ts';
import type { Acting } from '../../platform/acting.ts';
import { writeEntry } from '../../platform/journal-entry.ts';
import { ConflictProblem, InvalidProblem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { resolveIndividuals } from '../../register/individuals/resolve-individuals.queries.ts';
import { allowLongWork, insertImport } from '../import.queries.ts';
import type { CreatedCounts } from '../import.view.ts';
import { countsOf } from '../imports.service.ts';
import { readKnownAnimals } from '../knowledge.queries.ts';
import { writePlan } from '../plan-writer.ts';
import { writeForeignClaims, type ForeignClaim } from './foreign-claims.ts';
import { animalKey, animalsOf, clutchKey, sourceKey } from './foreign-keys.ts';
import { planForeignSheet, type ForeignPlan } from './foreign-plan.ts';
import type { ForeignRecord } from './foreign-record.entity.ts';
import type { ForeignSheetRequest } from './foreign-sheet.dto.ts';
import type { ForeignAnimalView, ForeignSheetView } from './foreign-sheet.view.ts';
import { isOwnKey, readBelieved, type BelievedRegister } from './other-registers.queries.ts';
import { noteForeignRecords, readMade } from './recognised.queries.ts';

/** A sheet whose signature was found to be good. */
interface GenuineSheet {
  readonly register: BelievedRegister;
  readonly sheet: SheetDocument;
  readonly words: string;
}

type CameIn = Pick<ForeignRecord, 'kind' | 'key'> & { readonly id: string };
type Made = Awaited<ReturnType<typeof readMade>>;

/** Takes the animals of provenance sheets of other registers in, with their ancestors. */
@Injectable()
export class ForeignSheetsService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /**
   * Checks a sheet and writes in one transaction what the register does not know of it, as an import that can be undone as a whole.
   *
   * @throws InvalidProblem for a sheet that is not genuine, whose register is not believed, or that cannot be taken in; ConflictProblem where
   * everything on it is known already
   */
  take(keeper: Acting, request: ForeignSheetRequest, visibility: Visibility): Promise<ForeignSheetView> {
    return inTransaction(this.dataSource, async (manager) => {
      await allowLongWork(manager);
      await lockPedigree(manager);
      const { genuine, found } = await this.#understand(manager, keeper, request);
      const { plan } = found;
      if (plan === null)
        throw new ConflictProblem('Every animal of this sheet is in the register already; nothing is to be taken in.');
      const view = viewOf(genuine, found, found.known);
      const sha256 = createHash('sha256').update(request.file).digest('hex');
      const warnings = view.warnings.map(({ detail }) => ({ row: 1, column: '', detail }));
      const asImport = { ...view, rows: plan.table.length, warnings, warningCount: warnings.length };
      const id = await insertImport(manager, keeper.id, asImport, sha256);
      await writePlan(manager, plan, keeper.id, id, visibility);
      const made = await readMade(manager, id);
      await noteForeignRecords(manager, genuine.register.id, genuine.sheet.number, cameIn(genuine.sheet, found, made));
      const { name } = genuine.register;
      await writeForeignClaims(manager, keeper.id, name, genuine.sheet, claimsOf(genuine.sheet, found, made));
      await writeEntry(manager, {
        action: 'imported',
        kind: 'import',
        recordId: id,
        ownerId: keeper.id,
        before: null,
        after: {
          register: name,
          provenanceSheet: genuine.sheet.number,
          created: view.created,
          claims: view.claims,
          sheetSha256: sha256,
        },
      });
      return { ...viewOf(genuine, found, await recordsOf(manager, found, made)), id };
    });
  }

  /** Checks a sheet and tells what would come in. @throws InvalidProblem as `take` does */
  async check(keeper: Acting, request: ForeignSheetRequest): Promise<ForeignSheetView> {
    const { genuine, found } = await this.#understand(this.dataSource.manager, keeper, request);
    return viewOf(genuine, found, found.known);
  }

  async #understand(
    manager: EntityManager,
    keeper: Acting,
    request: ForeignSheetRequest,
  ): Promise<{ genuine: GenuineSheet; found: ForeignPlan }> {
    const genuine = await genuineSheet(manager, request.file);
    const { register, sheet } = genuine;
    const known = await knownHere(manager, sheet, request);
    const found = await planForeignSheet(manager, keeper.id, register, sheet, prefixOf(request, register.name), known);
    return { genuine, found };
  }
}

async function genuineSheet(manager: EntityManager, file: string): Promise<GenuineSheet> {
  const registers = await readBelieved(manager);
  const { outcome, words, sheet, kid } = await verifySheet(
    new TextEncoder().encode(file),
    registers.flatMap(({ keys }) => keys),
  );
  const register = registers.find(({ keys }) => keys.some((key) => key.kid === kid));
  if (register && sheet && (outcome === 'genuine' || outcome === 'expired')) return { register, sheet, words };
  const detail =
    outcome !== 'unknown-key'
      ? words
      : (await isOwnKey(manager, kid ?? ''))
        ? 'This register issued the sheet itself: its animals are here already.'
        : `${words} A registrar can add the register that it comes from with its keys, once somebody there has named them.`;
  throw new InvalidProblem('This sheet is not taken in.', [{ pointer: '/file', detail }]);
}

/** Initials of the words of a name, at most eight; letters that need accents are left bare. */
function prefixOf({ prefix }: ForeignSheetRequest, name: string): string {
  if (prefix !== undefined) return prefix;
  const bare = name.normalize('NFD').replace(/[^A-Za-z0-9 ]/g, '');
  const initials = bare
    .split(' ')
    .filter(Boolean)
    .map((word) => word.charAt(0).toUpperCase());
  return initials.slice(0, 8).join('') || 'X';
}

async function knownHere(
  manager: EntityManager,
  sheet: SheetDocument,
  { known = [] }: ForeignSheetRequest,
): Promise<Map<string, string>> {
  const told = animalsOf(sheet);
  const missing = known.findIndex(({ ref }) => !told.has(ref));
  if (missing >= 0)
    throw new InvalidProblem('The sheet has no such animal.', [
      { pointer: `/known/${missing}/ref`, detail: 'Give a ref that stands on the sheet, such as a2.' },
    ]);
  const found = await resolveIndividuals(
    manager,
    known.map(({ individual }, place) => ({ text: individual, pointer: `/known/${place}/individual` })),
  );
  return new Map(known.map(({ ref }, place) => [ref, found[place]?.id ?? '']));
}

/** The records here of all animals of a sheet, those that were known and those that came in. */
async function recordsOf(
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

function cameIn(sheet: SheetDocument, { codes, incoming, known, knownRefs }: ForeignPlan, made: Made): CameIn[] {
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

function claimsOf(sheet: SheetDocument, { codes, incoming, knownRefs }: ForeignPlan, made: Made): ForeignClaim[] {
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

function viewOf(
  { register, sheet, words }: GenuineSheet,
  found: ForeignPlan,
  records: ForeignPlan['known'],
): ForeignSheetView {
  const { plan, codes, known, incoming, knownRefs, warnings } = found;
  const created: CreatedCounts = plan === null ? nothingCreated : countsOf(plan);
  const isOnSheet = new Set(sheet.animals.map(({ ref }) => ref));
  const animals = [...animalsOf(sheet).values()].map((animal): ForeignAnimalView => {
    const here = records.get(animal.ref) ?? null;
    return {
      ref: animal.ref,
      number: animal.number,
      isOnSheet: isOnSheet.has(animal.ref),
      code: here ? here.code : codes.animal(animal),
      here: here && { id: here.id, number: here.number, code: here.code },
      wasKnown: known.has(animal.ref),
    };
  });
  const newSources = sheet.sources.filter(({ ref }) => !knownRefs.has(ref));
  const told = [...newSources, ...incoming.filter((animal) => 'claims' in animal)];
  return {
    id: null,
    register: { id: register.id, name: register.name },
    sheetNumber: sheet.number,
    issued: sheet.issued,
    verdict: words,
    animals,
    created,
    claims: told.reduce((sum, { claims }) => sum + claims.length, 0),
    warnings: [...warnings],
  };
}

const nothingCreated: CreatedCounts = { individuals: 0, clutches: 0, sources: 0, lines: 0, species: 0 };
