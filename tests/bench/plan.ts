import { computeInbreeding } from '../../api/lineage/kernel/inbreeding.ts';
import { kinshipMatrix } from '../../api/lineage/kernel/kinship.ts';
import { meanKinshipOf } from '../../api/lineage/kernel/mean-kinship.ts';
import { loadSolver } from '../../api/match/plan/highs-model.ts';
import { makePlan } from '../../api/match/plan/make-plan.ts';
import type { PlanAnimal, PlanProblem } from '../../api/match/plan/plan-problem.ts';
import { buildShape, seededRandom } from './kernel-shapes.ts';
import { planProblem } from '../support/plan-problems.ts';

/** One plan: how long it took with its reasons and its trade-off, and how good it is. */
interface PlanRow {
  readonly candidates: string;
  readonly pairings: number;
  readonly conditions: string;
  readonly seconds: number;
  /** Of the choice alone. */
  readonly choosing: number;
  readonly pairs: number;
  readonly gap: number;
  readonly isOptimal: boolean;
}

const OTHER_WEIGHTS = [0, 0.25, 0.5, 1, 2, 4, 8];

/** The last animals of a closed line, as many males as females, kept by 24 keepers, a tenth of them old without young. */
function closedLine(size: number): PlanProblem {
  const pedigree = buildShape({
    name: 'one line',
    lines: 1,
    animalsPerLine: 12 * size,
    breeders: 60,
    clutchSize: 4,
    crosses: 0,
  });
  const inbreeding = computeInbreeding(pedigree);
  const last = pedigree.clutchOf.length - 2 * size;
  const animals = Int32Array.from({ length: 2 * size }, (_, place) => last + place);
  const kinships = kinshipMatrix(pedigree, inbreeding, animals);
  const means = meanKinshipOf(pedigree, inbreeding, animals, animals);
  const random = seededRandom(11);
  const animal = (place: number): PlanAnimal => ({
    meanKinship: means[place] ?? 0,
    keeper: Math.floor(random() * 24),
    usesMost: random() < 0.9 ? 1 : 2,
    isReserve: random() < 0.1,
  });
  // every other young is a male, so that clutch-mates are on both sides
  const males = Array.from({ length: size }, (_, place) => 2 * place);
  const females = males.map((place) => place + 1);
  return planProblem({
    males: males.map(animal),
    females: females.map(animal),
    kinship: Float64Array.from(
      males.flatMap((male) => females.map((female) => kinships[male * 2 * size + female] ?? 0)),
    ),
    weight: 1,
  });
}

/** Plans over closed lines of several sizes, under several conditions, in seconds. */
export async function benchPlan(): Promise<PlanRow[]> {
  const highs = await loadSolver();
  const rows: PlanRow[] = [];
  for (const size of [50, 150, 200]) {
    const line = closedLine(size);
    const conditions: Record<string, Partial<PlanProblem>> = {
      none: { pairings: Math.floor(size * 0.6) },
      'as many as can be': { pairings: size },
      'F limit, few moves': {
        pairings: Math.floor(size * 0.4),
        inbreedingMost: 0.125,
        movesMost: Math.floor(size / 5),
      },
      'many pairs, few moves, old ones': {
        pairings: Math.floor(size * 0.8),
        movesMost: Math.floor(size / 2),
        reserveLeast: Math.floor(size / 6),
      },
    };
    for (const [name, told] of Object.entries(conditions)) rows.push(await measure(size, name, { ...line, ...told }));
  }
  return rows;

  async function measure(size: number, conditions: string, problem: PlanProblem): Promise<PlanRow> {
    const seconds = 20;
    const start = performance.now();
    const outcome = makePlan(highs, { problem, seconds, otherWeights: OTHER_WEIGHTS });
    const took = (performance.now() - start) / 1000;
    if (outcome.kind !== 'found') throw new Error(`No plan over ${size}, ${conditions}: ${JSON.stringify(outcome)}`);
    await new Promise(setImmediate); // lets an interrupted bench end between two plans
    const { plan } = outcome;
    return {
      candidates: `${size} × ${size}`,
      pairings: problem.pairings,
      conditions,
      seconds: took,
      choosing: plan.choosingSeconds,
      pairs: plan.pairs.length,
      gap: plan.gap,
      isOptimal: plan.isOptimal,
    };
  }
}
