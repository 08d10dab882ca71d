import { Inject, Injectable } from '@nestjs/common';
import { RateLimiterPostgres, RateLimiterRes } from 'rate-limiter-flexible';
import { DataSource } from 'typeorm';
import { Metrics } from './metrics.ts';
import { Problem } from './problem.ts';
import { say } from './say.ts';

/** How much of something one keeper, address or name may do in a span of time. */
export interface Allowance {
  /** Tells allowances apart, in the table and in the metrics: lower-case letters. */
  readonly name: string;
  /** How many points there are; a usual request costs one. */
  readonly points: number;
  /** For how long they must last. */
  readonly seconds: number;
}

/** 429: somebody asked for more than the allowance; Retry-After says when it begins anew. */
export class TooManyProblem extends Problem {
  override readonly headers: Readonly<Record<string, string>>;

  constructor(seconds: number) {
    const wait =
      seconds > 90 ? `${Math.ceil(seconds / 60)} minutes` : seconds === 1 ? say`a second` : say`${seconds} seconds`;
    super(
      'too-many',
      429,
      say`Too much at once`,
      say`That was more than is allowed in so short a time. Try again in ${wait}.`,
    );
    this.headers = { 'Retry-After': String(seconds) };
  }
}

/**
 * Counts what is done against allowances, in the table rate_limit, so that several copies of the service count together. The
 * table is not written to the database's log: after a crash counting begins anew, and a point costs no wait for a disk.
 */
@Injectable()
export class RateLimits {
  readonly #limiters = new Map<string, RateLimiterPostgres>();

  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Metrics) private readonly metrics: Metrics,
  ) {}

  /**
   * Takes points from what `whose` (a keeper's id, an address, a name) may do.
   *
   * @throws TooManyProblem when they are used up
   */
  async spend(allowance: Allowance, whose: string, points = 1): Promise<void> {
    try {
      await this.#limiter(allowance).consume(whose, points);
    } catch (refused) {
      if (!(refused instanceof RateLimiterRes)) throw refused;
      this.metrics.refusals.inc({ allowance: allowance.name });
      throw new TooManyProblem(Math.max(1, Math.ceil(refused.msBeforeNext / 1000)));
    }
  }

  /** Gives `whose` the whole allowance back, as after a sign-in that succeeded. */
  async restore(allowance: Allowance, whose: string): Promise<void> {
    await this.#limiter(allowance).delete(whose);
  }

  #limiter(allowance: Allowance): RateLimiterPostgres {
    const known = this.#limiters.get(allowance.name);
    if (known) return known;
    const made = new RateLimiterPostgres({
      storeClient: this.dataSource,
      storeType: 'typeorm',
      tableName: 'rate_limit',
      tableCreated: true,
      keyPrefix: allowance.name,
      points: allowance.points,
      duration: allowance.seconds,
    });
    this.#limiters.set(allowance.name, made);
    return made;
  }
}
