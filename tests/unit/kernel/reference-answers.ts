import { inverse, Matrix } from 'ml-matrix';
import { expect } from 'vitest';
import { ancestralInbreeding } from '../../../api/lineage/kernel/ancestral-inbreeding.ts';
import { completenessIndex } from '../../../api/lineage/kernel/completeness.ts';
import { pedigreeDepth } from '../../../api/lineage/kernel/depth.ts';
import { effectiveAncestors } from '../../../api/lineage/kernel/effective-ancestors.ts';
import { effectiveSizeBySex, individualIncrease } from '../../../api/lineage/kernel/effective-size.ts';
import { effectiveFounders, founderContributions } from '../../../api/lineage/kernel/founders.ts';
import { filialGeneration, UNKNOWN_GENERATION } from '../../../api/lineage/kernel/filial-generation.ts';
import { computeInbreeding, inbreedingOf, type Inbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import { meanKinship } from '../../../api/lineage/kernel/mean-kinship.ts';
import { partialInbreeding } from '../../../api/lineage/kernel/partial-inbreeding.ts';
import { AnsweredCase, close, descent, diversity, pairsOf } from './answered-case.ts';
import { fraction, type Exact } from './reference-cases.ts';

type NamedMatrix = { readonly ids: readonly string[]; readonly decimals: readonly (readonly number[])[] };
type NamedPair = Exact & { readonly a: string; readonly b: string };
type ByName<Value> = Readonly<Record<string, Value>>;

function closeMatrix(actual: Matrix, { ids, decimals }: NamedMatrix, what: string): void {
  expect(actual.rows).toBe(ids.length);
  ids.forEach((row, at) =>
    ids.forEach((column, beside) =>
      close(actual.get(at, beside), decimals[at]?.[beside] ?? NaN, `${what} ${row} ${column}`),
    ),
  );
}

function eachInbreeding(answered: AnsweredCase, expected: unknown): void {
  for (const [id, { decimal }] of Object.entries(expected as ByName<Exact>))
    close(answered.inbreedingOf(id), decimal, `F of ${id}`);
}

function kinshipsMatch(answered: AnsweredCase, expected: unknown): void {
  const matrix = expected as NamedMatrix;
  closeMatrix(answered.kinships(matrix.ids), matrix, 'kinship');
}

function meanOfLiving(answered: AnsweredCase): { each: Map<string, number>; overall: number } {
  const { pedigree, indexOf } = answered.laidOut;
  const living = answered.living();
  const all = meanKinship(pedigree, answered.inbreeding, Int32Array.from(living, indexOf));
  const each = new Map(living.map((id) => [id, all[indexOf(id)] ?? NaN]));
  return { each, overall: [...each.values()].reduce((sum, value) => sum + value, 0) / living.length };
}

function contributions(answered: AnsweredCase): Map<string, number> {
  const total = new Map<string, number>();
  for (const id of answered.living())
    for (const [founder, share] of answered.sharesOf(id))
      total.set(founder, (total.get(founder) ?? 0) + share / answered.living().length);
  return total;
}

/** The same by one pass over the gene pool of the living. */
function pooledContributions(answered: AnsweredCase): Map<string, number> {
  const { pedigree, ids } = answered.laidOut;
  const { ancestry, pool } = answered.set();
  return new Map(
    founderContributions(pedigree, ancestry, pool).map((origin): [string, number] => {
      if (origin.kind === 'source') throw new Error('no reference case asks for the contributions of sources');
      if (origin.kind === 'individual') return [ids[origin.individual] ?? '', origin.share];
      return [`unknown parent of ${ids[pedigree.clutchOf.indexOf(origin.clutch)] ?? ''}`, origin.share];
    }),
  );
}

/** "unknown sire of x2" and "outside-sire-of-A" in the files are "unknown parent of …" here. */
function sameShares(actual: Map<string, number>, expected: ByName<number>, what: string): void {
  const renamed = Object.entries(expected).map(([name, share]): [string, number] => [
    name.replace(/^(unknown|outside)[ -](sire|dam)[ -]of[ -]/, 'unknown parent of '),
    share,
  ]);
  expect([...actual.keys()].sort(), what).toEqual(renamed.map(([name]) => name).sort());
  for (const [name, share] of renamed) close(actual.get(name) ?? NaN, share, `${what}: ${name}`);
}

/** Own part of each animal on the scale of A: what T D Tᵀ calls D. Every animal is a clutch of its own in these cases. */
function ownParts({ laidOut, inbreeding }: AnsweredCase): number[] {
  return laidOut.ids.map((_, individual) => {
    const clutch = laidOut.pedigree.clutchOf[individual] ?? -1;
    if (clutch < 0) return 1;
    const self = 0.5 * (1 + (inbreeding.clutchExpected[clutch] ?? NaN));
    return 2 * (self - (inbreeding.clutchWithin[clutch] ?? NaN) + (inbreeding.clutchResidual[clutch] ?? NaN));
  });
}

function qualityMatches(answered: AnsweredCase, expected: unknown): void {
  const { pedigree, indexOf } = answered.laidOut;
  const depth = pedigreeDepth(pedigree, answered.inbreeding.order);
  for (const [id, fields] of Object.entries(expected as ByName<ByName<unknown>>))
    for (const [field, value] of Object.entries(fields)) {
      const individual = indexOf(id);
      const index = /^completenessIndex(\d+)$/.exec(field);
      if (field === 'maximumGenerations') expect(depth.depth[individual], `${field} of ${id}`).toBe(value);
      else if (field === 'fullyTracedGenerations') expect(depth.fullDepth[individual], `${field} of ${id}`).toBe(value);
      else if (field === 'completeGenerationEquivalent')
        close(depth.generationEquivalents[individual] ?? NaN, (value as Exact).decimal, `${field} of ${id}`);
      else if (index !== null)
        close(
          completenessIndex(pedigree, answered.inbreeding.order, individual, Number(index[1])),
          (value as Exact).decimal,
          `${field} of ${id}`,
        );
      else if (field === 'knownShareByGeneration') {
        const sum = (value as string[]).reduce((total, share) => total + fraction(share), 0);
        close(depth.generationEquivalents[individual] ?? NaN, sum, `${field} of ${id}, summed`);
      } else throw new Error(`pedigreeQuality has a field nobody asserts: ${field}`);
    }
}

/** Every way to choose one candidate pair for each clutch, with the inbreeding of each animal under it. */
function distributions(answered: AnsweredCase): { count: number; of: (id: string) => Map<number, number> } {
  const { pedigree, indexOf } = answered.laidOut;
  const clutches = pedigree.pairStart.length - 1;
  const choice = Int32Array.from(pedigree.pairStart.subarray(0, clutches));
  const results: { probability: number; inbreeding: Inbreeding }[] = [];
  for (let clutch = 0; clutch >= 0;) {
    const certain = {
      ...pedigree,
      pairStart: Int32Array.from({ length: clutches + 1 }, (_, place) => place),
      pairSire: choice.map((pair) => pedigree.pairSire[pair] ?? NaN),
      pairDam: choice.map((pair) => pedigree.pairDam[pair] ?? NaN),
      pairProbability: new Float64Array(clutches).fill(1),
    };
    const probability = choice.reduce((product, pair) => product * (pedigree.pairProbability[pair] ?? NaN), 1);
    results.push({ probability, inbreeding: computeInbreeding(certain) });
    for (clutch = clutches - 1; clutch >= 0; clutch--) {
      choice[clutch] = (choice[clutch] ?? NaN) + 1;
      if ((choice[clutch] ?? NaN) < (pedigree.pairStart[clutch + 1] ?? NaN)) break;
      choice[clutch] = pedigree.pairStart[clutch] ?? NaN;
    }
  }
  const of = (id: string): Map<number, number> => {
    const odds = new Map<number, number>();
    for (const { probability, inbreeding } of results) {
      const value = inbreedingOf(pedigree, inbreeding, indexOf(id)).expected;
      odds.set(value, (odds.get(value) ?? 0) + probability);
    }
    return odds;
  };
  return { count: results.length, of };
}

/** What is asserted for each field that a case may expect. */
export const ANSWERS: Readonly<Record<string, (answered: AnsweredCase, expected: unknown) => void>> = {
  inbreeding: eachInbreeding,
  expectedInbreeding: eachInbreeding,
  inbreedingByGeneration: (answered, expected) => {
    for (const { id, decimal } of expected as (Exact & { id: string })[])
      close(answered.inbreedingOf(id), decimal, `F of ${id}`);
  },
  kinship: (answered, expected) => {
    for (const { a, b, decimal } of expected as NamedPair[])
      close(answered.kinship(a, b), decimal, `kinship ${a} ${b}`);
  },
  kinshipMatrix: kinshipsMatch,
  expectedKinshipMatrix: kinshipsMatch,
  relationshipMatrixA: (answered, expected) => {
    const matrix = expected as NamedMatrix;
    closeMatrix(answered.kinships(matrix.ids).mul(2), matrix, 'A');
  },
  Ainverse: (answered, expected) => {
    const matrix = expected as NamedMatrix;
    closeMatrix(inverse(answered.kinships(matrix.ids).mul(2)), matrix, 'inverse of A');
  },
  T: (answered, expected) => {
    const { ids, decimals } = expected as NamedMatrix;
    const trace = new Matrix(decimals.map((row) => [...row]));
    const product = trace.mmul(Matrix.diag(ownParts(answered))).mmul(trace.transpose());
    closeMatrix(answered.kinships(ids).mul(2), { ids, decimals: product.to2DArray() }, 'T D T transposed');
    ids.forEach((id, row) => {
      for (const [founder, share] of answered.sharesOf(id))
        if (!founder.startsWith('unknown'))
          close(share, decimals[row]?.[ids.indexOf(founder)] ?? NaN, `T ${id} ${founder}`);
    });
  },
  D: (answered, expected) => {
    const parts = ownParts(answered);
    for (const [id, { decimal }] of Object.entries(expected as ByName<Exact>))
      close(parts[answered.laidOut.indexOf(id)] ?? NaN, decimal, `D of ${id}`);
  },
  condensedIdentity: (answered, expected) => {
    for (const { a, b, delta } of expected as { a: string; b: string; delta: string[] }[]) {
      const [d1 = NaN, , d3 = NaN, , d5 = NaN, , d7 = NaN, d8 = NaN] = delta.map(fraction);
      close(answered.kinship(a, b), d1 + (d3 + d5 + d7) / 2 + d8 / 4, `kinship ${a} ${b} from identity coefficients`);
    }
  },
  generations: qualityMatches,
  pedigreeQuality: qualityMatches,
  assignments: (answered, expected) => expect(distributions(answered).count).toBe(expected),
  inbreedingDistribution: (answered, expected) => {
    const { of } = distributions(answered);
    for (const [id, odds] of Object.entries(expected as ByName<{ value: string; probability: string }[]>)) {
      const found = of(id);
      expect(found.size, `different values of F of ${id}`).toBe(odds.length);
      for (const { value, probability } of odds)
        close(found.get(fraction(value)) ?? NaN, fraction(probability), `odds that F of ${id} is ${value}`);
    }
  },
  expectedFounderContributions: (answered, expected) => {
    for (const [id, shares] of Object.entries(expected as ByName<ByName<string>>)) {
      const decimals = Object.fromEntries(Object.entries(shares).map(([name, share]) => [name, fraction(share)]));
      sameShares(answered.sharesOf(id), decimals, `shares of ${id}`);
    }
  },
  founderContributions: (answered, expected) => {
    const exact = Object.entries(expected as ByName<Exact>);
    const decimals = Object.fromEntries(exact.map(([name, { decimal }]) => [name, decimal]));
    sameShares(contributions(answered), decimals, 'contributions');
    sameShares(pooledContributions(answered), decimals, 'contributions by the gene pool');
  },
  founderEquivalents: (answered, expected) => {
    const squares = [...contributions(answered).values()].reduce((sum, share) => sum + share * share, 0);
    close(1 / squares, (expected as Exact).decimal, 'founder equivalents');
    const { ancestry, pool } = answered.set();
    close(effectiveFounders(ancestry, pool) ?? NaN, (expected as Exact).decimal, 'effective number of founders');
  },
  meanKinship: (answered, expected) => {
    const { each } = meanOfLiving(answered);
    for (const [id, { decimal }] of Object.entries(expected as ByName<Exact>))
      close(each.get(id) ?? NaN, decimal, `mean kinship of ${id}`);
  },
  meanKinshipExcludingSelf: (answered, expected) => {
    const living = answered.living();
    const matrix = answered.kinships(living);
    for (const [id, exact] of Object.entries(expected as ByName<Exact | null>)) {
      if (exact === null) continue;
      const row = living.indexOf(id);
      const others = matrix.getRow(row).reduce((sum, kinship) => sum + kinship, 0) - matrix.get(row, row);
      close(others / (living.length - 1), exact.decimal, `mean kinship of ${id} without itself`);
    }
  },
  populationMeanKinship: (answered, expected) => {
    close(meanOfLiving(answered).overall, (expected as Exact).decimal, 'mean kinship of the living');
    close(diversity(answered).meanKinship, (expected as Exact).decimal, 'mean kinship of the living as a set');
  },
  geneDiversity: (answered, expected) =>
    close(diversity(answered).geneDiversity, (expected as Exact).decimal, 'gene diversity'),
  founderGenomeEquivalentsFromMeanKinship: (answered, expected) =>
    close(diversity(answered).founderGenomeEquivalents, (expected as Exact).decimal, 'founder genome equivalents'),
  meanInbreeding: (answered, expected) => {
    const living = answered.living();
    const sum = living.reduce((total, id) => total + answered.inbreedingOf(id), 0);
    close(sum / living.length, (expected as Exact).decimal, 'mean inbreeding');
  },
  filialGeneration: (answered, expected) => {
    const { pedigree, indexOf } = answered.laidOut;
    const generations = filialGeneration(pedigree, answered.inbreeding.order, new Uint8Array([1]));
    for (const [id, generation] of Object.entries(expected as ByName<number | null>))
      expect(generations[indexOf(id)], `filial generation of ${id}`).toBe(generation ?? UNKNOWN_GENERATION);
  },
  partialInbreedingByFounder: (answered, expected) => {
    const { pedigree, indexOf, ids } = answered.laidOut;
    for (const [id, parts] of Object.entries(expected as ByName<ByName<Exact>>)) {
      const found = partialInbreeding(pedigree, answered.inbreeding.order.clutches, pairsOf(answered, id));
      expect(found.sources.size + found.unknownParents.size, `${id}: all parts belong to founders`).toBe(0);
      const founders = [...found.founders].filter(([, part]) => part > 0).map(([founder]) => ids[founder] ?? '');
      expect(founders.sort(), `founders with a part in F of ${id}`).toEqual(Object.keys(parts).sort());
      for (const [founder, { decimal }] of Object.entries(parts))
        close(found.founders.get(indexOf(founder)) ?? NaN, decimal, `part of ${founder} in F of ${id}`);
    }
  },
  ancestralInbreedingRecursion: (answered, expected) => {
    const { pedigree, indexOf } = answered.laidOut;
    const { clutches } = answered.inbreeding.order;
    const values = ancestralInbreeding(pedigree, answered.inbreeding, clutches);
    for (const [id, { decimal }] of Object.entries(expected as ByName<Exact>))
      close(values[clutches.indexOf(pedigree.clutchOf[indexOf(id)] ?? -1)] ?? NaN, decimal, `recursion for ${id}`);
  },
  ancestralInbreedingExact: (answered, expected) => {
    for (const [id, { decimal }] of Object.entries(expected as ByName<Exact>))
      close(descent(answered, id).ancestral.value, decimal, `exact ancestral inbreeding of ${id}`);
  },
  inbreedingOldAndNew: (answered, expected) => {
    for (const [id, { old, new: fresh }] of Object.entries(expected as ByName<{ old: Exact; new: Exact }>)) {
      const { oldInbreeding, newInbreeding } = descent(answered, id);
      close(oldInbreeding.value, old.decimal, `old inbreeding of ${id}`);
      close(newInbreeding.value, fresh.decimal, `new inbreeding of ${id}`);
      close(oldInbreeding.value + newInbreeding.value, answered.inbreedingOf(id), `both of ${id}`);
    }
  },
  alleleRetention: (answered, expected) => {
    const { retained, ancestry } = answered.retention();
    for (const [id, { decimal }] of Object.entries(expected as ByName<Exact>))
      close(retained[ancestry.find(answered.laidOut.indexOf(id))] ?? NaN, decimal, `retention of ${id}`);
  },
  genomeUniqueness: (answered, expected) => {
    const { uniqueness, members } = answered.retention();
    for (const [id, { decimal }] of Object.entries(expected as ByName<Exact>))
      close(uniqueness[members.indexOf(answered.laidOut.indexOf(id))] ?? NaN, decimal, `uniqueness of ${id}`);
  },
  founderGenomeEquivalentsFromRetention: (answered, expected) =>
    close(
      answered.retention().founderGenomeEquivalents ?? NaN,
      (expected as Exact).decimal,
      'founder genome equivalents from retention',
    ),
  ancestorMarginalContributions: (answered, expected) => {
    const { members, ancestry } = answered.set();
    const { contributions: picked, unexplained } = effectiveAncestors(answered.laidOut.pedigree, ancestry, members);
    const named = picked.map((one) => (one.kind === 'individual' ? answered.laidOut.ids[one.individual] : 'unknown'));
    expect(named, 'ancestors in the order they are picked').toEqual((expected as { id: string }[]).map(({ id }) => id));
    (expected as Exact[]).forEach(({ decimal }, place) =>
      close(picked[place]?.share ?? NaN, decimal, `contribution of ${named[place]}`),
    );
    expect(unexplained).toBe(0);
  },
  effectiveAncestors: (answered, expected) => {
    const { members, ancestry } = answered.set();
    const { effective } = effectiveAncestors(answered.laidOut.pedigree, ancestry, members);
    close(effective ?? NaN, (expected as Exact).decimal, 'effective number of ancestors');
  },
  effectiveSize: (_, expected) => {
    type Sexes = { breedingMales: number; breedingFemales: number; effectiveSize: Exact; rateOfInbreeding: Exact };
    for (const { breedingMales, breedingFemales, effectiveSize, rateOfInbreeding } of expected as Sexes[]) {
      const found = effectiveSizeBySex(breedingMales, breedingFemales);
      close(found, effectiveSize.decimal, `effective size of ${breedingMales}.${breedingFemales}`);
      close(1 / (2 * found), rateOfInbreeding.decimal, `increase with ${breedingMales}.${breedingFemales}`);
    }
  },
  individualIncrease: (_, expected) => {
    type Increase = { F: string; completeGenerationEquivalent: string; increase: number };
    for (const { F, completeGenerationEquivalent, increase } of expected as Increase[]) {
      const found = individualIncrease(fraction(F), fraction(completeGenerationEquivalent));
      close(found ?? NaN, increase, `increase for F ${F} after ${completeGenerationEquivalent} generations`);
    }
  },
};

/** Fields that reference cases expect and the kernel does not answer yet. Whoever adds a measure moves its field to ANSWERS. */
export const NOT_ANSWERED_YET: readonly string[] = [
  'AinverseIgnoringInbreeding', // a short cut for pedigrees without inbreeding; nothing here is computed that way
];
