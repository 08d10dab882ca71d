import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { LongWork } from '../platform/long-work.ts';
import { auditLabel } from '../provenance/flags.ts';
import { readKnownFlags } from '../provenance/acknowledgements/acknowledgement.queries.ts';
import { weakestStanding } from '../provenance/standing.ts';
import { completenessIndex } from './kernel/completeness.ts';
import { labelEvidenceOf, shownLabels, toFindings, type LabelEvidence } from './label-evidence.ts';
import { factsFor, readLabelFacts } from './label-facts.queries.ts';
import { ancestralInbreedingOf, inbreedingParts } from './inbreeding-parts.ts';
import { lineStandingOf } from './line-standing.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type { FlagView, InbreedingView, LabelView, LineageView } from './lineage.view.ts';
import type { Pair } from './kernel/genome-flow.ts';
import type { FounderShare } from './kernel/shares.ts';
import { resolveAnimal } from './named-animals.ts';
import { originView, wantOrigins } from './origin-views.ts';
import { RecordNames, WantedNames } from './record-names.ts';
import { Snapshots } from './snapshots.service.ts';
import { toldFlags } from './told-flags.ts';

/** Most candidate pairs that an answer lists. */
const PAIRS_MOST = 50;
/** Most founders and sources whose parts of F an answer lists. */
const PARTS_MOST = 50;
/** Over how many generations completeness is told: beyond five an ancestor carries less than a thirtieth. */
const COMPLETENESS_GENERATIONS = 5;

/** Answers what the lineage says about one animal. */
@Injectable()
export class IndividualLineageService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(LongWork) private readonly work: LongWork,
  ) {}

  /**
   * Inbreeding with its range, depth, label and shares of one animal, withdrawn ones too.
   *
   * @throws NotFoundProblem if there is no such animal
   */
  async get(id: string): Promise<LineageView> {
    const snapshot = await this.snapshots.current();
    const individual = await resolveAnimal(this.dataSource.manager, snapshot, id);
    const evidence = labelEvidenceOf(snapshot, individual);
    const pairs = likeliest(snapshot.pairsOf(individual));
    const { clutches } = snapshot.flowTo(individual);
    const parts = (await inbreedingParts(this.work, snapshot, individual, clutches)).slice(0, PARTS_MOST);
    const animal = snapshot.idOf(individual);
    const [names, facts, known] = await Promise.all([
      RecordNames.read(this.dataSource.manager, snapshot.graph, wantedBy(evidence, pairs, parts)),
      readLabelFacts(this.dataSource.manager, snapshot, [evidence], [animal]),
      readKnownFlags(this.dataSource.manager, [animal]),
    ]);
    return {
      inbreeding: inbreedingView(snapshot, individual, pairs, names),
      ...snapshot.depthOf(individual),
      completeness: {
        generations: COMPLETENESS_GENERATIONS,
        index: completenessIndex(
          snapshot.graph.pedigree,
          snapshot.inbreeding.order,
          individual,
          COMPLETENESS_GENERATIONS,
        ),
      },
      filialGeneration: snapshot.filialGenerationOf(individual),
      meanKinship: snapshot.meanKinshipOf(individual),
      lineKinship: lineStandingOf(snapshot, individual),
      label: labelView(
        evidence,
        toldFlags(auditLabel(toFindings(snapshot, evidence, factsFor(facts, animal), names)), names, (flag, causes) =>
          known.of(animal, flag, causes),
        ),
        names,
      ),
      shares: evidence.origins.map((origin) => ({
        ...originView(snapshot, evidence.founders, origin, names),
        share: origin.share,
      })),
      ancestralInbreeding: ancestralInbreedingOf(snapshot, individual, clutches),
      partialInbreeding: parts.map((origin) => ({
        ...originView(snapshot, evidence.founders, origin, names),
        part: origin.share,
      })),
      current: snapshot.isCurrent(individual),
      asOf: snapshot.asOf,
    };
  }
}

function likeliest(pairs: readonly Pair[]): Pair[] {
  return [...pairs].sort((one, other) => other.probability - one.probability).slice(0, PAIRS_MOST);
}

function wantedBy(evidence: LabelEvidence, pairs: readonly Pair[], parts: readonly FounderShare[]): WantedNames {
  const wanted = new WantedNames();
  wanted.addEvidence(evidence);
  for (const { a, b } of pairs) for (const parent of [a, b]) if (parent >= 0) wanted.individuals.add(parent);
  wantOrigins(wanted, evidence.origins);
  wantOrigins(wanted, parts);
  return wanted;
}

function inbreedingView(
  snapshot: LineageSnapshot,
  individual: number,
  pairs: readonly Pair[],
  names: RecordNames,
): InbreedingView {
  const kinships = snapshot.kinshipsOfPairs(pairs);
  return {
    ...snapshot.inbreedingFigureOf(individual),
    pairs: pairs.map(({ a, b, probability }, place) => ({
      a: names.ref(a),
      b: names.ref(b),
      probability,
      kinship: kinships[place] ?? 0,
    })),
  };
}

function labelView(evidence: LabelEvidence, flags: FlagView[], names: RecordNames): LabelView {
  return {
    name: evidence.label?.name ?? null,
    kind: evidence.label?.kind ?? null,
    standing: weakestStanding(evidence.standings),
    shares: [...evidence.standings],
    tracedShare: evidence.tracedShare,
    otherLabels: shownLabels(evidence.otherLabels, names).map(({ label, share }) => ({ label, share })),
    flags,
  };
}
