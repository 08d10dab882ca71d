import { createHash } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import type { Visibility } from '../../../shared/vocabulary.ts';
import type { Acting } from '../../platform/acting.ts';
import { writeEntry } from '../../platform/journal-entry.ts';
import { ConflictProblem, InvalidProblem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { resolveIndividuals } from '../../register/individuals/resolve-individuals.queries.ts';
import { allowLongWork, insertImport } from '../import.queries.ts';
import { writePlan } from '../plan-writer.ts';
import { cameIn, claimsOf, recordsOf } from './came-in.ts';
import { writeForeignClaims } from './foreign-claims.ts';
import { animalsOf } from './foreign-keys.ts';
import { planForeignSheet, type ForeignPlan } from './foreign-plan.ts';
import type { ForeignSheetRequest } from './foreign-sheet.dto.ts';
import type { ForeignSheetView } from './foreign-sheet.view.ts';
import { viewOf } from './foreign-sheet-views.ts';
import { genuineSheet, type GenuineSheet } from './genuine-sheet.ts';
import { noteForeignRecords, readMade } from './recognised.queries.ts';
import { say } from '../../platform/say.ts';

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
        throw new ConflictProblem(
          say`Every animal of this sheet is in the register already; nothing is to be taken in.`,
        );
      const view = viewOf(genuine, found, found.known);
      const sha256 = createHash('sha256').update(request.file).digest('hex');
      const warnings = view.warnings.map(({ ref, detail }) => ({ row: 1, column: ref ?? '', detail }));
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
    throw new InvalidProblem(say`The sheet has no such animal.`, [
      { pointer: `/known/${missing}/ref`, detail: say`Give a ref that stands on the sheet, such as a2.` },
    ]);
  const found = await resolveIndividuals(
    manager,
    known.map(({ individual }, place) => ({ text: individual, pointer: `/known/${place}/individual` })),
  );
  return new Map(known.map(({ ref }, place) => [ref, found[place]?.id ?? '']));
}
