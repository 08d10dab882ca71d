import type { ParentRole, Sex } from '../../../shared/vocabulary.ts';
import type { ProblemError } from '../../platform/problem.ts';
import { say } from '../../platform/say.ts';

/** An animal as a parent: what ranks and checks need. */
export interface ParentAnimal {
  readonly id: string;
  /** Null where whoever asks may not see it. */
  readonly number: string | null;
  readonly sex: Sex;
  readonly tier: number;
}

export interface Candidate {
  readonly animal: ParentAnimal | null;
  readonly weight: number;
  readonly reason: string | null;
}

export interface CandidatePair {
  readonly a: ParentAnimal;
  readonly b: ParentAnimal;
  readonly weight: number;
  readonly reason: string | null;
}

/** Who may be the parents of a clutch; weights are of any scale. */
export type Parents =
  | { readonly mode: 'lists'; readonly sires: readonly Candidate[]; readonly dams: readonly Candidate[] }
  | { readonly mode: 'pairs'; readonly pairs: readonly CandidatePair[] };

export const unknownParents: Parents = { mode: 'lists', sires: [], dams: [] };

/** The animals among possible parents, each once. */
export function animalsOf(parents: Parents): ParentAnimal[] {
  const all =
    parents.mode === 'pairs'
      ? parents.pairs.flatMap((pair) => [pair.a, pair.b])
      : [...parents.sires, ...parents.dams].flatMap((candidate) => candidate.animal ?? []);
  return [...new Map(all.map((animal) => [animal.id, animal])).values()];
}

/** Weights as probabilities that sum to 1; weights that do so already stay to the last digit. */
export function probabilities(weighted: readonly { readonly weight: number }[]): number[] {
  const sum = weighted.reduce((total, { weight }) => total + weight, 0);
  if (Math.abs(sum - 1) < 1e-12) return weighted.map(({ weight }) => weight);
  return weighted.map(({ weight }) => weight / sum);
}

/** Whether nothing is said but "one of these": equal odds, no reasons, nobody unknown. */
export function isAtEqualOdds(parents: Parents): boolean {
  const groups: (readonly (Candidate | CandidatePair)[])[] =
    parents.mode === 'pairs' ? [parents.pairs] : [parents.sires, parents.dams];
  return groups.every((entries) => {
    const share = 1 / entries.length;
    const odds = probabilities(entries);
    return entries.every(
      (entry, index) =>
        entry.reason === null &&
        !('animal' in entry && entry.animal === null) &&
        Math.abs((odds[index] ?? 0) - share) < 1e-9,
    );
  });
}

/** Whether two statements name the same animals at the same odds; a reason makes a statement the keeper's own. */
export function isSameParents(one: Parents, other: Parents): boolean {
  const oddsOf = (parents: Parents): Map<string, number> => {
    const groups: [string, readonly (Candidate | CandidatePair)[]][] =
      parents.mode === 'pairs'
        ? [['pair', parents.pairs]]
        : [
            ['sire', parents.sires],
            ['dam', parents.dams],
          ];
    const odds = new Map<string, number>();
    for (const [group, entries] of groups) {
      const shares = probabilities(entries);
      entries.forEach((entry, index) => {
        const name = 'a' in entry ? [entry.a.id, entry.b.id].sort().join(' ') : (entry.animal?.id ?? 'unknown');
        odds.set(`${group} ${name}${entry.reason === null ? '' : ' with a reason'}`, shares[index] ?? 0);
      });
    }
    return odds;
  };
  const [left, right] = [oddsOf(one), oddsOf(other)];
  return left.size === right.size && [...left].every(([key, share]) => Math.abs(share - (right.get(key) ?? -1)) < 1e-9);
}

/** What is wrong with possible parents, each at its place in the request: an animal twice, on both sides, or of the wrong sex. */
export function parentErrors(parents: Parents): ProblemError[] {
  if (parents.mode === 'pairs') return pairErrors(parents.pairs);
  const errors = [...sideErrors('sire', parents.sires), ...sideErrors('dam', parents.dams)];
  const sires = new Set(parents.sires.flatMap((candidate) => candidate.animal?.id ?? []));
  parents.dams.forEach(({ animal }, index) => {
    if (animal && sires.has(animal.id))
      errors.push({
        pointer: `/dams/${index}/individualId`,
        detail: say`${nameOf(animal)} stands among the sires too. Give pairs where the sex is not known.`,
      });
  });
  return errors;
}

const wrongSex = { sire: 'female', dam: 'male' } as const;

function sideErrors(role: ParentRole, side: readonly Candidate[]): ProblemError[] {
  return side.flatMap(({ animal }, index): ProblemError[] => {
    const pointer = `/${role}s/${index}/individualId`;
    if (side.findIndex((other) => other.animal?.id === animal?.id) !== index)
      return [
        {
          pointer,
          detail: animal
            ? say`${nameOf(animal)} stands here twice. Give its weight once.`
            : say`The unknown animal stands here twice.`,
        },
      ];
    if (animal && animal.number === null && animal.sex === wrongSex[role])
      return [{ pointer, detail: say`A private animal can no longer stand here. Name all ${role}s anew.` }];
    if (animal?.sex === wrongSex[role])
      return [
        {
          pointer,
          detail: say`${nameOf(animal)} is recorded as ${animal.sex} and cannot be a ${role}. Correct its sex or choose another.`,
        },
      ];
    return [];
  });
}

function pairErrors(pairs: readonly CandidatePair[]): ProblemError[] {
  const seen = new Set<string>();
  return pairs.flatMap(({ a, b }, index): ProblemError[] => {
    const pointer = `/pairs/${index}`;
    if (a.id === b.id) return [{ pointer: `${pointer}/b`, detail: say`${nameOf(a)} cannot be a pair with itself.` }];
    const key = a.id < b.id ? `${a.id} ${b.id}` : `${b.id} ${a.id}`;
    if (seen.has(key))
      return [{ pointer, detail: say`${nameOf(a)} and ${nameOf(b)} stand here twice. Give their weight once.` }];
    seen.add(key);
    if (a.sex === b.sex && a.sex !== 'unsexed')
      return [{ pointer, detail: say`${nameOf(a)} and ${nameOf(b)} are both recorded as ${a.sex}.` }];
    return [];
  });
}

const nameOf = ({ number }: ParentAnimal): string =>
  number === null ? say`A private animal` : say`The animal ${number}`;
