import { Inject, Injectable } from '@nestjs/common';
import type { NextFunction, Request, Response } from 'express';
import type { Pool } from 'pg';
import { Counter, Gauge, Histogram, Registry, collectDefaultMetrics } from 'prom-client';
import { DataSource } from 'typeorm';
import type { PostgresDriver } from 'typeorm/driver/postgres/PostgresDriver.js';
import { routeOf } from './route.ts';

/** Figures about the running service, as Prometheus reads them. One per application, so that tests do not share them. */
@Injectable()
export class Metrics {
  readonly registry = new Registry();
  /** Requests refused because an allowance was used up. */
  readonly refusals = new Counter({
    name: 'rate_limit_refusals_total',
    help: 'Requests refused because an allowance was used up.',
    labelNames: ['allowance'],
    registers: [this.registry],
  });
  private readonly durations = new Histogram({
    name: 'http_request_duration_seconds',
    help: 'Time from a request to the end of its answer.',
    labelNames: ['method', 'route', 'status'],
    buckets: [0.005, 0.02, 0.1, 0.5, 2, 10, 60],
    registers: [this.registry],
  });

  constructor(@Inject(DataSource) dataSource: DataSource) {
    collectDefaultMetrics({ register: this.registry });
    const pool = (): Pool => (dataSource.driver as PostgresDriver).master as Pool;
    this.watch('database_connections', 'Connections to the database.', () => pool().totalCount);
    this.watch('database_waiting', 'Requests that wait for a connection to the database.', () => pool().waitingCount);
  }

  /** Measures every request. It is known by the pattern of its route, since addresses hold ids and secrets. */
  readonly measure = (request: Request, response: Response, next: NextFunction): void => {
    const end = this.durations.startTimer();
    response.once('close', () =>
      end({ method: knownMethod(request.method), route: routeOf(request), status: String(response.statusCode) }),
    );
    next();
  };

  /** Shows a figure that is read when somebody asks for it. */
  watch(name: string, help: string, read: () => number): void {
    new Gauge({
      name,
      help,
      registers: [this.registry],
      collect() {
        this.set(read());
      },
    });
  }
}

/** Whoever sends requests chooses the method; only the usual ones become labels. */
function knownMethod(method: string): string {
  return ['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS'].includes(method) ? method : 'other';
}
