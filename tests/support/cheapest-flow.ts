import { PairRules, possiblePairs, type PlanProblem } from '../../api/match/plan/plan-problem.ts';

interface Edge {
  readonly to: number;
  room: number;
  readonly cost: number;
  /** Place of the opposite edge among those of `to`. */
  readonly back: number;
}

/**
 * The least sum of a plan under all conditions but moves and old animals, each move costing `toll` more: by cheapest augmenting paths in a
 * flow network (Busacker & Gowen 1960), which shares nothing with the solver. Infinity if there are not so many pairs.
 */
export function cheapestSum(problem: PlanProblem, toll = 0): number {
  const { males, females, pairings } = problem;
  const source = males.length + females.length;
  const sink = source + 1;
  const network: Edge[][] = Array.from({ length: sink + 1 }, () => []);
  const connect = (from: number, to: number, room: number, cost: number): void => {
    const [there, back] = [network[from] ?? [], network[to] ?? []];
    there.push({ to, room, cost, back: back.length });
    back.push({ to: from, room: 0, cost: -cost, back: there.length - 1 });
  };
  males.forEach(({ usesMost }, male) => connect(source, male, usesMost, 0));
  females.forEach(({ usesMost }, female) => connect(males.length + female, sink, usesMost, 0));
  const rules = new PairRules(problem);
  const pairs = possiblePairs(problem, rules);
  pairs.male.forEach((male, column) => {
    const female = pairs.female[column] ?? 0;
    const cost = rules.cost(male, female) + (rules.isMove(male, female) ? toll : 0);
    connect(male, males.length + female, 1, cost);
  });
  let sum = 0;
  for (let pair = 0; pair < pairings; pair++) {
    const cost = augment(network, source, sink);
    if (cost === null) return Infinity;
    sum += cost;
  }
  return sum;
}

/** A lower bound of every plan's sum: each move beyond those allowed is paid for instead of forbidden (Lagrange), at the best of some tolls. */
export function lowerBound(problem: PlanProblem): number {
  if (problem.movesMost === null) return cheapestSum(problem);
  let [low, high] = [0, 4];
  let best = -Infinity;
  const at = (toll: number): number => cheapestSum(problem, toll) - toll * (problem.movesMost ?? 0);
  // the bound is concave in the toll
  for (let step = 0; step < 30; step++) {
    const [one, other] = [low + (high - low) / 3, high - (high - low) / 3];
    const [bound, beyond] = [at(one), at(other)];
    best = Math.max(best, bound, beyond);
    if (bound < beyond) low = one;
    else high = other;
  }
  return best;
}

/** Sends one more along the cheapest path (Bellman & Ford) and gives its cost; null if there is none. */
function augment(network: readonly Edge[][], source: number, sink: number): number | null {
  const cost = new Float64Array(network.length).fill(Infinity);
  const reachedBy: (Edge | undefined)[] = [];
  const queue = [source];
  const isQueued = new Uint8Array(network.length);
  cost[source] = 0;
  for (let from = queue.shift(); from !== undefined; from = queue.shift()) {
    isQueued[from] = 0;
    for (const edge of network[from] ?? []) {
      const reached = (cost[from] ?? Infinity) + edge.cost;
      if (edge.room === 0 || reached >= (cost[edge.to] ?? Infinity) - 1e-14) continue;
      cost[edge.to] = reached;
      reachedBy[edge.to] = edge;
      if (isQueued[edge.to] === 0) queue.push(edge.to);
      isQueued[edge.to] = 1;
    }
  }
  if (cost[sink] === Infinity) return null;
  for (let at = sink; at !== source;) {
    const edge = reachedBy[at];
    const back = edge && network[at]?.[edge.back];
    if (!back) throw new Error('a path without its way back');
    edge.room--;
    back.room++;
    at = back.to;
  }
  return cost[sink] ?? null;
}
