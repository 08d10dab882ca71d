import { middleOf } from './calendar.ts';
import { claimRows } from './claim-rows.ts';
import type { Animal, Draft } from './draft.ts';
import { drawFates } from './draw-fates.ts';
import { findParents } from './find-parents.ts';
import { houseAnimals } from './house-animals.ts';
import { housingRows } from './housing-rows.ts';
import { idsOf } from './ids.ts';
import { lineageRows } from './lineage-rows.ts';
import type { ClubPlan } from './plan.ts';
import { raiseAnimals } from './raise-animals.ts';
import { registerRows } from './register-rows.ts';
import type { ClubRows } from './rows.ts';

/** Works out the lives of all animals of a scenario. Throws where the scenario contradicts itself. */
export function draftClub(plan: ClubPlan): Draft {
  const draft = raiseAnimals(plan);
  houseAnimals(draft);
  drawFates(draft);
  findParents(draft);
  return draft;
}

/** Turns a scenario into rows, the same ones every time. */
export function buildClub(plan: ClubPlan): ClubRows {
  const draft = draftClub(plan);
  const byBirth = inOrderOfBirth(draft);
  const ids = idsOf(draft, byBirth);
  return {
    ...registerRows(draft, ids),
    ...lineageRows(draft, ids, byBirth),
    ...housingRows(draft, ids),
    ...claimRows(draft, ids),
  };
}

/** Founders stand where they arrived, all others where they hatched. */
function inOrderOfBirth(draft: Draft): Animal[] {
  const cameOn = (animal: Animal): string =>
    animal.source?.date !== undefined ? middleOf(animal.source.date) : animal.bornAbout;
  return [...draft.animals.values()].sort((a, b) => {
    const [first, second] = [cameOn(a), cameOn(b)];
    if (first !== second) return first < second ? -1 : 1;
    return a.code < b.code ? -1 : 1;
  });
}
