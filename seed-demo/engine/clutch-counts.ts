import { addDays, isDay } from './calendar.ts';
import { diceFor, type Dice } from './dice.ts';
import type { ClutchCounts } from './draft.ts';
import type { RangePlan, SpeciesPlan, ToldClutch } from './plan.ts';

const nothingCounted: ClutchCounts = { eggs: null, fertile: null, hatched: null, outOfWater: null, losses: [] };

/**
 * Counts of a clutch: eggs as is usual for the species, some infertile, some lost, and at least `young` that left the water.
 * Clutches whose laying date is vague were never counted; of recent ones only that is known which can be known by `today`.
 */
export function countClutch(
  code: string,
  told: ToldClutch,
  young: number,
  species: SpeciesPlan,
  today: string,
): ClutchCounts {
  const laid = told.trulyLaid ?? told.laid;
  if (!isDay(laid)) return nothingCounted;
  const dice = diceFor(`counts of ${code}`);
  const eggs = told.eggs ?? drawEggs(dice, young, species);
  const hatchesBy = addDays(laid, most(species.ranges['laying-to-hatching']) + 3);
  if (hatchesBy > today) return { ...nothingCounted, eggs };
  const spoilt = young === 0 && dice.chance(0.4);
  const fertile = spoilt ? dice.whole(0, Math.floor(eggs / 2)) : keep(dice, eggs, 0.25, young);
  const hatched = spoilt ? 0 : keep(dice, fertile, 0.2, young);
  const losses = lossesOf(dice, eggs - fertile, fertile - hatched);
  const outOfWaterBy = addDays(hatchesBy, most(species.ranges['hatching-to-leaving-water']));
  const outOfWater = outOfWaterBy > today && young === 0 ? null : keep(dice, hatched, 0.2, young);
  return { eggs, fertile, hatched, outOfWater, losses };
}

function drawEggs(dice: Dice, young: number, species: SpeciesPlan): number {
  const [least, greatest] = species.ranges['eggs-per-clutch'].usual;
  return Math.max(young, dice.whole(least ?? 1, greatest ?? 10));
}

/** What is left of `count` when up to the given part is lost, but no fewer than `atLeast`. */
function keep(dice: Dice, count: number, lossUpTo: number, atLeast: number): number {
  return Math.max(Math.min(atLeast, count), count - Math.round(count * dice.real(0, lossUpTo)));
}

function lossesOf(dice: Dice, infertile: number, later: number): { cause: string; count: number }[] {
  const mould = dice.whole(0, later);
  const rest = later - mould;
  const other = dice.pick(['dried-out', 'deformed', 'unknown', 'eaten']);
  return [
    { cause: 'infertile', count: infertile },
    { cause: 'mould', count: mould },
    { cause: other, count: rest },
  ].filter((loss) => loss.count > 0);
}

const most = (range: RangePlan): number => range.usual[1] ?? 0;
