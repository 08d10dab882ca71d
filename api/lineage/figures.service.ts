import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { readKnownFlags } from '../provenance/acknowledgements/acknowledgement.queries.ts';
import { auditLabel } from '../provenance/flags.ts';
import { readMeanKinships } from './figures-rows.queries.ts';
import type { FigureItemView, FiguresView } from './figures.view.ts';
import { factsFor, readLabelFacts, type ReadFacts } from './label-facts.queries.ts';
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
    const items = new FigureItems(snapshot);
    const [kinships, facts, known] = await Promise.all([
      readMeanKinships(this.dataSource.manager, ids),
      readLabelFacts(this.dataSource.manager, snapshot, items.evidenceOf(numbers), ids),
      readKnownFlags(this.dataSource.manager, ids),
    ]);
    const told = items.of(numbers, kinships, facts);
    return {
      items: told.map((item) => ({ ...item, acknowledged: known.among(item.id, item.flags) })),
      asOf: snapshot.asOf,
    };
  }
}

/** An item without what people said of its flags. */
type Figures = Omit<FigureItemView, 'acknowledged'>;

/** Makes the items of one answer. Clutch-mates of one line have the same evidence, so it is gathered once for them. */
class FigureItems {
  readonly #snapshot: LineageSnapshot;
  /** The flags are asked for their codes only, so that no names need to be read. */
  readonly #unnamed: RecordNames;
  readonly #evidenceOfMates = new Map<string, LabelEvidence>();

  constructor(snapshot: LineageSnapshot) {
    this.#snapshot = snapshot;
    this.#unnamed = new RecordNames(snapshot.graph);
  }

  evidenceOf(individuals: readonly number[]): LabelEvidence[] {
    return individuals.map((individual) => this.#evidence(individual));
  }

  of(individuals: readonly number[], kinships: ReadonlyMap<string, number>, facts: ReadFacts): Figures[] {
    return individuals.map((individual) => this.#item(individual, kinships, facts));
  }

  #item(individual: number, kinships: ReadonlyMap<string, number>, facts: ReadFacts): Figures {
    const snapshot = this.#snapshot;
    const evidence = this.#evidence(individual);
    const id = snapshot.idOf(individual);
    return {
      id,
      inbreeding: snapshot.inbreedingFigureOf(individual),
      depth: snapshot.depthOf(individual).depth,
      standings: [...evidence.standings],
      tracedShare: evidence.tracedShare,
      meanKinship: kinships.get(id) ?? null,
      flags: auditLabel(toFindings(snapshot, evidence, factsFor(facts, id), this.#unnamed)).map(({ code }) => code),
    };
  }

  #evidence(individual: number): LabelEvidence {
    const { pedigree, lineOf, claims } = this.#snapshot.graph;
    const clutch = pedigree.clutchOf[individual] ?? -1;
    // a founder, or one of which something is claimed, shares its evidence with nobody
    const isAlone = clutch < 0 || claims.individual.has(individual);
    const key = isAlone ? `animal ${individual}` : `${clutch} ${lineOf[individual] ?? -1}`;
    const evidence = this.#evidenceOfMates.get(key) ?? labelEvidenceOf(this.#snapshot, individual);
    this.#evidenceOfMates.set(key, evidence);
    return evidence;
  }
}
