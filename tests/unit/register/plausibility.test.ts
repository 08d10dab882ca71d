import { describe, expect, it } from 'vitest';
import {
  impossibleInClutch,
  impossibleInIndividual,
  warningsForClutch,
  warningsForIndividual,
} from '../../../api/register/plausibility.ts';
import type {
  ClutchFacts,
  IndividualFacts,
  ParentFacts,
  RangeFacts,
  RangesFacts,
} from '../../../api/register/warnings/facts.ts';
import { dateBounds, type DateBounds } from '../../../shared/edtf.ts';

const range = (
  usualLeast: number | null,
  usualMost: number | null,
  extremeLeast: number | null = null,
  extremeMost: number | null = null,
): RangeFacts => ({
  usualLeast,
  usualMost,
  extremeLeast,
  extremeMost,
});

/**
 * A medium-sized poison frog. Common practice, no source: hatching after about 14 days, out of the water about three months
 * later, 6 to 8 eggs and 11 at most, a clutch about weekly, sex told by looks from 8 to 10 months, courtship at about the same
 * age, males 25 to 38 mm and females about 6 mm more, 12 to 15 years usual and 20 at most. How far "about" reaches is ours.
 */
const mediumFrog: RangesFacts = {
  'laying-to-hatching': range(10, 18, 8, 25),
  'hatching-to-leaving-water': range(70, 110, 50, 160),
  maturity: range(10, 14, 8),
  'sexable-by-looks': range(10, null, 8),
  'eggs-per-clutch': range(6, 8, 1, 11),
  'between-clutches': range(6, 10, 5),
  'snout-vent-male': range(25, 38),
  'snout-vent-female': range(31, 44),
  lifespan: range(12, 15, null, 20),
};

const date = (text: string): DateBounds => {
  const bounds = dateBounds(text);
  if (!bounds) throw new Error(`${text} is no date`);
  return bounds;
};

const parent = (facts: Partial<ParentFacts> = {}): ParentFacts => ({
  name: '1007-0',
  role: 'dam',
  speciesId: 'frog',
  lineId: null,
  line: null,
  hatched: date('2018-03-01'),
  died: null,
  ranges: mediumFrog,
  ...facts,
});

const clutch = (facts: Partial<ClutchFacts> = {}): ClutchFacts => ({
  laid: date('2021-04-12'),
  eggs: 7,
  hatched: 5,
  lost: 2,
  young: 3,
  parents: [parent(), parent({ role: 'sire', name: '1008-9' })],
  nearbyOfDam: [],
  ...facts,
});

const animal = (facts: Partial<IndividualFacts> = {}): IndividualFacts => ({
  sex: 'male',
  sexBasis: 'calling',
  sexedOn: date('2022-06-01'),
  status: 'alive',
  hatched: date('2021-04-26'),
  hatchedText: '2021-04-26',
  outOfWater: date('2021-07-25'),
  died: null,
  speciesId: 'frog',
  lineId: null,
  line: null,
  ranges: mediumFrog,
  laid: date('2021-04-12'),
  parents: [],
  measurements: [{ svlMm: 33, observedOn: date('2023') }],
  today: '2026-11-25',
  ...facts,
});

const said = (warnings: readonly { code: string; detail: string }[]): [string, string][] =>
  warnings.map((warning) => [warning.code, warning.detail]);

describe('a clutch as most are', () => {
  it('gives no warning', () => {
    expect(warningsForClutch(clutch())).toEqual([]);
  });

  it('nor where nothing is known of it, or nothing of its species', () => {
    expect(
      warningsForClutch(clutch({ laid: null, eggs: null, hatched: null, lost: 0, young: 0, parents: [] })),
    ).toEqual([]);
    expect(
      warningsForClutch(clutch({ eggs: 40, hatched: 30, parents: [parent({ ranges: {}, hatched: date('2021-01') })] })),
    ).toEqual([]);
  });
});

describe('a clutch is told to be implausible', () => {
  it('laid by a dam five months old', () => {
    const facts = clutch({ parents: [parent({ hatched: date('2020-11-10') })] });
    expect(said(warningsForClutch(facts))).toEqual([
      ['young-dam', 'Laid when the dam 1007-0 was 5 months old; usual is 10 or more, the youngest known was 8 months.'],
    ]);
  });

  it('but only where every day that its vague dates allow says so', () => {
    expect(warningsForClutch(clutch({ parents: [parent({ hatched: date('2020') })] }))).toEqual([]);
    expect(
      said(warningsForClutch(clutch({ laid: date('2021'), parents: [parent({ hatched: date('2021-06') })] })))[0]?.[1],
    ).toBe('Laid when the dam 1007-0 was 0 to 6 months old; usual is 10 or more, the youngest known was 8 months.');
    expect(warningsForClutch(clutch({ parents: [parent({ hatched: date('2020-11/..') })] }))[0]?.code).toBe(
      'young-dam',
    );
    expect(warningsForClutch(clutch({ parents: [parent({ hatched: date('../2020-11') })] }))).toEqual([]);
  });

  it('laid by one of several candidates too young, each named', () => {
    const parents = [
      parent({ role: 'sire', name: 'A', hatched: date('2021-01-01') }),
      parent({ role: 'sire', name: 'B', hatched: date('2021-02-01') }),
      parent({ role: 'sire', name: 'C' }),
    ];
    expect(said(warningsForClutch(clutch({ parents })))).toEqual([
      [
        'young-sire',
        'Laid when the possible sire A was 3 months old; usual is 10 or more, the youngest known was 8 months; ' +
          'laid when the possible sire B was 2 months old; usual is 10 or more, the youngest known was 8 months.',
      ],
    ]);
  });

  it('laid by parents older than any was', () => {
    const facts = clutch({
      parents: [parent({ hatched: date('1999') }), parent({ role: 'either', name: 'G', hatched: date('2000-01') })],
    });
    expect(said(warningsForClutch(facts))).toEqual([
      ['old-dam', 'Laid when the dam 1007-0 was 21 to 22 years old; they live 20 years at most.'],
      ['old-parent', 'Laid when the possible parent G was 21 years old; they live 20 years at most.'],
    ]);
  });

  it('of twelve eggs, or none', () => {
    expect(said(warningsForClutch(clutch({ eggs: 12 })))).toEqual([
      ['many-eggs', '12 eggs; usual is 6 to 8 eggs, known is 1 to 11.'],
    ]);
    expect(warningsForClutch(clutch({ eggs: 11 }))).toEqual([]);
    expect(warningsForClutch(clutch({ eggs: 0, hatched: 0, lost: 0, young: 0 }))[0]?.code).toBe('no-eggs');
  });

  it('with more lost and hatched than laid, or more young than hatched', () => {
    expect(said(warningsForClutch(clutch({ lost: 3 })))).toEqual([
      ['more-lost-than-laid', '3 lost and 5 hatched, but 7 eggs laid.'],
    ]);
    expect(said(warningsForClutch(clutch({ young: 6 })))).toEqual([
      ['more-young-than-eggs', '6 young stand in the register, but 5 hatched.'],
    ]);
    expect(said(warningsForClutch(clutch({ young: 8, hatched: null, lost: 0 })))).toEqual([
      ['more-young-than-eggs', '8 young stand in the register, but 7 eggs laid.'],
    ]);
  });

  it('laid two days after another of the same dam; not a week after', () => {
    const nearby = (text: string) => clutch({ nearbyOfDam: [{ title: `clutch of ${text}`, laid: date(text) }] });
    expect(said(warningsForClutch(nearby('2021-04-10')))).toEqual([
      [
        'close-clutches',
        'Laid 2 days after the clutch of 2021-04-10 of the same dam; usual is 6 to 10 days, known is 5 or more.',
      ],
    ]);
    expect(said(warningsForClutch(nearby('2021-04-15')))[0]?.[1]).toMatch(
      /^Laid 3 days before the clutch of 2021-04-15/,
    );
    expect(warningsForClutch(nearby('2021-04-05'))).toEqual([]);
    expect(warningsForClutch(nearby('2021-04'))).toEqual([]);
  });

  it('laid after a parent had died', () => {
    const facts = clutch({
      parents: [parent({ died: date('2021-03') }), parent({ role: 'sire', name: 'S', died: date('2021-04') })],
    });
    expect(said(warningsForClutch(facts))).toEqual([
      ['dead-parent', 'The dam 1007-0 is recorded as dead before the clutch was laid.'],
    ]);
  });

  it('of parents of different species or lines; not where a line is not known', () => {
    const cross = (facts: Partial<ParentFacts>) =>
      said(
        warningsForClutch(
          clutch({
            parents: [parent({ lineId: 'l1', line: 'Rio Claro' }), parent({ role: 'sire', name: 'S', ...facts })],
          }),
        ),
      );
    expect(cross({ speciesId: 'toad' })).toEqual([
      ['cross', 'The dam 1007-0 and the sire S are of different species.'],
    ]);
    expect(cross({ lineId: 'l2', line: 'Santa Rosa' })).toEqual([
      ['cross', 'The dam 1007-0 and the sire S are of different lines, Rio Claro and Santa Rosa.'],
    ]);
    expect(cross({ lineId: 'l1' })).toEqual([]);
    expect(cross({ lineId: null })).toEqual([]);
  });

  it('but not of two candidates of one side, since only one of them is the parent', () => {
    const sires = [parent({ role: 'sire', lineId: 'l1' }), parent({ role: 'sire', name: 'S', lineId: 'l2' })];
    expect(warningsForClutch(clutch({ parents: sires }))).toEqual([]);
  });
});

describe('an animal as most are', () => {
  it('gives no warning', () => {
    expect(warningsForIndividual(animal())).toEqual([]);
  });

  it('nor where nothing is known of it', () => {
    const nothing = { sexedOn: null, hatched: null, hatchedText: null, outOfWater: null, laid: null, measurements: [] };
    expect(warningsForIndividual(animal(nothing))).toEqual([]);
    expect(warningsForIndividual(animal({ ranges: {} }))).toEqual([]);
  });
});

describe('an animal is told to be implausible', () => {
  it('hatched three days after laying, or two months', () => {
    expect(said(warningsForIndividual(animal({ laid: date('2021-04-23') })))).toEqual([
      ['hatching-interval', 'It hatched 3 days after laying; usual is 10 to 18 days, known is 8 to 25.'],
    ]);
    expect(warningsForIndividual(animal({ laid: date('2021-02-26') }))[0]?.detail).toMatch(
      /^It hatched 59 days after laying/,
    );
    expect(warningsForIndividual(animal({ laid: date('2021-04') }))).toEqual([]);
  });

  it('out of the water after three weeks, or after a year', () => {
    expect(said(warningsForIndividual(animal({ outOfWater: date('2021-05-17') })))).toEqual([
      ['water-interval', 'It left the water 21 days after hatching; usual is 70 to 110 days, known is 50 to 160.'],
    ]);
    expect(warningsForIndividual(animal({ outOfWater: date('2022-05') }))[0]?.code).toBe('water-interval');
  });

  it('sexed by looks at five months; not by its call, nor at ten months', () => {
    const sexed = (sexedOn: string, sexBasis: IndividualFacts['sexBasis'] = 'looks') =>
      said(warningsForIndividual(animal({ sexBasis, sexedOn: date(sexedOn) })));
    expect(sexed('2021-10-01')).toEqual([
      ['sexed-early', 'Its sex was told by looks at the age of 5 months; looks do not tell before 8 months.'],
    ]);
    expect(sexed('2021-10-01', 'calling')).toEqual([]);
    expect(sexed('2022-03-01')).toEqual([]);
  });

  it('longer than its sex grows, or shorter once it was grown', () => {
    const measured = (svlMm: number, observedOn: string, sex: IndividualFacts['sex'] = 'male') =>
      said(warningsForIndividual(animal({ sex, measurements: [{ svlMm, observedOn: date(observedOn) }] })));
    expect(measured(41, '2023')).toEqual([
      ['size', 'Measured 41 mm from snout to vent; for a male usual is 25 to 38 mm.'],
    ]);
    expect(measured(41, '2023', 'female')).toEqual([]);
    expect(measured(20, '2023')).toEqual([
      ['size', 'Measured 20 mm from snout to vent; for a male usual is 25 to 38 mm.'],
    ]);
    expect(measured(20, '2021-09')).toEqual([]);
    expect(measured(60, '2023', 'unsexed')).toEqual([]);
  });

  it('alive beyond the longest known life, in words that stay the same as it grows older', () => {
    const old = animal({ hatched: date('1994~'), hatchedText: '1994~', outOfWater: null, laid: null });
    const words: [string, string][] = [
      ['beyond-lifespan', 'Hatched about 1994 and still recorded as alive; the most known is 20 years.'],
    ];
    expect(said(warningsForIndividual(old))).toEqual(words);
    expect(said(warningsForIndividual({ ...old, today: '2031-01-01' }))).toEqual(words);
    expect(warningsForIndividual({ ...old, status: 'unknown' })).toEqual([]);
    expect(said(warningsForIndividual({ ...old, status: 'died', died: date('2016') }))).toEqual([
      ['beyond-lifespan', 'Died at the age of 21 to 22 years; the most known is 20 years.'],
    ]);
  });

  it('of another species or line than its parents', () => {
    const from = (facts: Partial<ParentFacts>) =>
      said(warningsForIndividual(animal({ lineId: 'l1', line: 'Rio Claro', parents: [parent(facts)] })));
    expect(from({ speciesId: 'toad' })).toEqual([['cross', 'The species is not that of the dam 1007-0.']]);
    expect(from({ lineId: 'l2', line: 'Santa Rosa' })).toEqual([
      ['cross', 'It stands in the line Rio Claro, the dam 1007-0 in the line Santa Rosa.'],
    ]);
    expect(from({ lineId: null })).toEqual([]);
  });
});

describe('what cannot be, whatever the species', () => {
  it('is a clutch laid before its parent hatched', () => {
    expect(impossibleInClutch({ laid: date('2018-02'), parents: [parent()] })).toEqual([
      {
        detail: 'The clutch was laid before its dam 1007-0 hatched. Check both dates and the parent.',
        fields: ['laid', 'parents'],
      },
    ]);
    expect(impossibleInClutch({ laid: date('2018-03'), parents: [parent()] })).toEqual([]);
    expect(impossibleInClutch({ laid: null, parents: [parent()] })).toEqual([]);
  });

  it('is an animal hatched before its clutch was laid', () => {
    expect(impossibleInIndividual({ laid: date('2021-04-12'), hatched: date('2021-04-11') })).toHaveLength(1);
    expect(impossibleInIndividual({ laid: date('2021-04-12'), hatched: date('2021-04') })).toEqual([]);
  });
});

it('a hundred thousand animals and clutches are looked through in a few seconds', () => {
  const clutchFacts = clutch({ nearbyOfDam: [{ title: 'clutch of 2021-04-05', laid: date('2021-04-05') }] });
  const animalFacts = animal();
  const began = performance.now();
  for (let row = 0; row < 100_000; row++) {
    warningsForClutch(clutchFacts);
    warningsForIndividual(animalFacts);
  }
  expect(performance.now() - began).toBeLessThan(10_000);
});
