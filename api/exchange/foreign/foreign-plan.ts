import type { EntityManager } from 'typeorm';
import type { SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { readKnowledge, readKnownAnimals, readKnownClutches } from '../knowledge.queries.ts';
import { sameKey, type KnownAnimal, type KnownClutch, type RegisterKnowledge } from '../knowledge.ts';
import { warnOfImplausible } from '../plausibility-warnings.ts';
import { ProblemList } from '../problem-list.ts';
import { planSheet, type SheetPlan } from '../sheet-plan.ts';
import { SheetReport } from '../sheet-report.ts';
import { SheetRows } from '../sheet-rows.ts';
import { animalKey, animalsOf, clutchKey, sourceKey, type ToldAnimal } from './foreign-keys.ts';
import { ForeignCodes, ForeignRowProblem, foreignRows } from './foreign-rows.ts';
import { readClutchesOf, readRecognised, recognisedAs } from './recognised.queries.ts';
import type { BelievedRegister } from './other-registers.queries.ts';

/** What a sheet of another register would bring. */
export interface ForeignPlan {
  /** Null where everything on it is known already. */
  readonly plan: SheetPlan | null;
  readonly codes: ForeignCodes;
  /** Animals that come in, in the order of the plan. */
  readonly incoming: readonly ToldAnimal[];
  /** Animals that are here already, by ref. */
  readonly known: ReadonlyMap<string, KnownAnimal>;
  /** Refs of clutches and sources that are here already. */
  readonly knownRefs: ReadonlySet<string>;
  readonly warnings: readonly { readonly ref: string | null; readonly detail: string }[];
}

/** What of a sheet is in the register already. */
interface Standing {
  readonly animals: ReadonlyMap<string, KnownAnimal>;
  readonly clutches: ReadonlyMap<string, KnownClutch>;
  readonly sources: ReadonlyMap<string, string>;
}

/**
 * Finds out what a sheet would bring: recognises what is here, and plans the rest as a register sheet, by its rules.
 *
 * @param named ids of records here by refs of the sheet, as the keeper says
 * @throws InvalidProblem naming what stands against it
 */
export async function planForeignSheet(
  manager: EntityManager,
  keeperId: string,
  register: BelievedRegister,
  sheet: SheetDocument,
  prefix: string,
  named: ReadonlyMap<string, string>,
): Promise<ForeignPlan> {
  const codes = new ForeignCodes(prefix, sheet.number);
  const standing = await readStanding(manager, register, sheet, named);
  const rows = rowsOf(sheet, register.name, codes, standing);
  const knownRefs = new Set([...standing.clutches.keys(), ...standing.sources.keys()]);
  const found = { codes, incoming: rows.animals, known: standing.animals, knownRefs };
  if (rows.animals.length === 0) return { ...found, plan: null, warnings: [] };
  const problems = new ProblemList();
  const warnings = new ProblemList();
  const taken = new SheetRows(problems, warnings);
  for (const record of rows.records) taken.take(record);
  const about = (row: number): string | null => rows.animals[row - 2]?.ref ?? null;
  const { table } = taken;
  const knowledge = withStanding(await readKnowledge(manager, keeperId, table), codes, sheet, standing);
  const plan = problems.total > 0 ? null : await planSheet({ table, problems, warnings }, knowledge);
  if (plan === null) throw refusal(problems, about);
  await warnOfImplausible(plan, knowledge, new SheetReport(table, problems, warnings));
  return { ...found, plan, warnings: warnings.list().map(({ row, detail }) => ({ ref: about(row), detail })) };
}

async function readStanding(
  manager: EntityManager,
  register: BelievedRegister,
  sheet: SheetDocument,
  named: ReadonlyMap<string, string>,
): Promise<Standing> {
  const animals = animalsOf(sheet);
  const clutchKeys = new Map(sheet.clutches.map((clutch) => [clutch.ref, clutchKey(clutch, animals)]));
  const sourceKeys = new Map(sheet.sources.map((source) => [source.ref, sourceKey(source)]));
  const present = (keys: Iterable<string | null>): string[] => [...keys].filter((key) => key !== null);
  const recognised = await readRecognised(manager, register.id, {
    individual: [...animals.values()].map((animal) => animalKey(animal, sheet.number)),
    clutch: present(clutchKeys.values()),
    source: present(sourceKeys.values()),
  });
  const idOf = (animal: ToldAnimal): string | undefined =>
    named.get(animal.ref) ?? recognised.get(recognisedAs('individual', animalKey(animal, sheet.number)));
  const here = await readKnownAnimals(
    manager,
    [...animals.values()].flatMap((animal) => idOf(animal) ?? []),
  );
  const known = new Map<string, KnownAnimal>();
  for (const animal of animals.values()) {
    const record = here.get(idOf(animal) ?? '');
    if (record) known.set(animal.ref, record);
  }
  const clutchOf = await readClutchesOf(manager, [...here.keys()]);
  const clutchIds = new Map<string, string>();
  for (const [ref, key] of clutchKeys) {
    const id = key === null ? undefined : recognised.get(recognisedAs('clutch', key));
    if (id !== undefined) clutchIds.set(ref, id);
  }
  // the clutch of an animal that is known is known, whatever a sheet says of it
  for (const { ref, clutch } of animals.values()) {
    const id = clutchOf.get(known.get(ref)?.id ?? '');
    if (clutch !== null && id !== undefined) clutchIds.set(clutch, id);
  }
  const clutchesHere = await readKnownClutches(manager, [...clutchIds.values()]);
  const clutches = new Map<string, KnownClutch>();
  for (const [ref, id] of clutchIds) {
    const clutch = clutchesHere.get(id);
    if (clutch) clutches.set(ref, clutch);
  }
  const sources = new Map<string, string>();
  for (const [ref, key] of sourceKeys) {
    const id = key === null ? undefined : recognised.get(recognisedAs('source', key));
    if (id !== undefined) sources.set(ref, id);
  }
  return { animals: known, clutches, sources };
}

function rowsOf(sheet: SheetDocument, name: string, codes: ForeignCodes, standing: Standing) {
  try {
    return foreignRows(
      sheet,
      name,
      codes,
      ({ ref }) => standing.animals.has(ref),
      ({ ref }) => standing.clutches.has(ref),
    );
  } catch (error) {
    if (!(error instanceof ForeignRowProblem)) throw error;
    throw new InvalidProblem('This sheet cannot be taken in.', [{ pointer: '/file', detail: error.message }]);
  }
}

/** What the registry knows, and under the codes of the sheet what of it stands here already. */
function withStanding(
  knowledge: RegisterKnowledge,
  codes: ForeignCodes,
  sheet: SheetDocument,
  { animals, clutches, sources }: Standing,
): RegisterKnowledge {
  const told = animalsOf(sheet);
  const animalOf = new Map<string, KnownAnimal>();
  for (const [ref, known] of animals) {
    const animal = told.get(ref);
    if (animal) animalOf.set(sameKey(codes.animal(animal)), known);
  }
  const byCode = <T>(found: ReadonlyMap<string, T>): Map<string, T> =>
    new Map([...found].map(([ref, record]) => [sameKey(codes.onSheet(ref)), record]));
  const clutchOf = byCode(clutches);
  const sourceOf = byCode(sources);
  return {
    ...knowledge,
    animal: (name) => animalOf.get(sameKey(name)) ?? knowledge.animal(name),
    clutch: (code) => clutchOf.get(sameKey(code)) ?? knowledge.clutch(code),
    source: (code) => sourceOf.get(sameKey(code)) ?? knowledge.source(code),
  };
}

function refusal(problems: ProblemList, about: (row: number) => string | null): InvalidProblem {
  const errors = problems.list().map(({ row, detail }) => {
    const ref = about(row);
    return { pointer: '/file', detail: ref === null ? detail : `${ref}: ${detail}` };
  });
  return new InvalidProblem('This sheet cannot be taken in; nothing was stored.', errors);
}
