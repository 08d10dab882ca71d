import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GenomeFlow } from '../../../api/lineage/kernel/genome-flow.ts';
import { orderPedigree } from '../../../api/lineage/kernel/order.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { shareOf } from '../../../api/lineage/kernel/shares.ts';
import { registers, toPedigree } from './random-registers.ts';

const register = registers({ clutches: 12, pairs: 4 });

function flowTo(pedigree: Pedigree, individual: number): GenomeFlow {
  const places = new Int32Array(pedigree.pairStart.length - 1).fill(-1);
  return new GenomeFlow(pedigree, orderPedigree(pedigree), places, individual);
}

/** Half from each parent, averaged over candidates, followed path by path: slow and plain. */
function sharesByPaths(
  pedigree: Pedigree,
  individual: number,
  endsAt: (other: number) => boolean,
): Map<string, number> {
  const shares = new Map<string, number>();
  const add = (key: string, share: number): void => void shares.set(key, (shares.get(key) ?? 0) + share);
  const follow = (animal: number, share: number, mayEnd: boolean): void => {
    const clutch = pedigree.clutchOf[animal] ?? -1;
    if (clutch < 0 || (mayEnd && endsAt(animal))) {
      add(`animal ${animal}`, share);
      return;
    }
    for (let pair = pedigree.pairStart[clutch] ?? 0; pair < (pedigree.pairStart[clutch + 1] ?? 0); pair++)
      for (const parent of [pedigree.pairSire[pair] ?? -1, pedigree.pairDam[pair] ?? -1]) {
        const part = (share * (pedigree.pairProbability[pair] ?? 0)) / 2;
        if (parent < 0) add(`clutch ${clutch}`, part);
        else follow(parent, part, true);
      }
  };
  follow(individual, 1, false);
  return shares;
}

describe('expected genome shares', () => {
  it('are what following every path gives, also where the flow ends early', () => {
    fc.assert(
      fc.property(registers({ clutches: 6, pairs: 3 }), fc.nat(4), (written, modulus) => {
        const pedigree = toPedigree(written);
        const endsAt = (animal: number): boolean => animal % 5 === modulus;
        for (let individual = 0; individual < pedigree.clutchOf.length; individual++) {
          const { individuals, unknownParents } = flowTo(pedigree, individual).shares(endsAt);
          const got = new Map([
            ...[...individuals].map(([animal, share]): [string, number] => [`animal ${animal}`, share]),
            ...[...unknownParents].map(([clutch, share]): [string, number] => [`clutch ${clutch}`, share]),
          ]);
          const wanted = sharesByPaths(pedigree, individual, endsAt);
          expect([...got.keys()].sort()).toEqual([...wanted.keys()].sort());
          for (const [key, share] of wanted) expect(got.get(key)).toBeCloseTo(share, 12);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('sum to 1', () => {
    fc.assert(
      fc.property(register, (written) => {
        const pedigree = toPedigree(written);
        for (let individual = 0; individual < pedigree.clutchOf.length; individual++) {
          const { individuals, unknownParents } = flowTo(pedigree, individual).shares();
          const all = [...individuals.values(), ...unknownParents.values()];
          expect(all.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('have the least value that any choice of candidates leaves, as the register-wide pass finds it', () => {
    fc.assert(
      fc.property(register, fc.nat(2), (written, counted) => {
        const pedigree = toPedigree(written);
        const ofSources = Float64Array.from(pedigree.baseKinship, (_, source) => (source === counted ? 1 : 0));
        const wanted = shareOf(
          pedigree,
          orderPedigree(pedigree),
          ofSources,
          new Float64Array(pedigree.clutchOf.length),
          0,
        );
        for (let individual = 0; individual < pedigree.clutchOf.length; individual++) {
          const least = flowTo(pedigree, individual).leastShare((founder) => pedigree.sourceOf[founder] === counted);
          expect(least).toBeCloseTo(wanted.least[individual] ?? NaN, 12);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('leave the shared working space as it was, so that the next animal starts clean', () => {
    fc.assert(
      fc.property(register, (written) => {
        const pedigree = toPedigree(written);
        const order = orderPedigree(pedigree);
        const places = new Int32Array(order.clutches.length).fill(-1);
        const fresh = flowTo(pedigree, pedigree.clutchOf.length - 1).shares();
        for (let individual = 0; individual < pedigree.clutchOf.length; individual++)
          new GenomeFlow(pedigree, order, places, individual).leastShare(() => true);
        expect(places.every((place) => place === -1)).toBe(true);
        expect(new GenomeFlow(pedigree, order, places, pedigree.clutchOf.length - 1).shares()).toEqual(fresh);
      }),
      { numRuns: 30 },
    );
  });
});
