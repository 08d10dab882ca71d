import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alleleRetention } from '../../../api/lineage/kernel/allele-retention.ts';
import { ancestralDescent } from '../../../api/lineage/kernel/ancestral-descent.ts';
import { ancestralInbreeding } from '../../../api/lineage/kernel/ancestral-inbreeding.ts';
import { collectAncestry } from '../../../api/lineage/kernel/ancestry.ts';
import { genePool } from '../../../api/lineage/kernel/gene-pool.ts';
import { computeInbreeding, inbreedingOf } from '../../../api/lineage/kernel/inbreeding.ts';
import { setDiversity } from '../../../api/lineage/kernel/set-diversity.ts';
import { close } from './answered-case.ts';
import { registers, toPedigree } from './random-registers.ts';

/** Registers from which genes can be dropped: no kin sources, founders as inbred as they are kin. */
const small = registers({ clutches: 5, pairs: 2 }).map((register) =>
  toPedigree({
    ...register,
    sources: register.sources.map(({ baseKinship }) => ({ baseKinship, founderInbreeding: baseKinship })),
    sourceKinships: [],
  }),
);
const large = registers({ clutches: 25, pairs: 3 }).map((register) =>
  toPedigree({
    ...register,
    sources: register.sources.map(({ baseKinship }) => ({ baseKinship, founderInbreeding: baseKinship })),
    sourceKinships: [],
  }),
);
/** So many standard errors chance does not reach in some thousand comparisons. */
const ERRORS = 5.5;

describe('genes dropped through a pedigree', () => {
  it('meet in one animal as often as F says, old and new, where every way is counted', () => {
    let counted = 0;
    fc.assert(
      fc.property(small, (pedigree) => {
        const inbreeding = computeInbreeding(pedigree);
        for (let animal = 0; animal < pedigree.clutchOf.length; animal++) {
          const found = ancestralDescent(pedigree, inbreeding.order, animal, { exactUpTo: 2 ** 14, samples: 1 });
          if (!found.isExact) continue;
          counted++;
          const both = found.oldInbreeding.value + found.newInbreeding.value;
          close(both, inbreedingOf(pedigree, inbreeding, animal).expected, `F of ${animal}`);
        }
      }),
      { numRuns: 150 },
    );
    expect(counted).toBeGreaterThan(500);
  });

  it('meet as often as F says within the standard error of a sample', () => {
    fc.assert(
      fc.property(large, (pedigree) => {
        const inbreeding = computeInbreeding(pedigree);
        const animal = pedigree.clutchOf.length - 1;
        const found = ancestralDescent(pedigree, inbreeding.order, animal, { exactUpTo: 0, samples: 4000, seed: 7 });
        expect(found.isExact).toBe(false);
        const both = found.oldInbreeding.value + found.newInbreeding.value;
        const expected = inbreedingOf(pedigree, inbreeding, animal).expected;
        const error = Math.sqrt((expected * (1 - expected)) / 4000);
        expect(Math.abs(both - expected)).toBeLessThanOrEqual(ERRORS * error + 1e-9);
      }),
      { numRuns: 60, seed: 11 },
    );
  });

  it('give a sample within its own standard error of the count of every way', () => {
    fc.assert(
      fc.property(small, (pedigree) => {
        const { order } = computeInbreeding(pedigree);
        const animal = pedigree.clutchOf.length - 1;
        const exact = ancestralDescent(pedigree, order, animal, { exactUpTo: 2 ** 14, samples: 1 });
        if (!exact.isExact) return;
        const sampled = ancestralDescent(pedigree, order, animal, { exactUpTo: 0, samples: 4000, seed: 3 });
        for (const part of ['ancestral', 'oldInbreeding', 'newInbreeding'] as const) {
          const { value, standardError } = sampled[part];
          // a rare event that never came leaves an error of 0; one in 4000 may be missed so
          const room = ERRORS * standardError + 8 / 4000;
          expect(Math.abs(value - exact[part].value), part).toBeLessThanOrEqual(room);
        }
      }),
      { numRuns: 80, seed: 5 },
    );
  });

  it('are the same for the same seed and others for another', () => {
    const pedigree = fc.sample(
      large.filter(({ clutchOf }) => clutchOf.length > 20),
      { numRuns: 1, seed: 2 },
    )[0];
    if (!pedigree) throw new Error('no register of that size');
    const { order } = computeInbreeding(pedigree);
    const members = Int32Array.from({ length: 10 }, (_, at) => pedigree.clutchOf.length - 1 - at);
    const ancestry = collectAncestry(pedigree, order, members);
    const pool = genePool(pedigree, ancestry, members);
    const drop = (seed: number) =>
      alleleRetention(pedigree, ancestry, pool, members, { exactUpTo: 0, samples: 500, seed });
    expect(drop(4)).toEqual(drop(4));
    expect([...drop(4).uniqueness]).not.toEqual([...drop(5).uniqueness]);
  });

  it('leave to a set no more founder genome equivalents than its founders had', () => {
    fc.assert(
      fc.property(large, (pedigree) => {
        const inbreeding = computeInbreeding(pedigree);
        const members = Int32Array.from(
          new Set([0, 1, 2, 3].map((back) => Math.max(0, pedigree.clutchOf.length - 1 - back))),
        );
        const ancestry = collectAncestry(pedigree, inbreeding.order, members);
        const pool = genePool(pedigree, ancestry, members);
        const found = alleleRetention(pedigree, ancestry, pool, members, { samples: 400 });
        for (const share of [...found.retained, ...found.uniqueness]) {
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThanOrEqual(1 + 1e-12);
        }
        expect(setDiversity(pedigree, inbreeding, ancestry, pool)).not.toBeNull();
        expect(found.founderGenomeEquivalents).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });
});

describe("Ballou's recursion", () => {
  it('is a probability, 0 without inbred ancestors, and grows by what inbred parents add', () => {
    fc.assert(
      fc.property(registers({ clutches: 25, pairs: 4 }), (register) => {
        const pedigree = toPedigree(register);
        const inbreeding = computeInbreeding(pedigree);
        const { clutches } = inbreeding.order;
        const values = ancestralInbreeding(pedigree, inbreeding, clutches);
        const isInbred = clutches.some((clutch) => (inbreeding.clutchExpected[clutch] ?? 0) > 0);
        const founders = register.founders.some((_, at) => inbreedingOf(pedigree, inbreeding, at).expected > 0);
        values.forEach((value) => {
          expect(value).toBeGreaterThanOrEqual(0);
          expect(value).toBeLessThanOrEqual(1);
          if (!isInbred && !founders) expect(value).toBe(0);
        });
      }),
    );
  });
});
