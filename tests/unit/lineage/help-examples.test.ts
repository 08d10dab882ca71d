import { describe, expect, it } from 'vitest';
import type { ExplainedFigure } from '../../../client/src/lib/figures/explained-figures.ts';
import { figureHelp } from '../../../client/src/lib/figures/figure-help.ts';
import { percent } from '../../../client/src/lib/ui/figures.ts';
import { alleleRetention } from '../../../api/lineage/kernel/allele-retention.ts';
import { ancestralInbreeding } from '../../../api/lineage/kernel/ancestral-inbreeding.ts';
import { collectAncestry } from '../../../api/lineage/kernel/ancestry.ts';
import { completenessIndex } from '../../../api/lineage/kernel/completeness.ts';
import { pedigreeDepth } from '../../../api/lineage/kernel/depth.ts';
import { effectiveAncestors } from '../../../api/lineage/kernel/effective-ancestors.ts';
import { realisedEffectiveSize } from '../../../api/lineage/kernel/effective-size.ts';
import { effectiveFounders } from '../../../api/lineage/kernel/founders.ts';
import { genePool } from '../../../api/lineage/kernel/gene-pool.ts';
import { computeInbreeding, inbreedingOf } from '../../../api/lineage/kernel/inbreeding.ts';
import { setDiversity } from '../../../api/lineage/kernel/set-diversity.ts';
import { toPedigree } from '../kernel/random-registers.ts';

/** What the help page gives as the result of its example. */
const told = (name: ExplainedFigure): string => {
  const { rows } = figureHelp[name].example;
  return rows[rows.length - 1]?.[1] ?? '';
};

/** Unrelated founders, then one young a pair, numbered after them. */
function family(founders: number, pairs: readonly (readonly { sire: number; dam: number; odds?: number }[])[]) {
  const pedigree = toPedigree({
    founders: Array.from({ length: founders }, () => -1),
    sources: [],
    sourceKinships: [],
    clutches: pairs.map((candidates) => ({
      pairs: candidates.map(({ sire, dam, odds = 1 }) => ({ sire, dam, odds })),
      young: 1,
    })),
  });
  return { pedigree, inbreeding: computeInbreeding(pedigree) };
}

const pair = (sire: number, dam: number) => [{ sire, dam }];

describe('the worked examples of the help page are what the kernel computes', () => {
  it('F of young of full brother and sister', () => {
    const { pedigree, inbreeding } = family(2, [pair(0, 1), pair(0, 1), pair(2, 3)]);
    expect(percent(inbreedingOf(pedigree, inbreeding, 4).expected)).toBe(told('inbreeding'));
  });

  it('expected F with two candidate sires', () => {
    const candidates = [
      { sire: 3, dam: 4, odds: 0.75 },
      { sire: 2, dam: 4, odds: 0.25 },
    ];
    const { pedigree, inbreeding } = family(3, [pair(0, 1), pair(0, 1), candidates]);
    const { expected, least, greatest } = inbreedingOf(pedigree, inbreeding, 5);
    expect([least, greatest]).toEqual([0, 0.25]);
    expect(`${expected * 100}\u202f%`).toBe(told('inbreeding-range'));
  });

  it('kinship of half-sibs, by the F of their young', () => {
    const { pedigree, inbreeding } = family(3, [pair(0, 1), pair(0, 2), pair(3, 4)]);
    expect(percent(inbreedingOf(pedigree, inbreeding, 5).expected)).toBe(told('kinship'));
  });

  it('ancestral inbreeding of young of an inbred sire', () => {
    const { pedigree, inbreeding } = family(3, [pair(0, 1), pair(0, 1), pair(3, 4), pair(5, 2)]);
    const values = ancestralInbreeding(pedigree, inbreeding, Int32Array.from([0, 1, 2, 3]));
    expect(percent(values[3] ?? NaN)).toBe(told('ancestral-inbreeding'));
  });

  it('increase per generation and effective size', () => {
    const { increase, effectiveSize } = realisedEffectiveSize(Float64Array.of(0.25), Float64Array.of(3));
    expect(percent(increase ?? NaN)).toBe(told('increase'));
    expect(`${effectiveSize?.toFixed(1)} animals`).toBe(told('effective-size'));
  });

  it('mean kinship and gene diversity of two founders', () => {
    const { pedigree, inbreeding } = family(2, [pair(0, 1)]);
    const members = Int32Array.of(0, 1);
    const ancestry = collectAncestry(pedigree, inbreeding.order, members);
    const diversity = setDiversity(pedigree, inbreeding, ancestry, genePool(pedigree, ancestry, members));
    expect(percent(diversity?.meanKinship ?? NaN)).toBe(told('mean-kinship'));
    expect(percent(diversity?.geneDiversity ?? NaN)).toBe(told('gene-diversity'));
  });

  it('what one young by a male from elsewhere adds to a line of two founders', () => {
    const { pedigree, inbreeding } = family(3, [pair(2, 1)]);
    const diversityOf = (...animals: number[]): number => {
      const members = Int32Array.from(animals);
      const ancestry = collectAncestry(pedigree, inbreeding.order, members);
      return setDiversity(pedigree, inbreeding, ancestry, genePool(pedigree, ancestry, members))?.geneDiversity ?? NaN;
    };
    const points = 100 * (diversityOf(0, 1, 3) - diversityOf(0, 1));
    expect(`+${points.toFixed(2)} points`).toBe(told('added-diversity'));
  });

  it('what a founder and two of its grandyoung are worth, and what two young keep of its genes', () => {
    const lived = family(4, [pair(0, 1), pair(4, 2), pair(4, 3)]);
    const worthOf = Int32Array.of(0, 5, 6);
    const ancestry = collectAncestry(lived.pedigree, lived.inbreeding.order, worthOf);
    const { through } = genePool(lived.pedigree, ancestry, worthOf);
    expect(String((through[ancestry.find(0)] ?? NaN) * worthOf.length)).toBe(told('living-worth'));

    const { pedigree, inbreeding } = family(3, [pair(0, 1), pair(0, 2)]);
    const members = Int32Array.of(3, 4);
    const young = collectAncestry(pedigree, inbreeding.order, members);
    const kept = alleleRetention(pedigree, young, genePool(pedigree, young, members), members);
    expect(kept.isExact).toBe(true);
    expect(percent(kept.retained[young.find(0)] ?? NaN)).toBe(told('genes-kept'));
  });

  it('founder genome equivalents of four founders, whose mean kinship is 12.5 %', () => {
    const { pedigree, inbreeding } = family(4, [pair(0, 1)]);
    const members = Int32Array.of(0, 1, 2, 3);
    const ancestry = collectAncestry(pedigree, inbreeding.order, members);
    const diversity = setDiversity(pedigree, inbreeding, ancestry, genePool(pedigree, ancestry, members));
    expect(diversity?.meanKinship).toBe(0.125);
    expect(`${diversity?.founderGenomeEquivalents} founders`).toBe(told('founder-genomes'));
  });

  it('effective founders of ½, ¼ and ¼', () => {
    const { pedigree, inbreeding } = family(3, [pair(0, 1), pair(3, 2)]);
    const members = Int32Array.of(4);
    const ancestry = collectAncestry(pedigree, inbreeding.order, members);
    const found = effectiveFounders(ancestry, genePool(pedigree, ancestry, members));
    expect(`${found?.toFixed(1)} founders`).toBe(told('effective-founders'));
  });

  it('effective ancestors behind a bottleneck of one pair', () => {
    const { pedigree, inbreeding } = family(4, [pair(0, 1), pair(2, 3), pair(4, 5), pair(4, 5)]);
    const members = Int32Array.of(6, 7);
    const ancestry = collectAncestry(pedigree, inbreeding.order, members);
    expect(effectiveFounders(ancestry, genePool(pedigree, ancestry, members))).toBeCloseTo(4, 12);
    expect(effectiveAncestors(pedigree, ancestry, members).effective).toBeCloseTo(
      Number(told('effective-ancestors')),
      12,
    );
  });

  it('depth, complete generations and the completeness index', () => {
    const { pedigree, inbreeding } = family(3, [pair(0, 1), pair(3, 2)]);
    const depth = pedigreeDepth(pedigree, inbreeding.order);
    expect(String(depth.depth[4])).toBe(told('depth'));
    expect(String(depth.generationEquivalents[4])).toBe(told('completeness'));
    expect(percent(completenessIndex(pedigree, inbreeding.order, 4, 2))).toBe(told('completeness-index'));
  });
});
