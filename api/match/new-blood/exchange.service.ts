import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { Snapshots } from '../../lineage/snapshots.service.ts';
import { GivenUpProblem } from '../../platform/given-up.ts';
import { LongWork } from '../../platform/long-work.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { findLine } from '../../register/lines/line.queries.ts';
import { present } from '../../register/present.ts';
import { findBreeders, type Breeder } from '../breeders.ts';
import { exchangeTask } from '../tasks/exchange.task.ts';
import type { ExchangeQuestion, ExchangeSide } from './exchange-figures.ts';
import { resolveExchange, type ResolvedExchange, type ResolvedSide } from './exchange-sides.ts';
import { exchangeView } from './exchange-views.ts';
import type { ExchangeRequest } from './exchange.dto.ts';
import type { ExchangeView } from './exchange.view.ts';
import { say } from '../../platform/say.ts';

/** Answers what an exchange between two does for both. */
@Injectable()
export class ExchangeService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(LongWork) private readonly work: LongWork,
  ) {}

  /**
   * What an exchange does for both sides, and the exchanges of one animal for one that would help both. Nothing is written.
   *
   * @param signal ends the computation when nobody waits for it any more
   * @throws InvalidProblem for an unknown line and for all that `resolveExchange` refuses; BusyProblem if too many computations wait
   */
  async of(request: ExchangeRequest, signal: AbortSignal): Promise<ExchangeView> {
    const { manager } = this.dataSource;
    const { id, speciesId } = present(await findLine(manager, request.lineId), unknownLine);
    const snapshot = await this.snapshots.current();
    const line = snapshot.graph.lines.findIndex((node) => node.id === id);
    const exchange = await resolveExchange(manager, snapshot, { line, speciesId }, request);
    const { breeders, excluded } = await findBreeders(
      manager,
      snapshot,
      [...exchange.one.animals, ...exchange.other.animals],
      { unsexed: request.allow.includes('unsexed'), disputed: request.allow.includes('disputed') },
    );
    const question = questionOf(snapshot, exchange, breeders, request);
    const figures = await this.work.run(exchangeTask, question, { signal }).catch((error: unknown) => {
      throw signal.aborted ? new GivenUpProblem() : error;
    });
    return exchangeView(manager, { snapshot, line, exchange, figures, excluded, proposals: request.proposals });
  }
}

function unknownLine(): InvalidProblem {
  return new InvalidProblem(say`This line is not known.`, [
    { pointer: '/lineId', detail: say`There is no line with this id.` },
  ]);
}

function questionOf(
  { graph, inbreeding, matrixBytes }: LineageSnapshot,
  { one, other, give, take }: ResolvedExchange,
  breeders: readonly Breeder[],
  { proposals, sameSex }: ExchangeRequest,
): ExchangeQuestion {
  const mayGo = new Set(breeders.map(({ animal }) => animal));
  const side = ({ animals }: ResolvedSide): ExchangeSide => ({
    animals: Int32Array.from(animals),
    mayGo: Int32Array.from(animals.filter((animal) => mayGo.has(animal))),
  });
  return {
    pedigree: graph.pedigree,
    inbreeding,
    matrixBytes,
    one: side(one),
    other: side(other),
    give: Int32Array.from(give),
    take: Int32Array.from(take),
    proposals,
    sexes: sameSex ? graph.sexCodes : null,
  };
}
