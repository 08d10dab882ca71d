import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { sexOf } from '../../lineage/register-graph.ts';
import type { HoldingView } from './exchange.view.ts';
import type { HoldingMeasures } from './holding.ts';

/** What some animals hold together, as an answer tells it. */
export function holdingView(
  { graph }: LineageSnapshot,
  animals: readonly number[],
  measures: HoldingMeasures,
): HoldingView {
  const of = (sex: string): number => animals.filter((animal) => sexOf(graph, animal) === sex).length;
  return {
    animals: animals.length,
    males: of('male'),
    females: of('female'),
    unsexed: of('unsexed'),
    meanKinship: measures.diversity?.meanKinship ?? null,
    geneDiversity: measures.diversity?.geneDiversity ?? null,
    founderGenomeEquivalents: measures.diversity?.founderGenomeEquivalents ?? null,
    founders: measures.founders.length,
    sources: measures.sources.length,
    unknown: measures.unknown,
  };
}
