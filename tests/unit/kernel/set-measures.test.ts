import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { collectAncestry, type Ancestry } from '../../../api/lineage/kernel/ancestry.ts';
import { effectiveAncestors } from '../../../api/lineage/kernel/effective-ancestors.ts';
import { individualIncrease, realisedEffectiveSize } from '../../../api/lineage/kernel/effective-size.ts';
import { effectiveFounders, founderContributions } from '../../../api/lineage/kernel/founders.ts';
import { genePool, type GenePool } from '../../../api/lineage/kernel/gene-pool.ts';
import { computeInbreeding, type Inbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import { kinshipMatrix } from '../../../api/lineage/kernel/kinship.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { setDiversity } from '../../../api/lineage/kernel/set-diversity.ts';
import { founderShares, type FounderShare } from '../../../api/lineage/kernel/shares.ts';
import { close } from './answered-case.ts';
import { registers, toPedigree } from './random-registers.ts';
import { pickAncestorsSlowly } from './slow-ancestors.ts';

interface Chosen {
  readonly pedigree: Pedigree;
  readonly inbreeding: Inbreeding;
  readonly members: Int32Array;
  readonly ancestry: Ancestry;
  readonly pool: GenePool;
}

/** A random register with some of its animals, at least one. */
const anySet = fc
  .tuple(registers({ clutches: 25, pairs: 4 }), fc.array(fc.nat(), { minLength: 1, maxLength: 15 }))
  .map(([register, picks]): Chosen => {
    const pedigree = toPedigree(register);
    const inbreeding = computeInbreeding(pedigree);
    const members = Int32Array.from(new Set(picks.map((pick) => pick % pedigree.clutchOf.length)));
    const ancestry = collectAncestry(pedigree, inbreeding.order, members);
    return { pedigree, inbreeding, members, ancestry, pool: genePool(pedigree, ancestry, members) };
  });

/** A set in a certain pedigree: founders first, then one young a pair. */
function chosen(pairs: readonly { sire: number; dam: number }[], founders: number, picks: readonly number[]): Chosen {
  const pedigree = toPedigree({
    founders: Array.from({ length: founders }, () => -1),
    sources: [],
    sourceKinships: [],
    clutches: pairs.map((pair) => ({ pairs: [{ ...pair, odds: 1 }], young: 1 })),
  });
  const inbreeding = computeInbreeding(pedigree);
  const members = Int32Array.from(picks);
  const ancestry = collectAncestry(pedigree, inbreeding.order, members);
  return { pedigree, inbreeding, members, ancestry, pool: genePool(pedigree, ancestry, members) };
}

const nameOf = (origin: FounderShare): string => JSON.stringify({ ...origin, share: 0 });

describe('a set of animals', () => {
  it('has the contributions that the shares of its members average to, and they sum to 1', () => {
    fc.assert(
      fc.property(anySet, ({ pedigree, inbreeding, members, ancestry, pool }) => {
        const means = new Map<string, number>();
        for (const member of members)
          for (const origin of founderShares(pedigree, inbreeding.order, member))
            means.set(nameOf(origin), (means.get(nameOf(origin)) ?? 0) + origin.share / members.length);
        const found = founderContributions(pedigree, ancestry, pool);
        expect(found.map(nameOf).sort()).toEqual([...means.keys()].sort());
        for (const origin of found) close(origin.share, means.get(nameOf(origin)) ?? NaN, nameOf(origin));
        const sum = found.reduce((total, { share }) => total + share, 0);
        close(sum, 1, 'all contributions');
      }),
      { numRuns: 400 },
    );
  });

  it('has the mean kinship that the whole matrix averages to', () => {
    fc.assert(
      fc.property(anySet, ({ pedigree, inbreeding, members, ancestry, pool }) => {
        const matrix = kinshipMatrix(pedigree, inbreeding, members);
        const mean = matrix.reduce((sum, kinship) => sum + kinship, 0) / matrix.length;
        const found = setDiversity(pedigree, inbreeding, ancestry, pool);
        close(found?.meanKinship ?? NaN, mean, 'mean kinship');
        close(found?.geneDiversity ?? NaN, 1 - mean, 'gene diversity');
        close(2 * mean * (found?.founderGenomeEquivalents ?? NaN), 1, 'founder genome equivalents');
      }),
      { numRuns: 400 },
    );
  });

  it('has nothing to measure where it is empty', () => {
    const pedigree = toPedigree({ founders: [-1, -1], sources: [], sourceKinships: [], clutches: [] });
    const inbreeding = computeInbreeding(pedigree);
    const members = new Int32Array(0);
    const ancestry = collectAncestry(pedigree, inbreeding.order, members);
    const pool = genePool(pedigree, ancestry, members);
    expect(setDiversity(pedigree, inbreeding, ancestry, pool)).toBeNull();
    expect(effectiveFounders(ancestry, pool)).toBeNull();
    expect(founderContributions(pedigree, ancestry, pool)).toEqual([]);
    expect(effectiveAncestors(pedigree, ancestry, members)).toEqual({
      contributions: [],
      effective: null,
      unexplained: 0,
    });
  });
});

describe('effective ancestors', () => {
  it('are those that passes over the whole pedigree for every pick find', () => {
    fc.assert(
      fc.property(anySet, ({ pedigree, ancestry, members }) => {
        const found = effectiveAncestors(pedigree, ancestry, members);
        const slow = pickAncestorsSlowly(pedigree, members);
        close(found.effective ?? NaN, 1 / slow.reduce((sum, share) => sum + share * share, 0), 'effective number');
        found.contributions.forEach(({ share }, place) => close(share, slow[place] ?? NaN, `pick ${place}`));
        close(
          found.contributions.reduce((sum, { share }) => sum + share, 0),
          1,
          'all contributions',
        );
      }),
      { numRuns: 400 },
    );
  });

  it('never add more than those picked before them, the first no less than any founder', () => {
    fc.assert(
      fc.property(anySet, ({ pedigree, ancestry, members, pool }) => {
        const shares = effectiveAncestors(pedigree, ancestry, members).contributions.map(({ share }) => share);
        const largest = Math.max(...pool.through.subarray(0, ancestry.founders));
        expect(shares[0]).toBeGreaterThanOrEqual(largest - 1e-12);
        shares.forEach((share, place) => expect(share).toBeLessThanOrEqual((shares[place - 1] ?? 1) + 1e-12));
      }),
      { numRuns: 400 },
    );
  });

  it('are fewer than effective founders after a bottleneck, and more where a son is mated back to both his parents', () => {
    // founders 0 to 3; 4 is their son of 0 and 1, 5 the daughter of 2 and 3; then three young of the two
    const bottleneck = chosen(
      [{ sire: 0, dam: 1 }, { sire: 2, dam: 3 }, ...Array.from({ length: 3 }, () => ({ sire: 4, dam: 5 }))],
      4,
      [6, 7, 8],
    );
    expect(effectiveFounders(bottleneck.ancestry, bottleneck.pool)).toBeCloseTo(4, 12);
    expect(effectiveAncestors(bottleneck.pedigree, bottleneck.ancestry, bottleneck.members).effective).toBeCloseTo(
      2,
      12,
    );
    // 3 is the son of 0 and 1; his young with 0, with 1 and with 2
    const backcross = chosen(
      [
        { sire: 0, dam: 1 },
        { sire: 3, dam: 0 },
        { sire: 3, dam: 1 },
        { sire: 3, dam: 2 },
      ],
      3,
      [4, 5, 6],
    );
    expect(effectiveFounders(backcross.ancestry, backcross.pool)).toBeCloseTo(8 / 3, 12);
    expect(effectiveAncestors(backcross.pedigree, backcross.ancestry, backcross.members).effective).toBeCloseTo(3, 12);
  });

  it('say what is left unexplained when the work is cut short', () => {
    const [first] = fc.sample(
      anySet.filter(
        ({ pedigree, ancestry, members }) => effectiveAncestors(pedigree, ancestry, members).contributions.length > 3,
      ),
      { numRuns: 1, seed: 4 },
    );
    if (!first) throw new Error('no set has more than three ancestors');
    const cut = effectiveAncestors(first.pedigree, first.ancestry, first.members, 1);
    const picked = cut.contributions.reduce((sum, { share }) => sum + share, 0);
    expect(cut.unexplained).toBeGreaterThan(0);
    close(picked + cut.unexplained, 1, 'picked and unexplained');
  });
});

describe('the effective size', () => {
  it('comes from the mean increase, with the error of a mean carried over', () => {
    const inbreeding = Float64Array.of(0.25, 0.125, 0.375, 0.5);
    const equivalents = Float64Array.of(3, 3, 3.5, 1);
    const increases = [0, 1, 2].map((at) => individualIncrease(inbreeding[at] ?? NaN, equivalents[at] ?? NaN) ?? NaN);
    const mean = increases.reduce((sum, value) => sum + value, 0) / 3;
    const variance = increases.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 2;
    const found = realisedEffectiveSize(inbreeding, equivalents);
    expect(found.animals).toBe(3);
    close(found.increase ?? NaN, mean, 'increase');
    close(found.effectiveSize ?? NaN, 1 / (2 * mean), 'effective size');
    const error = (2 * (1 / (2 * mean)) ** 2 * Math.sqrt(variance)) / Math.sqrt(3);
    close(found.standardError ?? NaN, error, 'standard error');
  });

  it('is undefined without inbreeding, and without more than one generation', () => {
    const none = { animals: 0, increase: null, effectiveSize: null, standardError: null };
    expect(realisedEffectiveSize(Float64Array.of(0.25), Float64Array.of(1))).toEqual(none);
    expect(realisedEffectiveSize(new Float64Array(0), new Float64Array(0))).toEqual(none);
    expect(realisedEffectiveSize(Float64Array.of(0, 0), Float64Array.of(2, 3))).toEqual({
      animals: 2,
      increase: 0,
      effectiveSize: null,
      standardError: null,
    });
    expect(realisedEffectiveSize(Float64Array.of(1), Float64Array.of(2)).effectiveSize).toBe(0.5);
  });
});
