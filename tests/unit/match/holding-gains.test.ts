import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeInbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import { kinshipMatrix } from '../../../api/lineage/kernel/kinship.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { gainsOf, type GainsQuestion } from '../../../api/match/new-blood/holding-gains.ts';
import { measureHolding } from '../../../api/match/new-blood/holding.ts';
import { registers, toPedigree } from '../kernel/random-registers.ts';
import { withClutches } from './forecast-sketch.ts';

const UNSEXED = 2;

/** A register, some of whose animals are held, some of those as partners; all others are candidates. */
const questions = fc
  .record({
    register: registers({ clutches: 12, pairs: 3, ofAllSizes: true }),
    roles: fc.array(fc.constantFrom('held', 'partner', 'candidate', 'nothing'), { minLength: 60, maxLength: 60 }),
    sexes: fc.array(fc.integer({ min: 0, max: UNSEXED }), { minLength: 60, maxLength: 60 }),
    kinshipTo: fc.constantFrom(0, 0.0625, 0.125, 1),
  })
  .map(({ register, roles, sexes, kinshipTo }): GainsQuestion => {
    const pedigree = toPedigree(register);
    const animals = [...pedigree.clutchOf.keys()];
    const of = (...words: string[]): number[] => animals.filter((animal) => words.includes(roles[animal] ?? ''));
    const sexed = (chosen: number[], most: number) => ({
      animals: Int32Array.from(chosen),
      sexes: Uint8Array.from(chosen, (animal) => Math.min(most, sexes[animal] ?? 0)),
    });
    const candidates = of('candidate');
    return {
      pedigree,
      inbreeding: computeInbreeding(pedigree),
      holding: Int32Array.from(of('held', 'partner')),
      line: Int32Array.from(of('held', 'partner', 'candidate')),
      partners: sexed(of('partner'), 1),
      candidates: sexed(candidates, UNSEXED),
      unsexed: UNSEXED,
      isHeld: new Uint8Array(candidates.length),
      kinshipTo,
    };
  });

const diversityOf = (pedigree: Pedigree, animals: readonly number[]): number =>
  measureHolding(pedigree, computeInbreeding(pedigree), Int32Array.from(animals)).diversity?.geneDiversity ?? NaN;

/** The diversity of a holding with one young of two animals, by a register that has it. */
function withYoung(pedigree: Pedigree, holding: readonly number[], sire: number, dam: number): number {
  const after = withClutches(pedigree, [{ sire, dam }], 1);
  return diversityOf(after, [...holding, after.clutchOf.length - 1]);
}

describe('what an animal adds to a holding', () => {
  it('is what is measured once it is added', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const { pedigree, holding, candidates } = question;
        const { gain } = gainsOf(question);
        const before = diversityOf(pedigree, [...holding]);
        candidates.animals.forEach((animal, place) => {
          if (holding.length === 0) expect(gain[place]).toBeNaN();
          else expect(gain[place]).toBeCloseTo(diversityOf(pedigree, [...holding, animal]) - before, 12);
        });
      }),
      { numRuns: 200 },
    );
  });

  it('is, by one young, the most of all partners, measured with the young in the register', () => {
    let compared = 0;
    fc.assert(
      fc.property(questions, (question) => {
        const { pedigree, inbreeding, holding, partners, candidates, kinshipTo } = question;
        const { partner, partnerKinship, youngGain } = gainsOf(question);
        const before = diversityOf(pedigree, [...holding]);
        candidates.animals.forEach((animal, place) => {
          const kinships = kinshipMatrix(pedigree, inbreeding, Int32Array.of(animal, ...partners.animals));
          const gains = Array.from(partners.animals, (mate, at) => {
            const isMate = candidates.sexes[place] === UNSEXED || candidates.sexes[place] !== partners.sexes[at];
            if (!isMate || (kinships[at + 1] ?? 1) > kinshipTo + 1e-12) return -Infinity;
            return withYoung(pedigree, [...holding], animal, mate) - before;
          });
          const best = Math.max(-Infinity, ...gains);
          if (best === -Infinity) {
            expect([partner[place], youngGain[place]]).toEqual([-1, NaN]);
            return;
          }
          compared++;
          expect(youngGain[place]).toBeCloseTo(best, 12);
          expect(gains[partner[place] ?? -1]).toBeCloseTo(best, 12);
          expect(partnerKinship[place]).toBeCloseTo(kinships[(partner[place] ?? -1) + 1] ?? NaN, 12);
          // of equals the first
          expect(gains.findIndex((gain) => gain > best - 1e-13)).toBeLessThanOrEqual(partner[place] ?? -1);
        });
      }),
      { numRuns: 120 },
    );
    expect(compared).toBeGreaterThan(100);
  });

  it('tells how much of it comes from founders that the holding lacks, and from nobody known', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const { pedigree, inbreeding, candidates, holding } = question;
        const { lacking, unknown } = gainsOf(question);
        const has = new Set(measureHolding(pedigree, inbreeding, holding).founders);
        candidates.animals.forEach((animal, place) => {
          const own = measureHolding(pedigree, inbreeding, Int32Array.of(animal));
          const foreign = own.founders.reduce(
            (sum, founder, at) => sum + (has.has(founder) ? 0 : (own.parts[at] ?? 0)),
            0,
          );
          expect(lacking[place]).toBeCloseTo(foreign, 12);
          expect(unknown[place]).toBeCloseTo(own.unknown, 12);
        });
      }),
      { numRuns: 200 },
    );
  });
});
