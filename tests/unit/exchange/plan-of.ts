import type { KnownAnimal, KnownClutch, RegisterKnowledge } from '../../../api/exchange/knowledge.ts';
import { nothingKnown } from '../../../api/exchange/knowledge.ts';
import type { SheetProblem } from '../../../api/exchange/problem-list.ts';
import type { SheetPlan } from '../../../api/exchange/sheet-plan.ts';
import { planSheet } from '../../../api/exchange/sheet-plan.ts';
import { sheetOf } from './sheet-of.ts';

/** Plans a sheet written out in a test. */
async function planned(
  content: string,
  knowledge: RegisterKnowledge = nothingKnown,
): Promise<{ plan: SheetPlan | null; problems: SheetProblem[]; warnings: SheetProblem[] }> {
  const sheet = await sheetOf(content);
  const plan = await planSheet(sheet, knowledge);
  return { plan, problems: sheet.problems.list(), warnings: sheet.warnings.list() };
}

/** The plan of a sheet that must have no problems. */
export async function planOf(content: string, knowledge?: RegisterKnowledge): Promise<SheetPlan> {
  const { plan, problems } = await planned(content, knowledge);
  if (plan === null) throw new Error(`refused: ${JSON.stringify(problems)}`);
  return plan;
}

/** Problems of a sheet as `row column: detail`. */
export async function refusals(content: string, knowledge?: RegisterKnowledge): Promise<string[]> {
  const { plan, problems } = await planned(content, knowledge);
  if (plan !== null) throw new Error('the sheet was taken');
  return problems.map(({ row, column, detail }) => `${row} ${column}: ${detail}`);
}

/** Warnings of a sheet that is taken, as `row column: detail`. */
export async function warningsOf(content: string, knowledge?: RegisterKnowledge): Promise<string[]> {
  const { plan, warnings, problems } = await planned(content, knowledge);
  if (plan === null) throw new Error(`refused: ${JSON.stringify(problems)}`);
  return warnings.map(({ row, column, detail }) => `${row} ${column}: ${detail}`);
}

/** Which animals of a plan share a clutch: their codes, clutch by clutch. */
export function broods(plan: SheetPlan): string[][] {
  const groups = plan.clutches.map((): string[] => []);
  plan.clutchOf.forEach((clutch, animal) => groups[clutch]?.push(plan.table.text('code', animal)));
  return groups;
}

/** An animal of the registry for tests. */
export function knownAnimal(more: Partial<KnownAnimal> & Pick<KnownAnimal, 'number'>): KnownAnimal {
  return {
    id: more.number,
    code: null,
    sex: 'unsexed',
    species: 'Epipedobates anthonyi',
    speciesId: 'anthonyi',
    line: null,
    lineId: null,
    tier: 0,
    hatched: null,
    died: null,
    ...more,
  };
}

/** A registry of some animals and clutches for tests. */
export function knowing(
  animals: readonly KnownAnimal[],
  clutches: Readonly<Record<string, KnownClutch>> = {},
): RegisterKnowledge {
  const withCode = (code: string): KnownAnimal | undefined =>
    animals.find((animal) => animal.code?.toLowerCase() === code.toLowerCase());
  return {
    ...nothingKnown,
    animal: (name) => withCode(name) ?? animals.find(({ number }) => number === name),
    animalWithCode: withCode,
    clutch: (code) => clutches[code],
  };
}
