import type { NextFunction, Request, Response } from 'express';
import { Histogram, Registry, collectDefaultMetrics } from 'prom-client';

/** Figures about the running service, as Prometheus reads them. One per application, so that tests do not share them. */
export class Metrics {
  readonly registry = new Registry();
  private readonly durations = new Histogram({
    name: 'http_request_duration_seconds',
    help: 'Time from a request to the end of its answer.',
    labelNames: ['method', 'status'],
    buckets: [0.005, 0.02, 0.1, 0.5, 2, 10],
    registers: [this.registry],
  });

  constructor() {
    collectDefaultMetrics({ register: this.registry });
  }

  /** Measures every request; no address is kept, since addresses hold ids. */
  readonly measure = (request: Request, response: Response, next: NextFunction): void => {
    const end = this.durations.startTimer();
    response.once('close', () => end({ method: request.method, status: String(response.statusCode) }));
    next();
  };
}
