import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeInbreeding } from '../../../api/lineage/kernel/inbreeding.ts';
import { partialInbreeding } from '../../../api/lineage/kernel/partial-inbreeding.ts';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';
import { close } from './answered-case.ts';
import { registers, toPedigree } from './random-registers.ts';
import { SlowRecursion } from './slow-recursion.ts';

const anyRegister = registers({ clutches: 25, pairs: 4 });

/** φ of one founder alone by its definition: only copies of that founder's two genes count as the same. */
class SlowPart {
  readonly #pedigree: Pedigree;
  readonly #slow: SlowRecursion;
  readonly #founder: number;

  constructor(pedigree: Pedigree, founder: number) {
    this.#pedigree = pedigree;
    this.#slow = new SlowRecursion(pedigree);
    this.#founder = founder;
  }

  share(animal: number): number {
    if (animal < 0) return 0;
    const clutch = this.#clutchOf(animal);
    if (clutch < 0) return animal === this.#founder ? 1 : 0;
    return this.#over(clutch, (sire, dam) => 0.5 * (this.share(sire) + this.share(dam)));
  }

  young(clutch: number): number {
    return this.#over(clutch, (sire, dam) => this.kinship(sire, dam));
  }

  kinship(a: number, b: number): number {
    if (a < 0 || b < 0) return 0;
    const clutchOfA = this.#clutchOf(a);
    const clutchOfB = this.#clutchOf(b);
    if (a === b) {
      if (clutchOfA >= 0) return 0.5 * (this.share(a) + this.young(clutchOfA));
      return a === this.#founder ? this.#slow.kinship(a, a) : 0;
    }
    if (clutchOfA < 0 && clutchOfB < 0) return 0;
    if (clutchOfA === clutchOfB)
      return this.#over(
        clutchOfA,
        (sire, dam) => 0.25 * (this.kinship(sire, sire) + this.kinship(dam, dam) + 2 * this.kinship(sire, dam)),
      );
    const [clutch, other] = clutchOfA > clutchOfB ? [clutchOfA, b] : [clutchOfB, a];
    return this.#over(clutch, (sire, dam) => 0.5 * (this.kinship(sire, other) + this.kinship(dam, other)));
  }

  #clutchOf(animal: number): number {
    return this.#pedigree.clutchOf[animal] ?? -1;
  }

  #over(clutch: number, value: (sire: number, dam: number) => number): number {
    return this.#slow
      .pairsOf(clutch)
      .reduce((sum, { sire, dam, probability }) => sum + probability * value(sire, dam), 0);
  }
}

function partsOf(pedigree: Pedigree, clutches: Int32Array, clutch: number) {
  const pairs = new SlowRecursion(pedigree).pairsOf(clutch).map(({ sire, dam, probability }) => ({
    a: sire,
    b: dam,
    probability,
  }));
  return partialInbreeding(pedigree, clutches, pairs);
}

describe('partial inbreeding', () => {
  it('adds up to F, with uncertain and unknown parents, related founders and kin sources', () => {
    fc.assert(
      fc.property(anyRegister, (register) => {
        const pedigree = toPedigree(register);
        const inbreeding = computeInbreeding(pedigree);
        inbreeding.order.clutches.forEach((clutch) => {
          const parts = partsOf(pedigree, inbreeding.order.clutches, clutch);
          const all = [parts.founders, parts.sources, parts.unknownParents].flatMap((map) => [...map.values()]);
          for (const part of all) expect(part).toBeGreaterThanOrEqual(0);
          const sum = all.reduce((total, part) => total + part, 0);
          close(sum, inbreeding.clutchExpected[clutch] ?? NaN, `parts of F of clutch ${clutch}`);
        });
      }),
      { numRuns: 400 },
    );
  });

  it('gives each founder what the definition gives it', () => {
    fc.assert(
      fc.property(registers({ clutches: 7, pairs: 3 }), (register) => {
        const pedigree = toPedigree(register);
        const { order } = computeInbreeding(pedigree);
        register.founders.forEach((_, founder) => {
          const slow = new SlowPart(pedigree, founder);
          order.clutches.forEach((clutch) => {
            const { founders } = partsOf(pedigree, order.clutches, clutch);
            close(founders.get(founder) ?? 0, slow.young(clutch), `part of founder ${founder} in clutch ${clutch}`);
          });
        });
      }),
      { numRuns: 150 },
    );
  });
});
