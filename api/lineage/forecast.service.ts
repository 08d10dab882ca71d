import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { InvalidProblem, type ProblemError } from '../platform/problem.ts';
import { auditLabel } from '../provenance/flags.ts';
import { foldedLabel } from '../provenance/standing.ts';
import type { ForecastRequest, ProposedParent } from './forecast.dto.ts';
import type { ForecastLabelView, ForecastView } from './forecast.view.ts';
import type { Pair } from './kernel/genome-flow.ts';
import { forecastYoung } from './kernel/forecast.ts';
import { factsFor, readLabelFacts } from './label-facts.queries.ts';
import { labelEvidenceOfYoung, shownLabels, toFindings, type LabelEvidence } from './label-evidence.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type { PairView } from './lineage.view.ts';
import { resolveAnimals, type NamedAnimal } from './named-animals.ts';
import { RecordNames, WantedNames } from './record-names.ts';
import { sexOf } from './register-graph.ts';
import { Snapshots } from './snapshots.service.ts';
import { toldFlags } from './told-flags.ts';
import { say } from '../platform/say.ts';

interface Side {
  readonly sires: readonly Weighted[];
  readonly dams: readonly Weighted[];
}

interface Weighted {
  readonly individual: number;
  /** The weights of a side sum to 1. */
  readonly probability: number;
}

/** Answers what young of a pairing not yet made would be. */
@Injectable()
export class ForecastService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
  ) {}

  /**
   * Inbreeding, label and flags of young that these candidates would have. Weights are normalised on each side.
   *
   * @throws InvalidProblem for an animal that does not exist, is named twice, or stands on the side of the other sex
   */
  async of(request: ForecastRequest): Promise<ForecastView> {
    const snapshot = await this.snapshots.current();
    const { sires, dams } = await resolveSides(this.dataSource.manager, snapshot, request);
    const pairs = sires
      .flatMap((sire) =>
        dams.map((dam): Pair => ({
          a: sire.individual,
          b: dam.individual,
          probability: sire.probability * dam.probability,
        })),
      )
      .sort((one, other) => other.probability - one.probability);
    const evidence = labelEvidenceOfYoung(snapshot, pairs);
    const parent = snapshot.idOf(pairs[0]?.a ?? -1);
    const [names, facts] = await Promise.all([
      RecordNames.read(this.dataSource.manager, snapshot.graph, wantedBy(evidence, pairs)),
      readLabelFacts(this.dataSource.manager, snapshot, [evidence], [parent]),
    ]);
    const inbreeding = forecastYoung(
      snapshot.graph.pedigree,
      snapshot.inbreeding,
      pairs.map(({ a, b, probability }) => ({ sire: a, dam: b, probability })),
    );
    return {
      inbreeding: { ...inbreeding, pairs: pairViews(snapshot, pairs, names) },
      label: labelView(snapshot, evidence, pairs, names),
      flags: toldFlags(auditLabel(toFindings(snapshot, evidence, factsFor(facts, parent), names)), names),
      asOf: snapshot.asOf,
    };
  }
}

async function resolveSides(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  request: ForecastRequest,
): Promise<Side> {
  const named = (side: 'sires' | 'dams'): NamedAnimal[] =>
    request[side].map(({ individual }, place) => ({ text: individual, pointer: `/${side}/${place}` }));
  const numbers = await resolveAnimals(manager, snapshot, [...named('sires'), ...named('dams')]);
  const sires = numbers.slice(0, request.sires.length);
  const dams = numbers.slice(request.sires.length);
  const errors = [...misfits(snapshot, sires, 'sires', 'female'), ...misfits(snapshot, dams, 'dams', 'male')];
  if (errors.length > 0)
    throw new InvalidProblem(say`Some animals stand on the side of the other sex; each is named below.`, errors);
  return { sires: weighted(sires, request.sires), dams: weighted(dams, request.dams) };
}

function misfits(
  { graph }: LineageSnapshot,
  numbers: readonly number[],
  side: 'sires' | 'dams',
  wrong: 'male' | 'female',
): ProblemError[] {
  return numbers.flatMap((number, place) =>
    sexOf(graph, number) === wrong
      ? [
          {
            pointer: `/${side}/${place}`,
            detail: say`This animal is recorded as ${wrong}. Name it among the ${side === 'sires' ? 'dams' : 'sires'}, or correct its sex.`,
          },
        ]
      : [],
  );
}

function weighted(numbers: readonly number[], parents: readonly ProposedParent[]): Weighted[] {
  const total = parents.reduce((sum, { weight }) => sum + weight, 0);
  return numbers.map((individual, place) => ({ individual, probability: (parents[place]?.weight ?? 1) / total }));
}

function wantedBy(evidence: LabelEvidence, pairs: readonly Pair[]): WantedNames {
  const wanted = new WantedNames();
  wanted.addEvidence(evidence);
  for (const { a, b } of pairs) wanted.individuals.add(a).add(b);
  return wanted;
}

function pairViews(snapshot: LineageSnapshot, pairs: readonly Pair[], names: RecordNames): PairView[] {
  const kinshipOf = snapshot.kinshipsOfPairs(pairs);
  return pairs.map(({ a, b, probability }, place) => ({
    a: names.ref(a),
    b: names.ref(b),
    probability,
    kinship: kinshipOf[place] ?? 0,
  }));
}

function labelView(
  { graph }: LineageSnapshot,
  evidence: LabelEvidence,
  pairs: readonly Pair[],
  records: RecordNames,
): ForecastLabelView {
  const lines = new Set(pairs.flatMap(({ a, b }) => [graph.lineOf[a] ?? -1, graph.lineOf[b] ?? -1]));
  const names = [...lines].flatMap((line) => graph.lines[line]?.name ?? []).sort();
  const own = new Set(names.map(foldedLabel));
  return {
    shares: [...evidence.standings],
    tracedShare: evidence.tracedShare,
    otherLabels: shownLabels(
      evidence.founderLabels.filter(({ label }) => !own.has(foldedLabel(label))),
      records,
    ).map(({ label, share }) => ({ label, share })),
    names: [...new Set(names)],
  };
}
