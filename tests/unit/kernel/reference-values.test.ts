import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { AnsweredCase } from './answered-case.ts';
import { ANSWERS, NOT_ANSWERED_YET } from './reference-answers.ts';
import { readCases, REFERENCE_FILES, type Published, type ReferenceCase } from './reference-cases.ts';

/*
 * The check values of tests/reference, each with its citation in the file. All numbers to 1e-12; printed ones to half a
 * unit of their last decimal.
 */
describe.each(REFERENCE_FILES)('reference file %s', (file) => {
  const cases = readCases(file);

  it('has no expected field that is neither asserted nor listed as not answered yet', () => {
    const fields = new Set(cases.flatMap((reference) => Object.keys(reference.expected)));
    expect([...fields].filter((field) => !(field in ANSWERS) && !NOT_ANSWERED_YET.includes(field))).toEqual([]);
  });

  const answerable = cases.filter((reference) => Object.keys(reference.expected).some((field) => field in ANSWERS));
  describe.each(answerable.map((reference): [string, ReferenceCase] => [reference.name, reference]))(
    '%s',
    (_, reference) => {
      const fields = Object.keys(reference.expected).filter((field) => field in ANSWERS);
      for (const method of ['frontier', 'trace', 'auto'] as const)
        it(`gives ${fields.join(', ')} by ${method} (${reference.citation})`, () => {
          const answered = new AnsweredCase(reference, method);
          for (const field of fields) ANSWERS[field]?.(answered, reference.expected[field]);
        });

      const wrong = reference.wrongIfClutchMatesAreTreatedAsIndependent;
      if (wrong !== undefined)
        it('does not give the values of clutch-mates that each draw parents of their own', () => {
          const answered = new AnsweredCase(reference);
          const values = Object.entries(wrong.inbreeding ?? {}).map(([id, { decimal }]) => [
            answered.inbreedingOf(id),
            decimal,
          ]);
          for (const { a, b, decimal } of wrong.kinship ?? []) values.push([answered.kinship(a, b), decimal]);
          expect(values.length).toBeGreaterThan(0);
          for (const [actual = NaN, mistaken = NaN] of values)
            expect(Math.abs(actual - mistaken)).toBeGreaterThan(1e-6);
        });

      const printed = (reference.published ?? []).filter((value) => isPrintedFor(reference, value));
      if (printed.length > 0)
        it(`agrees with ${printed.length} printed values`, () => {
          const answered = new AnsweredCase(reference);
          for (const value of printed) comparePrinted(answered, value);
        });
    },
  );
});

it('keeps no field on the list that no case expects, and none that is asserted', () => {
  const fields = new Set(REFERENCE_FILES.flatMap(readCases).flatMap(({ expected }) => Object.keys(expected)));
  expect(NOT_ANSWERED_YET.filter((field) => !fields.has(field) || field in ANSWERS)).toEqual([]);
});

/** The Habsburg and Shorthorn values were printed for longer pedigrees than these and are for comparison only. */
function isPrintedFor({ name }: ReferenceCase, { value, decimals }: Published): boolean {
  return value !== null && decimals !== null && name !== 'habsburg-full' && name !== 'shorthorn-favourite-comet';
}

function comparePrinted(answered: AnsweredCase, { quantity, value, decimals, generation, computed }: Published): void {
  const half = 0.5 * 10 ** -(decimals ?? NaN) + 1e-12;
  if (computed !== undefined || generation !== undefined) {
    const found =
      generation === undefined
        ? inbreedingNamed(answered, computed?.decimal ?? NaN)
        : atGeneration(answered, generation);
    expect(Math.abs(found - Number(value)), `${quantity} ${generation ?? ''}`).toBeLessThanOrEqual(half);
    return;
  }
  if (quantity === 'T' || quantity === 'D') return; // printed forms of expected fields that are asserted to 1e-12
  const { ids, rows } = value as { ids: string[]; rows: number[][] };
  const kinships = answered.kinships(ids);
  const matrix =
    quantity === 'inverse of A' ? inverse(Matrix.mul(kinships, 2)) : kinships.mul(quantity.startsWith('A') ? 2 : 1);
  rows.forEach((row, at) =>
    row.forEach((cell, beside) => expect(Math.abs(matrix.get(at, beside) - cell), quantity).toBeLessThanOrEqual(half)),
  );
}

/** The animal whose F is printed is named in words; its exact F picks it out among those the case expects. */
function inbreedingNamed(answered: AnsweredCase, exact: number): number {
  const named = Object.entries(answered.reference.expected['inbreeding'] as Record<string, { decimal: number }>);
  const id = named.find(([, { decimal }]) => decimal === exact)?.[0];
  if (id === undefined) throw new Error(`no animal of ${answered.reference.name} is expected to have F ${exact}`);
  return answered.inbreedingOf(id);
}

function atGeneration(answered: AnsweredCase, generation: number): number {
  const series = answered.reference.expected['inbreedingByGeneration'] as { generation: number; id: string }[];
  const id = series.find((entry) => entry.generation === generation)?.id;
  if (id === undefined) throw new Error(`${answered.reference.name} has no generation ${generation}`);
  return answered.inbreedingOf(id);
}
