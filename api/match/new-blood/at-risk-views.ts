import type { EntityManager } from 'typeorm';
import { FounderStandings, labelOfLine } from '../../lineage/founder-standings.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { RecordNames, WantedNames } from '../../lineage/record-names.ts';
import type { AtRisk } from './at-risk-search.ts';
import type { AtRiskView } from './at-risk.view.ts';
import { beginningView } from './beginning-view.ts';
import { CarrierTeller, type Judged } from './carrier-views.ts';
import { say } from '../../platform/say.ts';

/** What a list of things at risk is told from. */
export interface AtRiskTold {
  readonly snapshot: LineageSnapshot;
  /** The line that was asked about; −1 for the whole club. */
  readonly line: number;
  readonly judged: Judged;
  readonly mostCarriers: number;
}

/** Reads the names that belong to what is about to be lost, and tells it. */
export async function atRiskViews(
  manager: EntityManager,
  { snapshot, line, judged, mostCarriers }: AtRiskTold,
  items: readonly AtRisk[],
): Promise<AtRiskView[]> {
  const { graph } = snapshot;
  const carriers = items.flatMap((item) => item.carriers.map(({ animal }) => animal));
  const wanted = new WantedNames();
  for (const animal of carriers) wanted.individuals.add(animal);
  for (const { kind, number } of items) {
    if (kind === 'founder') wanted.individuals.add(number);
    const source = kind === 'founder' ? (graph.pedigree.sourceOf[number] ?? -1) : number;
    if (kind !== 'line' && source >= 0) wanted.sources.add(source);
  }
  const names = await RecordNames.read(manager, graph, wanted);
  const teller = await CarrierTeller.read(manager, snapshot, names, judged, carriers);
  const standings = new FounderStandings(graph, labelOfLine(graph, line));
  return items.map((item): AtRiskView => {
    const node = item.kind === 'line' ? graph.lines[item.number] : undefined;
    const beginning = {
      founder: item.kind === 'founder' ? item.number : -1,
      source: item.kind === 'source' ? item.number : (graph.pedigree.sourceOf[item.number] ?? -1),
    };
    const { survival } = item;
    return {
      kind: item.kind,
      line: node ? { id: node.id, name: node.name } : null,
      beginning: item.kind === 'line' ? null : beginningView(snapshot, standings, beginning, names),
      why: whyAtRisk(item, mostCarriers),
      breeders: item.breeders,
      living: item.living,
      onlySex: item.onlySex,
      founders: item.founders,
      genomes: item.urgency[1],
      kept: survival && { expected: survival.kept, standardError: survival.standardError, isExact: survival.isExact },
      carriers: item.carriers.map((carrier) => teller.tell(carrier)),
    };
  });
}

function whyAtRisk({ kind, breeders, living, isFew, onlySex, founders }: AtRisk, mostCarriers: number): string[] {
  const what = { line: say`are of it`, source: say`carry genes of it`, founder: say`carry genes of it` }[kind];
  const sexWords = onlySex === 'male' ? 'males' : 'females';
  const few =
    breeders === 0
      ? say`No living animal that may breed is left, and ${living} that may not.`
      : breeders === 1
        ? say`One living animal that may breed is left.`
        : say`${breeders} living animals that may breed ${what}, and ${mostCarriers} count as few.`;
  return [
    ...(isFew ? [few] : []),
    ...(onlySex !== null && breeders > 1 ? [say`All ${breeders} that may breed and ${what} are ${sexWords}.`] : []),
    ...(founders && founders.left < founders.recorded
      ? [say`Of its ${founders.recorded} founders ${founders.recorded - founders.left} left nothing that lives.`]
      : []),
  ];
}
