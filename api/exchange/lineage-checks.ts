import { dateBounds, isCertainlyBefore } from '../../shared/edtf.ts';
import type { AnimalCells } from './animal-cells.ts';
import type { AnimalLookup } from './animal-lookup.ts';
import { nobody } from './animal-lookup.ts';
import type { Candidate, ParentCells, ParentColumn } from './parent-cells.ts';
import type { ClutchesOfSheet, PlannedClutch } from './planned-clutches.ts';
import type { SheetReport } from './sheet-report.ts';
import type { SheetTable } from './sheet-table.ts';
import { say } from '../platform/say.ts';

/** What the checks of parents look at. */
export interface LineageFacts extends ClutchesOfSheet {
  readonly table: SheetTable;
  readonly cells: AnimalCells;
  readonly animals: AnimalLookup;
  readonly parents: ParentCells;
}

const sides = { sire: { sex: 'male', other: 'female' }, dam: { sex: 'female', other: 'male' } } as const;

/**
 * Refuses parents that cannot be: an animal as its own parent or on both sides, a parent of the wrong sex, a parent that
 * certainly hatched after its young. Loops of more than one animal are found by `findLoops`.
 *
 * @returns for each clutch 1 where its parents cannot be used for anything further
 */
export function checkParents(facts: LineageFacts, report: SheetReport): Uint8Array {
  const unusable = new Uint8Array(facts.clutches.length);
  const { table, parents, clutches, clutchOf } = facts;
  for (let animal = 0; animal < table.length; animal++) {
    for (const column of ['sire', 'dam', 'parents'] as const) parents.check(column, animal, report);
    const clutch = clutchOf[animal] ?? -1;
    const planned = clutches[clutch];
    if (planned === undefined) continue;
    if (table.text('parents', animal) !== '' && table.text('sire', animal) + table.text('dam', animal) !== '')
      report.refuse(
        animal,
        'parents',
        say`A row has either parents, for a group that cannot be sexed, or sire and dam. Take one of them out.`,
      );
    if (isOwnParent(facts, animal, report)) unusable[clutch] = 1;
    checkSexes(facts, animal, report);
    checkAges(facts, animal, planned, report);
  }
  for (const [clutch, planned] of clutches.entries())
    if (standsOnBothSides(facts, planned, report)) unusable[clutch] = 1;
  return unusable;
}

function isOwnParent({ parents, table }: LineageFacts, animal: number, report: SheetReport): boolean {
  for (const column of ['sire', 'dam', 'parents'] as const)
    if (parents.candidates(column, animal).some(({ parent }) => parent === animal)) {
      report.refuse(animal, column, say`${table.text('code', animal)} is named as its own parent. Correct the code.`);
      return true;
    }
  return false;
}

function checkSexes({ parents, animals }: LineageFacts, animal: number, report: SheetReport): void {
  for (const column of ['sire', 'dam'] as const)
    for (const { parent } of parents.candidates(column, animal)) {
      if (parent === nobody || animals.sex(parent) !== sides[column].other) continue;
      report.refuse(
        animal,
        column,
        say`${animals.describe(parent)} is ${sides[column].other} and cannot be the ${column}. Correct its sex, or name another ${column}.`,
      );
    }
  const group = parents.candidates('parents', animal);
  for (const sex of ['male', 'female'] as const) {
    const [first, second] = group.filter(({ parent }) => animals.sex(parent) === sex);
    if (first && second)
      report.refuse(
        animal,
        'parents',
        say`${animals.describe(first.parent)} and ${animals.describe(second.parent)} are both ${sex} and cannot be a pair. Where sexes are known, use sire and dam.`,
      );
  }
}

function checkAges(
  { cells, animals, parents, table }: LineageFacts,
  animal: number,
  clutch: PlannedClutch,
  report: SheetReport,
): void {
  const laid = clutch.laid === '' ? (clutch.existing?.laid ?? null) : dateBounds(clutch.laid);
  const hatched = cells.dates.bounds('hatched', animal);
  if (laid && hatched && table.text('laid', animal) === '' && isCertainlyBefore(hatched, laid))
    report.refuse(
      animal,
      'hatched',
      say`The clutch ${clutch.code} was laid after this date. Correct one of the dates, or the clutch.`,
    );
  const by: readonly (readonly [ParentColumn, readonly Candidate[]])[] = [
    ['sire', clutch.sires],
    ['dam', clutch.dams],
    ['parents', clutch.group],
  ];
  for (const [column, candidates] of by)
    for (const { parent } of candidates) {
      const parentHatched = parent === nobody || parent === animal ? null : animals.hatched(parent);
      if (parentHatched === null) continue;
      const before =
        laid && isCertainlyBefore(laid, parentHatched)
          ? 'laid'
          : hatched && isCertainlyBefore(hatched, parentHatched)
            ? 'hatched'
            : null;
      if (before === null) continue;
      const stated = parents.candidates(column, animal).length > 0 ? column : 'clutch';
      report.refuse(
        animal,
        stated,
        say`${animals.describe(parent)} hatched after ${table.text('code', animal)} was ${before}, so it cannot be a parent of it. Correct one of the dates, or name another parent.`,
      );
    }
}

function standsOnBothSides({ animals }: LineageFacts, clutch: PlannedClutch, report: SheetReport): boolean {
  const both = clutch.sires.filter(
    ({ parent }) => parent !== nobody && clutch.dams.some((dam) => dam.parent === parent),
  );
  for (const { parent } of both)
    report.refuse(
      clutch.first,
      'dam',
      say`${animals.describe(parent)} is named as sire and as dam of the same clutch. Take it out on one side; for a group that cannot be sexed, use the column parents.`,
    );
  return both.length > 0;
}

/** Warns of unsexed animals that are the only sire of one clutch and the only dam of another: one of them must be a mistake. */
export function warnOfTwoRoles({ clutches, animals }: LineageFacts, report: SheetReport): void {
  const sireOf = new Map<number, PlannedClutch>();
  for (const clutch of clutches) {
    const [sire] = clutch.sires;
    if (clutch.sires.length === 1 && sire && !sireOf.has(sire.parent)) sireOf.set(sire.parent, clutch);
  }
  const told = new Set<number>();
  for (const clutch of clutches) {
    const [dam] = clutch.dams;
    if (clutch.dams.length !== 1 || !dam || !sireOf.has(dam.parent) || told.has(dam.parent)) continue;
    told.add(dam.parent);
    report.warn(
      clutch.first,
      'dam',
      say`${animals.describe(dam.parent)} is the only dam here and the only sire of another clutch. One of them must be a mistake.`,
    );
  }
}
