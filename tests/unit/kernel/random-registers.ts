import fc from 'fast-check';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';

/** A clutch as a test writes it: candidate pairs with their odds, and how many young it has. */
interface WrittenClutch {
  readonly pairs: readonly { readonly sire: number; readonly dam: number; readonly odds: number }[];
  readonly young: number;
}

/** A register as a test writes it: founders first, then clutch after clutch; individuals are numbered in that order. */
export interface WrittenRegister {
  /** Source of each founder, −1 for unknown origin. */
  readonly founders: readonly number[];
  readonly sources: readonly { readonly baseKinship: number; readonly founderInbreeding: number }[];
  readonly sourceKinships: readonly { readonly a: number; readonly b: number; readonly kinship: number }[];
  readonly clutches: readonly WrittenClutch[];
}

/** Lays a written register out as the kernel wants it. */
export function toPedigree(register: WrittenRegister): Pedigree {
  const clutchOf: number[] = register.founders.map(() => -1);
  const sourceOf: number[] = [...register.founders];
  const pairStart = [0];
  const pairs = register.clutches.flatMap(({ pairs: candidates, young }, clutch) => {
    for (let count = 0; count < young; count++) {
      clutchOf.push(clutch);
      sourceOf.push(-1);
    }
    const sum = candidates.reduce((total, { odds }) => total + odds, 0);
    pairStart.push((pairStart.at(-1) ?? 0) + candidates.length);
    return candidates.map(({ sire, dam, odds }) => ({ sire, dam, probability: odds / sum }));
  });
  return {
    clutchOf: Int32Array.from(clutchOf),
    sourceOf: Int32Array.from(sourceOf),
    baseKinship: Float64Array.from(register.sources, ({ baseKinship }) => baseKinship),
    founderInbreeding: Float64Array.from(register.sources, ({ founderInbreeding }) => founderInbreeding),
    sourceKinships: register.sourceKinships,
    pairStart: Int32Array.from(pairStart),
    pairSire: Int32Array.from(pairs, ({ sire }) => sire),
    pairDam: Int32Array.from(pairs, ({ dam }) => dam),
    pairProbability: Float64Array.from(pairs, ({ probability }) => probability),
  };
}

/** How large and how vague the registers that fast-check makes may be. */
interface RegisterLimits {
  readonly clutches: number;
  readonly pairs: number;
  /** Whether registers of every size up to the limit come as often; left out, most are small, which is easier to read. */
  readonly ofAllSizes?: boolean;
}

/** Random registers: founders of up to three sources, unknown parents, joint candidate pairs, in-line mating of all kinds. */
export function registers({ clutches, pairs, ofAllSizes = false }: RegisterLimits): fc.Arbitrary<WrittenRegister> {
  const size = ofAllSizes ? 'max' : undefined;
  const share = fc.constantFrom(0, 0.05, 0.125, 0.25);
  const picks = fc.record({ a: fc.nat(999), b: fc.nat(999), unknown: fc.nat(9), odds: fc.integer({ min: 1, max: 5 }) });
  return fc
    .record({
      founders: fc.array(fc.integer({ min: -1, max: 2 }), { minLength: 2, maxLength: 8 }),
      sources: fc.array(fc.record({ baseKinship: share, founderInbreeding: share }), { minLength: 3, maxLength: 3 }),
      between: share,
      clutches: fc.array(
        fc.record({
          picks: fc.array(picks, { minLength: 1, maxLength: pairs, size }),
          young: fc.integer({ min: 0, max: 3 }),
        }),
        { minLength: 1, maxLength: clutches, size },
      ),
    })
    .map(({ founders, sources, between, clutches: drawn }) => {
      let present = founders.length;
      const written = drawn.map(({ picks: chosen, young }) => {
        const candidates = chosen.map(({ a, b, unknown, odds }) => {
          const sire = unknown === 0 || unknown === 2 ? -1 : a % present;
          const other = b % present;
          const dam = unknown === 1 || unknown === 2 ? -1 : other === sire ? (other + 1) % present : other;
          return { sire, dam, odds };
        });
        present += young;
        return { pairs: candidates, young };
      });
      const sourceKinships = between > 0 ? [{ a: 0, b: 1, kinship: between }] : [];
      return { founders, sources, sourceKinships, clutches: written };
    });
}

/** The same register with rows in another order: `rank[i]` sorts individuals, `clutchRank[c]` clutches. */
export function shuffled(
  pedigree: Pedigree,
  rank: (row: number) => number,
): { pedigree: Pedigree; newIndividual: number[]; newClutch: number[] } {
  const places = (count: number): { oldAt: number[]; newOf: number[] } => {
    const oldAt = Array.from({ length: count }, (_, row) => row).sort((x, y) => rank(x) - rank(y) || x - y);
    const newOf: number[] = [];
    oldAt.forEach((old, place) => (newOf[old] = place));
    return { oldAt, newOf };
  };
  const individuals = places(pedigree.clutchOf.length);
  const clutches = places(pedigree.pairStart.length - 1);
  const renamed = (map: number[], value: number): number => (value < 0 ? -1 : (map[value] ?? -1));
  const pairStart = [0];
  const pairs: { sire: number; dam: number; probability: number }[] = [];
  for (const clutch of clutches.oldAt) {
    for (let pair = pedigree.pairStart[clutch] ?? 0; pair < (pedigree.pairStart[clutch + 1] ?? 0); pair++)
      pairs.push({
        sire: renamed(individuals.newOf, pedigree.pairSire[pair] ?? -1),
        dam: renamed(individuals.newOf, pedigree.pairDam[pair] ?? -1),
        probability: pedigree.pairProbability[pair] ?? 0,
      });
    pairStart.push(pairs.length);
  }
  return {
    newIndividual: individuals.newOf,
    newClutch: clutches.newOf,
    pedigree: {
      ...pedigree,
      clutchOf: Int32Array.from(individuals.oldAt, (old) => renamed(clutches.newOf, pedigree.clutchOf[old] ?? -1)),
      sourceOf: Int32Array.from(individuals.oldAt, (old) => pedigree.sourceOf[old] ?? -1),
      pairStart: Int32Array.from(pairStart),
      pairSire: Int32Array.from(pairs, ({ sire }) => sire),
      pairDam: Int32Array.from(pairs, ({ dam }) => dam),
      pairProbability: Float64Array.from(pairs, ({ probability }) => probability),
    },
  };
}
