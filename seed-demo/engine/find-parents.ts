import { animalOf, type Animal, type Clutch, type Draft, type Parents } from './draft.ts';
import { isHousedOn } from './house-animals.ts';
import type { Odds, PairOdds } from './plan.ts';

/** Gives every clutch its candidate parents: those told, else those housed together on the laying date, with equal odds. */
export function findParents(draft: Draft): void {
  for (const clutch of draft.clutches) clutch.parents = parentsOf(clutch);
  for (const clutch of draft.clutches) for (const code of parentCodes(clutch.parents)) animalOf(draft, code);
}

/** Codes of all known candidates of a clutch. */
export function parentCodes(parents: Parents): string[] {
  const codes =
    parents.mode === 'lists'
      ? [...parents.sires, ...parents.dams].map(([code]) => code)
      : parents.pairs.flatMap(([a, b]) => [a, b]);
  return [...new Set(codes)].filter((code) => code !== '?');
}

function parentsOf({ told, group, code }: Clutch): Parents {
  if (told.pairs) return { mode: 'pairs', pairs: shareOut(told.pairs, 2) };
  const housed = group.stays.filter((stay) => isHousedOn(stay, told.laid)).map((stay) => stay.animal);
  if (!told.sires && !told.dams && housed.some((animal) => animal.sex === 'unsexed'))
    return { mode: 'pairs', pairs: shareOut(couples(housed), 2) };
  const sires = told.sires ?? housed.filter((animal) => animal.sex === 'male').map(certain);
  const dams = told.dams ?? housed.filter((animal) => animal.sex === 'female').map(certain);
  if (sires.length + dams.length === 0) throw new Error(`nobody was housed where ${code} was laid on ${told.laid}`);
  return { mode: 'lists', sires: shareOut(sires, 1), dams: shareOut(dams, 1) };
}

const certain = (animal: Animal): Odds => [animal.code, 1];

/** All couples of a group that may have been the pair. */
function couples(animals: readonly Animal[]): PairOdds[] {
  return animals.flatMap((a, index) =>
    animals
      .slice(index + 1)
      .filter((b) => a.sex === 'unsexed' || b.sex === 'unsexed' || a.sex !== b.sex)
      .map((b): PairOdds => [a.code, b.code, 1]),
  );
}

/** Divides weights by their sum; `at` is the place of the weight in the tuple. */
function shareOut<T extends Odds | PairOdds>(odds: readonly T[], at: 1 | 2): T[] {
  const total = odds.reduce((sum, each) => sum + Number(each[at]), 0);
  return odds.map((each) => each.map((value, index) => (index === at ? Number(value) / total : value)) as unknown as T);
}
