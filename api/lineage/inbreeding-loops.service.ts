import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { LongWork } from '../platform/long-work.ts';
import { hasFewAncestors } from './ancestry-size.ts';
import type { InbreedingLoopsQuery } from './inbreeding-loops.dto.ts';
import type { InbreedingLoopsView, LoopAncestorView } from './inbreeding-loops.view.ts';
import { inbreedingLoops, type InbreedingLoops, type LoopLimits } from './kernel/inbreeding-loops.ts';
import { keyOfMeeting, type Meeting } from './kernel/pair-steps.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { LoopWriter, wantLoops } from './loop-views.ts';
import { countView, meetingView, wantMeeting } from './meeting-views.ts';
import { resolveAnimal } from './named-animals.ts';
import { notCommonAncestor, resolveMeeting } from './named-meeting.ts';
import { RecordNames, WantedNames } from './record-names.ts';
import { Snapshots } from './snapshots.service.ts';
import { inbreedingLoopsTask } from './tasks/inbreeding-loops.task.ts';

const NONE: InbreedingLoops = { loops: [], ancestors: [] };

type Written = Omit<InbreedingLoopsView, 'inbreeding' | 'isTakenApart' | 'current' | 'asOf'>;
type FoundAncestor = InbreedingLoops['ancestors'][number];

/** Lists the loops that F of an animal arises through. */
@Injectable()
export class InbreedingLoopsService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(LongWork) private readonly work: LongWork,
  ) {}

  /**
   * The largest loops of an animal step by step, and by common ancestor what is left.
   *
   * @throws NotFoundProblem if there is no such animal; InvalidProblem if `commonAncestor` names none of its common ancestors (or one that may
   *   not be seen); BusyProblem for an animal with very many ancestors while too many computations wait
   */
  async of(id: string, { most, ancestors, commonAncestor }: InbreedingLoopsQuery): Promise<InbreedingLoopsView> {
    const { manager } = this.dataSource;
    const snapshot = await this.snapshots.current();
    const individual = await resolveAnimal(manager, snapshot, id);
    const through = commonAncestor === undefined ? null : await resolveMeeting(manager, snapshot, commonAncestor);
    const found = await this.#find(snapshot, individual, { most, ...(through ? { through } : {}) });
    if (commonAncestor !== undefined && through && !closesIn(through, found)) throw notCommonAncestor(commonAncestor);
    return {
      inbreeding: snapshot.inbreedingOf(individual).expected,
      isTakenApart: found !== null,
      ...(await this.#written(snapshot, individual, found ?? NONE, ancestors)),
      current: snapshot.isCurrent(individual),
      asOf: snapshot.asOf,
    };
  }

  /** What was found by the names of the records. */
  async #written(
    snapshot: LineageSnapshot,
    individual: number,
    found: InbreedingLoops,
    most: number,
  ): Promise<Written> {
    const { named, others } = split(found.ancestors, most);
    const own = snapshot.graph.pedigree.clutchOf[individual] ?? -1;
    const wanted = new WantedNames();
    for (const { meeting } of named) wantMeeting(wanted, meeting);
    wantLoops(wanted, found.loops, own);
    const names = await RecordNames.read(this.dataSource.manager, snapshot.graph, wanted);
    const writer = new LoopWriter(snapshot, names, own);
    const placeOf = new Map(named.map(({ meeting }, place) => [keyOfMeeting(meeting), place]));
    return {
      loops: found.loops.map((loop) => writer.loop(loop, placeOf.get(keyOfMeeting(loop.meeting)) ?? 0)),
      ancestors: named.map((ancestor) => ancestorView(snapshot, ancestor, names)),
      others: others.length,
      othersPart: others.reduce((sum, { part }) => sum + part, 0),
      ...writer.records,
    };
  }

  async #find(snapshot: LineageSnapshot, individual: number, limits: LoopLimits): Promise<InbreedingLoops | null> {
    const { pedigree } = snapshot.graph;
    const { inbreeding } = snapshot;
    const pairs = snapshot.pairsOf(individual);
    const part = snapshot.inbreedingOf(individual).expected;
    if (part === 0) return NONE;
    if (pairs.length === 0) return ofFounder(pedigree.sourceOf[individual] ?? -1, part);
    if (hasFewAncestors(snapshot, individual)) return inbreedingLoops(pedigree, inbreeding, pairs, limits);
    return this.work.run(inbreedingLoopsTask, { pedigree, inbreeding, pairs, limits });
  }
}

/** A founder is as inbred as its source says: a loop without a step. */
function ofFounder(source: number, part: number): InbreedingLoops {
  const meeting: Meeting = { kind: 'sources', a: source, b: source };
  return {
    loops: [{ meeting, part, odds: 1, steps: 0, kinship: part, paths: [[], []] }],
    ancestors: [{ meeting, part, loops: 1, shortest: 0, longest: 0, listed: 1, listedPart: part }],
  };
}

/** Whether one of the loops closes there; unknown, and so not denied, where F could not be taken apart. */
function closesIn(meeting: Meeting, found: InbreedingLoops | null): boolean {
  const key = keyOfMeeting(meeting);
  return found === null || found.ancestors.some((ancestor) => keyOfMeeting(ancestor.meeting) === key);
}

/** So many ancestors are named, and every one that has a listed loop. */
function split(all: readonly FoundAncestor[], most: number): { named: FoundAncestor[]; others: FoundAncestor[] } {
  const isNamed = ({ listed }: FoundAncestor, place: number): boolean => place < most || listed > 0;
  return {
    named: all.filter(isNamed),
    others: all.filter((ancestor, place) => !isNamed(ancestor, place)),
  };
}

function ancestorView(snapshot: LineageSnapshot, ancestor: FoundAncestor, names: RecordNames): LoopAncestorView {
  const { meeting, part, loops, shortest, longest, listed, listedPart } = ancestor;
  const leftOut = loops - listed;
  return {
    ...meetingView(snapshot, meeting, names),
    part,
    loops: countView(loops),
    shortest,
    longest,
    listed,
    leftOut: countView(leftOut),
    // of none nothing is left, whatever rounding says
    leftOutPart: leftOut === 0 ? 0 : Math.max(0, part - listedPart),
  };
}
