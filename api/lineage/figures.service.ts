import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { auditLabel } from '../provenance/flags.ts';
import { readMeanKinships } from './figures-rows.queries.ts';
import type { FigureItemView, FiguresView } from './figures.view.ts';
import { labelEvidenceOf, toFindings, type LabelEvidence } from './label-evidence.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { namedIn, resolveAnimals } from './named-animals.ts';
import { RecordNames } from './record-names.ts';
import { Snapshots } from './snapshots.service.ts';

/** Answers the figures that a list of animals shows beside each. */
@Injectable()
export class FiguresService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
  ) {}

  /**
   * Inbreeding, standings, traced share, mean kinship and flags of animals named by id or registry number.
   *
   * @throws InvalidProblem naming animals that do not exist or are named twice
   */
  async of(individuals: readonly string[]): Promise<FiguresView> {
    const snapshot = await this.snapshots.current();
    const numbers = await resolveAnimals(this.dataSource.manager, snapshot, namedIn(individuals, 'individuals'));
    const ids = numbers.map((individual) => snapshot.idOf(individual));
    const kinships = await readMeanKinships(this.dataSource.manager, ids);
    return { items: new FigureItems(snapshot, kinships).of(numbers), asOf: snapshot.asOf };
  }
}

/** Makes the items of one answer. Clutch-mates of one line have the same evidence, so it is gathered once for them. */
class FigureItems {
  readonly #snapshot: LineageSnapshot;
  /** The flags are asked for their codes only, so that no names need to be read. */
  readonly #unnamed: RecordNames;
  readonly #evidenceOfMates = new Map<string, LabelEvidence>();
  readonly #kinships: ReadonlyMap<string, number>;

  constructor(snapshot: LineageSnapshot, kinships: ReadonlyMap<string, number>) {
    this.#snapshot = snapshot;
    this.#kinships = kinships;
    this.#unnamed = new RecordNames(snapshot.graph);
  }

  of(individuals: readonly number[]): FigureItemView[] {
    return individuals.map((individual) => this.#item(individual));
  }

  #item(individual: number): FigureItemView {
    const snapshot = this.#snapshot;
    const evidence = this.#evidence(individual);
    const id = snapshot.idOf(individual);
    return {
      id,
      inbreeding: snapshot.inbreedingFigureOf(individual),
      depth: snapshot.depthOf(individual).depth,
      standings: [...evidence.standings],
      tracedShare: evidence.tracedShare,
      meanKinship: this.#kinships.get(id) ?? null,
      flags: auditLabel(toFindings(snapshot, evidence, this.#unnamed)).map(({ code }) => code),
    };
  }

  #evidence(individual: number): LabelEvidence {
    const { pedigree, lineOf } = this.#snapshot.graph;
    const clutch = pedigree.clutchOf[individual] ?? -1;
    if (clutch < 0) return labelEvidenceOf(this.#snapshot, individual);
    const key = `${clutch} ${lineOf[individual] ?? -1}`;
    const evidence = this.#evidenceOfMates.get(key) ?? labelEvidenceOf(this.#snapshot, individual);
    this.#evidenceOfMates.set(key, evidence);
    return evidence;
  }
}
