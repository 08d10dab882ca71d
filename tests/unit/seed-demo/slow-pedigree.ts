import { animalOf, type Clutch, type Draft } from '../../../seed-demo/engine/draft.ts';
import { parentCodes } from '../../../seed-demo/engine/find-parents.ts';

/** Slow and plain kinship over the scenario: expectation over the candidate parents, clutch by clutch. */
export class SlowPedigree {
  private readonly known = new Map<string, number>();

  constructor(private readonly draft: Draft) {}

  /** All ancestors of an animal, itself left out. */
  ancestors(code: string, found = new Set<string>()): Set<string> {
    for (const parent of this.parents(code))
      if (!found.has(parent)) {
        found.add(parent);
        this.ancestors(parent, found);
      }
    return found;
  }

  /** Generations on the longest path to a founder. */
  depth(code: string): number {
    return Math.max(0, ...this.parents(code).map((parent) => 1 + this.depth(parent)));
  }

  inbreeding(code: string): number {
    const animal = animalOf(this.draft, code);
    if (animal.clutch === null) return animal.source?.baseKinship ?? 0;
    return expected(animal.clutch, (sire, dam) => this.kinship(sire, dam));
  }

  kinship(one: string, other: string): number {
    if (one === '?' || other === '?') return 0;
    if (one === other) return (1 + this.inbreeding(one)) / 2;
    const key = [one, other].sort().join(' ');
    const found = this.known.get(key);
    if (found !== undefined) return found;
    const value = this.kinshipOfTwo(one, other);
    this.known.set(key, value);
    return value;
  }

  private kinshipOfTwo(one: string, other: string): number {
    const [a, b] = [animalOf(this.draft, one), animalOf(this.draft, other)];
    if (a.clutch === null && b.clutch === null)
      return a.source !== null && a.source === b.source ? (a.source.baseKinship ?? 0) : 0;
    if (a.clutch !== null && a.clutch === b.clutch)
      return expected(a.clutch, (sire, dam) => (this.self(sire) + this.self(dam) + 2 * this.kinship(sire, dam)) / 4);
    const [young, elder] = this.depth(one) >= this.depth(other) ? [a, other] : [b, one];
    if (young.clutch === null) throw new Error('a founder cannot be deeper than an animal with parents');
    return expected(young.clutch, (sire, dam) => (this.kinship(sire, elder) + this.kinship(dam, elder)) / 2);
  }

  private self(code: string): number {
    return code === '?' ? 0.5 : (1 + this.inbreeding(code)) / 2;
  }

  private parents(code: string): string[] {
    const { clutch } = animalOf(this.draft, code);
    return clutch === null ? [] : parentCodes(clutch.parents);
  }
}

/** How many couples may be the parents of a clutch. */
export function coupleCount({ parents }: Clutch): number {
  return parents.mode === 'pairs' ? parents.pairs.length : parents.sires.length * parents.dams.length;
}

function expected({ parents }: Clutch, value: (sire: string, dam: string) => number): number {
  const couples =
    parents.mode === 'pairs'
      ? parents.pairs.map(([a, b, probability]) => probability * value(a, b))
      : parents.sires.flatMap(([sire, p]) => parents.dams.map(([dam, q]) => p * q * value(sire, dam)));
  return couples.reduce((sum, each) => sum + each, 0);
}
