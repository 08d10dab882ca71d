import type { CreatedCounts } from '../import.view.ts';
import { countsOf } from '../imports.service.ts';
import { animalsOf } from './foreign-keys.ts';
import type { ForeignPlan } from './foreign-plan.ts';
import type { ForeignAnimalView, ForeignSheetView } from './foreign-sheet.view.ts';
import type { GenuineSheet } from './genuine-sheet.ts';

/** What a sheet brings, or brought, with the records here as far as there are any by now. */
export function viewOf(
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
