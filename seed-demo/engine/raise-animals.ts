import { addDays, isDay, middleOf } from './calendar.ts';
import { countClutch } from './clutch-counts.ts';
import { diceFor } from './dice.ts';
import { readAnimals, type Animal, type Clutch, type Draft, type Group } from './draft.ts';
import type { ClubPlan, ClutchPlan, LinePlan, RangePlan, SpeciesPlan, ToldClutch } from './plan.ts';

/** Everything that was ever born, bought or found, with its groups and clutches; lives and parents are worked out afterwards. */
export function raiseAnimals(plan: ClubPlan): Draft {
  const draft: Draft = { plan, animals: new Map(), groups: [], clutches: [] };
  for (const line of plan.lines) {
    const species = plan.species.find((each) => each.scientificName === line.species);
    if (!species) throw new Error(`the scenario has no species ${line.species}`);
    addFounders(draft, line, species);
    for (const group of line.groups) draft.groups.push({ plan: group, line, stays: [] });
    const groups = draft.groups.filter((group) => group.line === line);
    const laid = groups.flatMap((group) => group.plan.clutches.map((clutch) => ({ group, told: readClutch(clutch) })));
    laid.sort((a, b) => (middleOf(a.told.laid) < middleOf(b.told.laid) ? -1 : 1));
    laid.forEach(({ group, told }, index) => {
      addClutch(draft, group, species, told, `${line.prefix}-C${String(index + 1).padStart(2, '0')}`);
    });
  }
  return draft;
}

function addFounders(draft: Draft, line: LinePlan, species: SpeciesPlan): void {
  for (const source of line.sources)
    for (const { code, sex } of readAnimals(source.founders)) {
      // Founders arrive grown up; their age is reckoned from a year before.
      const bornAbout = addDays(middleOf(source.date ?? '200X'), -365);
      add(draft, newAnimal({ code, sex, line, species, source, bornAbout, keeper: source.keeper }));
    }
  for (const stray of line.strays)
    for (const { code, sex } of readAnimals(stray.animal)) {
      const bornAbout = middleOf(stray.hatched ?? '200X');
      const { keeper, notes } = stray;
      add(draft, newAnimal({ code, sex, line, species, bornAbout, keeper, notes, hatched: stray.hatched ?? null }));
    }
}

/** Reads the one-line form of a clutch. */
function readClutch(plan: ClutchPlan): ToldClutch {
  if (typeof plan !== 'string') return plan;
  const [laid = '', ...young] = plan.split(' ');
  return { laid, young: young.join(' ') };
}

function addClutch(draft: Draft, group: Group, species: SpeciesPlan, told: ToldClutch, code: string): void {
  const names = readAnimals(told.young ?? '');
  const clutch: Clutch = {
    code,
    group,
    species,
    told,
    counts: countClutch(code, told, names.length, species, draft.plan.today),
    young: [],
    parents: { mode: 'lists', sires: [], dams: [] },
    confirmed: told.confirmed ?? null,
  };
  draft.clutches.push(clutch);
  const dates = hatchingDates(told.trulyLaid ?? told.laid, species, code);
  for (const { code: name, sex } of names) {
    const outOfWater =
      dates.bornOn === null ? null : addDays(dates.bornOn, draw(species.ranges['hatching-to-leaving-water'], name));
    if (outOfWater !== null && outOfWater > draft.plan.today)
      throw new Error(`the scenario lets ${name} leave the water after ${draft.plan.today}: ${outOfWater}`);
    const { hatched, bornAbout } = dates;
    const keeper = group.plan.keeper;
    const young = newAnimal({
      code: name,
      sex,
      line: group.line,
      species,
      clutch,
      bornAbout,
      hatched,
      outOfWater,
      keeper,
    });
    add(draft, young);
    clutch.young.push(young);
  }
}

/** A laying date that is a day gives a hatching day; a month the month after; a vaguer date is repeated as it is. */
function hatchingDates(
  laid: string,
  species: SpeciesPlan,
  code: string,
): { hatched: string; bornAbout: string; bornOn: string | null } {
  const days = draw(species.ranges['laying-to-hatching'], `hatching of ${code}`);
  const bornAbout = addDays(middleOf(laid), days);
  if (isDay(laid)) return { hatched: bornAbout, bornAbout, bornOn: bornAbout };
  return { hatched: /^\d{4}-\d{2}$/.test(laid) ? bornAbout.slice(0, 7) : laid, bornAbout, bornOn: null };
}

function draw(range: RangePlan, name: string): number {
  const [least, most] = range.usual;
  return diceFor(name).whole(least ?? 0, most ?? least ?? 0);
}

function newAnimal(
  known: Pick<Animal, 'code' | 'sex' | 'line' | 'species' | 'bornAbout' | 'keeper'> & Partial<Animal>,
): Animal {
  const unknown = { source: null, clutch: null, hatched: null, outOfWater: null, notes: null, died: null };
  return { ...unknown, status: 'alive', stays: [], ...known };
}

function add(draft: Draft, animal: Animal): void {
  if (draft.animals.has(animal.code)) throw new Error(`the scenario tells twice of ${animal.code}`);
  draft.animals.set(animal.code, animal);
}
