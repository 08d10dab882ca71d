import type { CallHandler, ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { firstValueFrom, NEVER, of } from 'rxjs';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { answering, type RequestContext } from '../../../api/platform/acting.ts';
import { MayTake, TimeLimitInterceptor, usualSeconds } from '../../../api/platform/time-limits.ts';

class Routes {
  usual(this: void): void {
    // only its marks matter
  }

  @MayTake(600)
  long(this: void): void {
    // only its marks matter
  }
}

const routeOf = (handler: 'usual' | 'long'): ExecutionContext =>
  ({ getHandler: () => Routes.prototype[handler] }) as unknown as ExecutionContext;
const answeredBy = (work: CallHandler['handle']): CallHandler => ({ handle: work });

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('the work for a request', () => {
  const limits = new TimeLimitInterceptor(new Reflector());

  it.each([
    ['usual', usualSeconds],
    ['long', 600],
  ] as const)('that never ends, of a %s route, is given up after %i seconds', async (handler, seconds) => {
    const asked: RequestContext = { requestId: 'slow' };
    const answer = answering(asked, () =>
      firstValueFrom(
        limits.intercept(
          routeOf(handler),
          answeredBy(() => NEVER),
        ),
      ),
    );
    const refused = expect(answer).rejects.toMatchObject({ status: 503, slug: 'too-slow' });
    await vi.advanceTimersByTimeAsync(seconds * 1000 - 1);
    expect(asked.isGivenUp).toBeUndefined();
    await vi.advanceTimersByTimeAsync(1);
    await refused;
    expect(asked.isGivenUp).toBe(true);
  });

  it('that ends in time is answered', async () => {
    const answer = limits.intercept(
      routeOf('usual'),
      answeredBy(() => of('done')),
    );
    expect(await firstValueFrom(answer)).toBe('done');
  });
});
