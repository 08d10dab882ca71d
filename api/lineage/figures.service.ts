import { Inject, Injectable } from '@nestjs/common';
import { auditLabel } from '../provenance/flags.ts';
import type { FigureItemView, FiguresView } from './figures.view.ts';
import { labelEvidenceOf, toFindings } from './label-evidence.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { namedIn, resolveAnimals } from './named-animals.ts';
import { RecordNames } from './record-names.ts';
import { Snapshots } from './snapshots.service.ts';

/** Answers the figures that a list of animals shows beside each. */
@Injectable()
export class FiguresService {
  constructor(@Inject(Snapshots) private readonly snapshots: Snapshots) {}

  /**
   * Inbreeding, standings, traced share and flags of animals named by id or registry number.
   *
   * @throws InvalidProblem naming animals that do not exist or are named twice
   */
  async of(individuals: readonly string[]): Promise<FiguresView> {
    const snapshot = await this.snapshots.current();
    const numbers = resolveAnimals(snapshot, namedIn(individuals, 'individuals'));
    const unnamed = new RecordNames(snapshot.graph);
    return { items: numbers.map((number) => figureItem(snapshot, number, unnamed)), asOf: snapshot.asOf };
  }
}

/** The flags are asked for their codes only, so that no names need to be read. */
function figureItem(snapshot: LineageSnapshot, individual: number, unnamed: RecordNames): FigureItemView {
  const evidence = labelEvidenceOf(snapshot, individual);
  return {
    id: snapshot.graph.individualIds[individual] ?? '',
    inbreeding: snapshot.inbreedingFigureOf(individual),
    depth: snapshot.depth.depth[individual] ?? 0,
    standings: [...evidence.standings],
    tracedShare: evidence.tracedShare,
    flags: auditLabel(toFindings(snapshot, evidence, unnamed)).map(({ code }) => code),
  };
}
