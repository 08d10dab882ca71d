import type { PedigreeOrder } from '../lineage/kernel/order.ts';
import type { Pedigree } from '../lineage/kernel/pedigree.ts';
import { AnimalCells } from './animal-cells.ts';
import { AnimalLookup } from './animal-lookup.ts';
import { breathe } from './breathe.ts';
import { CodeIndex, checkCodes } from './code-index.ts';
import { warnOfKept } from './kept-notes.ts';
import type { RegisterKnowledge } from './knowledge.ts';
import type { LineageFacts } from './lineage-checks.ts';
import { checkParents, warnOfTwoRoles } from './lineage-checks.ts';
import { orderOrRefuse } from './loops.ts';
import { ParentCells } from './parent-cells.ts';
import { planClutches } from './planned-clutches.ts';
import { countPairs, mostPairs, pedigreeOf } from './planned-pedigree.ts';
import type { SourcesOfSheet } from './planned-sources.ts';
import { planSources } from './planned-sources.ts';
import type { SpeciesOfSheet } from './planned-species.ts';
import { checkSpecies, planSpecies } from './planned-species.ts';
import type { Tiers } from './planned-tiers.ts';
import { planTiers } from './planned-tiers.ts';
import type { Sheet } from './sheet-reader.ts';
import { SheetReport } from './sheet-report.ts';
import { say } from '../platform/say.ts';

/** What a sheet without problems would put into the register. Animals, clutches and sources are dense numbers. */
export interface SheetPlan extends LineageFacts, SourcesOfSheet, SpeciesOfSheet {
  readonly pedigree: Pedigree;
  readonly order: PedigreeOrder;
  readonly tiers: Tiers;
}

/**
 * Understands a sheet as far as it can be understood and notes everything that is wrong in the sheet's problems, everything
 * worth a look in its warnings. Linear in rows and candidates; other requests get their turn between the steps.
 *
 * @returns the plan, null where there are problems
 */
export async function planSheet(sheet: Sheet, knowledge: RegisterKnowledge): Promise<SheetPlan | null> {
  const { table, problems, warnings } = sheet;
  const report = new SheetReport(table, problems, warnings);
  const cells = new AnimalCells(table);
  const codes = new CodeIndex(table);
  const animals = new AnimalLookup(table, cells, codes, knowledge);
  const parents = new ParentCells(table, animals, () => codes.codes());
  checkCodes(table, codes, knowledge, report);
  await breathe();
  for (let animal = 0; animal < table.length; animal++) cells.check(animal, report);
  checkSpecies({ table }, report);
  await breathe();
  const facts: LineageFacts = { table, cells, animals, parents, ...planClutches(table, parents, knowledge, report) };
  const sources = planSources(table, facts.clutchOf, knowledge, report);
  await breathe();
  const unusable = checkParents(facts, report);
  const pairs = countPairs(facts.clutches);
  if (pairs > mostPairs) {
    problems.add(
      0,
      '',
      say`The clutches of this sheet have ${pairs} candidate pairs; at most ${mostPairs} can be read at once. Divide the file.`,
    );
    return null;
  }
  const baseKinshipsAreSound = problems.total === 0;
  await breathe();
  const pedigree = pedigreeOf(
    facts,
    baseKinshipsAreSound ? sources.sources : [],
    baseKinshipsAreSound ? sources.sourceOf : noSources(table.length),
    unusable,
  );
  const order = orderOrRefuse(facts, pedigree, report);
  if (order === null || problems.total > 0) return null;
  await breathe();
  const species = planSpecies(facts, order, knowledge, report);
  if (problems.total > 0) return null;
  warnOfTwoRoles(facts, report);
  await breathe();
  warnOfKept(table, facts.clutchOf, report);
  return { ...facts, ...sources, ...species, pedigree, order, tiers: planTiers(facts, order, animals) };
}

/** A sheet with problems is looked at for loops only; its sources may have values that the kernel rightly refuses. */
const noSources = (length: number): Int32Array => new Int32Array(length).fill(-1);
