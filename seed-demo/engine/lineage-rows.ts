import { addDays, dateColumns, isDay } from './calendar.ts';
import { diceFor } from './dice.ts';
import { animalOf, type Animal, type Clutch, type Draft } from './draft.ts';
import type { Ids } from './ids.ts';
import type { Odds } from './plan.ts';
import type { Row } from './rows.ts';
import { tiersOf, type Tiers } from './tiers.ts';

/** Rows of clutches, animals in order of birth, and the edges between them. */
export function lineageRows(
  draft: Draft,
  ids: Ids,
  byBirth: readonly Animal[],
): Record<'clutch' | 'clutch_loss' | 'individual' | 'clutch_candidate' | 'clutch_pair', Row[]> {
  const tiers = tiersOf(draft);
  return {
    clutch: draft.clutches.map((clutch) => clutchRow(clutch, ids, tiers)),
    clutch_loss: draft.clutches.flatMap((clutch) =>
      clutch.counts.losses.map(({ cause, count }) => ({ clutch_id: ids.clutch(clutch), cause, count })),
    ),
    individual: byBirth.map((animal) => individualRow(animal, ids, tiers)),
    clutch_candidate: draft.clutches.flatMap((clutch) => candidateRows(draft, clutch, ids, tiers)),
    clutch_pair: draft.clutches.flatMap((clutch) => pairRows(draft, clutch, ids, tiers)),
  };
}

function clutchRow(clutch: Clutch, ids: Ids, tiers: Tiers): Row {
  const { eggs, fertile, hatched, outOfWater } = clutch.counts;
  return {
    id: ids.clutch(clutch),
    keeper_id: ids.keeper(clutch.group.plan.keeper),
    pairing_id: ids.group(clutch.group),
    code: clutch.code,
    ...dateColumns('laid', clutch.told.laid),
    eggs,
    fertile,
    hatched,
    out_of_water: outOfWater,
    site:
      clutch.told.site ??
      diceFor(`site of ${clutch.code}`).pick(['film canister', 'leaf', 'coconut hut', 'petri dish', null]),
    notes: clutch.told.notes ?? null,
    tier: tiers.clutch(clutch),
  };
}

function individualRow(animal: Animal, ids: Ids, tiers: Tiers): Row {
  return {
    id: ids.animal(animal.code),
    keeper_id: ids.keeper(animal.keeper),
    code: animal.code,
    species_id: ids.species(animal.species.scientificName),
    line_id: ids.line(animal.line.prefix),
    ...sexColumns(animal),
    source_id: animal.source === null ? null : ids.source(animal.source.code),
    clutch_id: animal.clutch === null ? null : ids.clutch(animal.clutch),
    clutch_tier: animal.clutch === null ? null : tiers.clutch(animal.clutch),
    tier: tiers.animal(animal),
    ...dateColumns('hatched', animal.hatched),
    ...dateColumns('out_of_water', animal.outOfWater),
    ...dateColumns('died', animal.died),
    status: animal.status,
    notes: animal.notes,
  };
}

/** Males are told by their calling, some animals by their looks, breeding females by their eggs. */
function sexColumns(animal: Animal): Row {
  const { sex, hatched } = animal;
  if (sex === 'unsexed') return { sex, sex_basis: null, ...dateColumns('sexed_on', null) };
  const dice = diceFor(`sex of ${animal.code}`);
  const basis = dice.chance(0.3)
    ? 'looks'
    : sex === 'male'
      ? 'calling'
      : animal.stays.length > 0
        ? 'eggs'
        : 'courtship';
  const months = animal.species.ranges['sexable-by-looks'].usual[1] ?? 10;
  const on =
    hatched !== null && isDay(hatched)
      ? addDays(hatched, Math.round(30.4 * months) + dice.whole(0, 40)).slice(0, 7)
      : null;
  return { sex, sex_basis: basis, ...dateColumns('sexed_on', on) };
}

function candidateRows(draft: Draft, clutch: Clutch, ids: Ids, tiers: Tiers): Row[] {
  const { parents } = clutch;
  if (parents.mode === 'pairs') return [];
  const rowOf = (role: 'sire' | 'dam', [code, probability, reason]: Odds): Row => ({
    id: ids.fresh(`${role} ${code} of ${clutch.code}`),
    clutch_id: ids.clutch(clutch),
    clutch_tier: tiers.clutch(clutch),
    role,
    individual_id: code === '?' ? null : ids.animal(code),
    individual_tier: code === '?' ? null : tiers.animal(animalOf(draft, code)),
    probability,
    reason: reason ?? null,
  });
  return [...parents.sires.map((odds) => rowOf('sire', odds)), ...parents.dams.map((odds) => rowOf('dam', odds))];
}

function pairRows(draft: Draft, clutch: Clutch, ids: Ids, tiers: Tiers): Row[] {
  const { parents } = clutch;
  if (parents.mode === 'lists') return [];
  return parents.pairs.map(([one, other, probability, reason]) => {
    // The database keeps each couple once, the smaller id first.
    const [a = one, b = other] = [one, other].sort((x, y) => (ids.animal(x) < ids.animal(y) ? -1 : 1));
    return {
      id: ids.fresh(`pair ${a} ${b} of ${clutch.code}`),
      clutch_id: ids.clutch(clutch),
      clutch_tier: tiers.clutch(clutch),
      a_id: ids.animal(a),
      a_tier: tiers.animal(animalOf(draft, a)),
      b_id: ids.animal(b),
      b_tier: tiers.animal(animalOf(draft, b)),
      probability,
      reason: reason ?? null,
    };
  });
}
