import type { EntityManager } from 'typeorm';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { readKeeperNames } from '../mates/keeper-names.queries.ts';
import type { AnimalNames } from '../plan/animal-names.ts';
import { PlanTeller } from '../plan/plan-view.ts';
import type { PairRequest, PlanRequest } from '../plan/plan.dto.ts';
import type { PlanAnimalView, PlanPairView } from '../plan/plan.view.ts';
import type {
  AssumedPairView,
  AssumptionsView,
  KeptPlanAnimalView,
  KeptPlanItemView,
  KeptPlanPairView,
  KeptPlanView,
  PairNowView,
  PlanSinceView,
} from './kept-plan.view.ts';
import { readPairsToday, type KeptAnswer, type PairToday } from './pairs-today.ts';
import { conditionsOf } from './plan-conditions.ts';
import { say } from '../../platform/say.ts';

/** Tells a kept plan as it was, with what became of it and what the register changed under it, as far as whoever asks may see it. */
export async function keptPlanView(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  item: KeptPlanItemView,
  kept: KeptAnswer,
): Promise<KeptPlanView> {
  const { assumptions, record } = kept;
  const teller = await PlanTeller.read(manager, record, assumptions, namedIn(assumptions));
  const keepers = await readKeeperNames(manager, assumptions.keptTogether);
  const { pairs, leftOut, excluded, objective, tradeOff, moves, cautions, asOf } = teller.view();
  const today = await readPairsToday(manager, snapshot, kept, teller.names);
  return {
    ...item,
    assumptions: assumptionsView(assumptions, teller.names, keepers),
    pairs: today.flatMap((pair) => {
      const then = pairs[pair.row.place];
      return then ? [pairView(then, pair, teller.names)] : [];
    }),
    leftOut,
    excluded,
    objective,
    tradeOff,
    moves,
    cautions,
    asOf,
    since: sinceView(snapshot, kept, today),
  };
}

/** Every animal that assumptions name. */
function namedIn({ individuals = [], also, fixed, forbidden, uses }: PlanRequest): string[] {
  return [
    ...individuals,
    ...also,
    ...[...fixed, ...forbidden].flatMap(({ male, female }) => [male, female]),
    ...uses.map(({ individual }) => individual),
  ];
}

function assumptionsView(
  request: PlanRequest,
  names: AnimalNames,
  keepers: ReadonlyMap<string, string>,
): AssumptionsView {
  const { individuals, also, fixed, forbidden, uses, keptTogether, ...plain } = request;
  const pair = ({ male, female }: PairRequest): AssumedPairView => ({
    male: names.refOf(male),
    female: names.refOf(female),
  });
  return {
    ...plain,
    individuals: individuals?.map((id) => names.refOf(id)) ?? null,
    also: also.map((id) => names.refOf(id)),
    fixed: fixed.map(pair),
    forbidden: forbidden.map(pair),
    uses: uses.map(({ individual, most }) => ({ animal: names.refOf(individual), most })),
    keptTogether: keptTogether.map((id) => ({ id, name: keepers.get(id) ?? '' })),
  };
}

function pairView(then: PlanPairView, today: PairToday, names: AnimalNames): KeptPlanPairView {
  const { row } = today;
  return {
    ...then,
    place: row.place,
    male: concealed(then.male),
    female: concealed(then.female),
    state: row.state,
    reason: row.reason,
    pairing:
      row.pairingId !== null && row.isPairingSeen
        ? { id: row.pairingId, name: row.pairingName ?? '', isWithdrawn: row.isPairingWithdrawn }
        : null,
    acceptedInSpiteOf: [...row.warnings],
    now: nowView(today, names),
  };
}

/** Of an animal that may not be seen nothing goes out but what the figures of the pair say anyway. */
function concealed(animal: PlanAnimalView): KeptPlanAnimalView {
  if (!animal.animal.isPrivate) return animal;
  return { ...animal, line: null, keeper: null, keeperId: null, age: null, proven: false, isReserve: false };
}

function nowView({ row, male, female, ...today }: PairToday, names: AnimalNames): PairNowView {
  return {
    inbreeding: today.inbreeding,
    changes: today.changes.map(({ animalId, ...change }) => ({
      ...change,
      animal: animalId === null ? null : names.refOf(animalId),
    })),
    livesIn: [male, female].flatMap(({ then, livesIn }) =>
      livesIn.map((pairing) => ({ ...pairing, animal: names.refOf(then.id) })),
    ),
    needs: [...today.leaves],
    warnings: [...today.warnings],
    canBeAccepted: row.state === 'proposed' && !today.stops && male.now !== undefined && female.now !== undefined,
  };
}

function sinceView(snapshot: LineageSnapshot, kept: KeptAnswer, pairs: readonly PairToday[]): PlanSinceView {
  const conditions = conditionsOf(kept.assumptions, kept.record, pairs);
  const open = pairs.filter(({ row }) => row.state === 'proposed' || row.isPairingWithdrawn);
  const changed = open.filter(({ changes }) => changes.length > 0);
  const unmet = conditions.filter(({ isMet }) => !isMet);
  const word = wordFor(snapshot.revision.number !== kept.record.asOf.revision, changed.length > 0, unmet.length > 0);
  const sentences = {
    unchanged: say`The register has not changed since.`,
    holds: say`The register has changed since, but nothing that concerns the open pairs of this plan.`,
    differs: say`The register has changed since: ${changed.length === 1 ? say`one open pair is not as it was` : say`${changed.length} open pairs are not as they were`}. The plan still meets its assumptions.`,
    broken: say`The plan no longer holds. ${unmet.map(({ detail }) => detail).join(' ')}`,
  };
  return { word, sentence: sentences[word], conditions, asOf: snapshot.asOf };
}

function wordFor(hasMoved: boolean, isChanged: boolean, isBroken: boolean): PlanSinceView['word'] {
  if (isBroken) return 'broken';
  if (isChanged) return 'differs';
  return hasMoved ? 'holds' : 'unchanged';
}
