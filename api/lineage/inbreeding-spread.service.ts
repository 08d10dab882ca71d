import { Inject, Injectable } from '@nestjs/common';
import type { Request, Response } from 'express';
import { DataSource } from 'typeorm';
import type { Acting } from '../platform/acting.ts';
import type { Progress } from '../platform/long-task.ts';
import { LongWork } from '../platform/long-work.ts';
import { InvalidProblem } from '../platform/problem.ts';
import { ProgressStream } from '../platform/progress-stream.ts';
import { candidateAncestry } from './candidate-ancestry.ts';
import type { InbreedingSpreadQuery } from './inbreeding-spread.dto.ts';
import type { InbreedingSpreadView } from './inbreeding-spread.view.ts';
import { distributionOf } from './kernel/value-distribution.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { resolveAnimal } from './named-animals.ts';
import { Snapshots } from './snapshots.service.ts';
import { spreadTask } from './tasks/assignment-spread.task.ts';
import { say } from '../platform/say.ts';

/** So many assignments are gone through one by one instead of being drawn. */
const EXACT_UP_TO = 4096;
/** Nanoseconds that one answer may cost, as counted beforehand: most of the time that a request may take. */
const STEPS_MOST = 5e10;
const SAMPLES_LEAST = 100;

/** How a request wants to be answered. */
interface Asked {
  readonly keeper: Acting;
  readonly request: Request;
  readonly response: Response;
}

/** Answers which inbreeding coefficients an animal with uncertain ancestors can have. */
@Injectable()
export class InbreedingSpreadService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(LongWork) private readonly work: LongWork,
    @Inject(ProgressStream) private readonly stream: ProgressStream,
  ) {}

  /**
   * Answers with the spread of one animal's inbreeding coefficient, withdrawn ones too: as JSON, or as a stream that tells its progress.
   *
   * @throws NotFoundProblem if there is no such animal; BusyProblem if too many computations wait; InvalidProblem if so many samples are
   *   too much for its ancestry
   */
  async answer({ keeper, request, response }: Asked, id: string, query: InbreedingSpreadQuery): Promise<void> {
    const snapshot = await this.snapshots.current();
    const individual = await resolveAnimal(this.dataSource.manager, snapshot, id);
    await this.stream.answer(request, response, keeper.id, (signal, tell) =>
      this.#compute(snapshot, individual, query, { signal, ...(tell ? { tell } : {}) }),
    );
  }

  async #compute(
    snapshot: LineageSnapshot,
    individual: number,
    { samples, seed }: InbreedingSpreadQuery,
    run: { signal: AbortSignal; tell?: (progress: Progress) => void },
  ): Promise<InbreedingSpreadView> {
    const { pedigree } = snapshot.graph;
    const flow = snapshot.flowTo(individual);
    const uncertainClutches = flow.uncertainClutches().length;
    if (uncertainClutches === 0) return certainView(snapshot, individual);
    const outcome = await this.work.run(
      spreadTask,
      {
        pedigree,
        inbreeding: snapshot.inbreeding,
        ancestry: candidateAncestry(pedigree, flow.clutches, {
          ofClutch: (clutch) => snapshot.clutchIdOf(clutch),
          ofIndividual: (parent) => snapshot.idOf(parent),
        }),
        samples,
        seed,
        exactUpTo: EXACT_UP_TO,
        stepsMost: STEPS_MOST,
        matrixBytes: snapshot.matrixBytes,
      },
      run,
    );
    if ('samplesMost' in outcome) throw tooMuch(outcome.samplesMost);
    const { spread, ways } = outcome;
    if (spread === null) return certainView(snapshot, individual);
    const { isExact, ...found } = spread;
    return {
      ...frame(snapshot, individual),
      ...found,
      method: isExact ? 'enumerated' : 'sampled',
      uncertainClutches,
      assignments: Number.isFinite(ways) ? ways : null,
      seed: isExact ? null : seed,
      quantiles: [...found.quantiles],
      values: found.values && [...found.values],
      bins: found.bins && [...found.bins],
    };
  }
}

function frame(
  snapshot: LineageSnapshot,
  individual: number,
): Pick<InbreedingSpreadView, 'inbreeding' | 'current' | 'asOf'> {
  return {
    inbreeding: snapshot.inbreedingFigureOf(individual),
    current: snapshot.isCurrent(individual),
    asOf: snapshot.asOf,
  };
}

function certainView(snapshot: LineageSnapshot, individual: number): InbreedingSpreadView {
  const { quantiles, values, bins, ...found } = distributionOf(
    new Map([[snapshot.inbreedingOf(individual).expected, 1]]),
    null,
  );
  return {
    ...frame(snapshot, individual),
    ...found,
    method: 'certain',
    uncertainClutches: 0,
    assignments: 1,
    samples: 1,
    seed: null,
    quantiles: [...quantiles],
    values: values && [...values],
    bins: bins && [...bins],
  };
}

function tooMuch(samplesMost: number): InvalidProblem {
  const detail =
    samplesMost < SAMPLES_LEAST
      ? say`So many ancestors of this animal have uncertain parents that no distribution can be drawn. Ask for an animal further up, or record what is known of them.`
      : say`So many assignments are too much for an ancestry of this size. Ask for ${samplesMost} samples at most.`;
  return new InvalidProblem(detail, [{ pointer: '/samples', detail }]);
}
