import { Inject, Injectable } from '@nestjs/common';
import type { Request, Response } from 'express';
import { DataSource } from 'typeorm';
import type { Acting } from '../platform/acting.ts';
import { EventStreams } from '../platform/event-streams.ts';
import type { FiguresProgressView } from './figures-progress.view.ts';
import { readProgress } from './figures-rows.queries.ts';

/** Tells how far the stored figures have come, once or as it changes. */
@Injectable()
export class FiguresProgressService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(EventStreams) private readonly streams: EventStreams,
  ) {}

  /** Answers with the progress as it is, or opens a stream of it where one is asked for. */
  async answer(keeper: Acting, request: Request, response: Response): Promise<void> {
    const look = (): Promise<FiguresProgressView> => readProgress(this.dataSource.manager);
    if (this.streams.isWanted(request)) this.streams.send(response, keeper.id, 'progress', look);
    else response.json(await look());
  }
}
