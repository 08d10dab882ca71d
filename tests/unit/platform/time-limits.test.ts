import type { CallHandler, ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { firstValueFrom, NEVER, of } from 'rxjs';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { answering, type RequestContext } from '../../../api/platform/acting.ts';
import { MayTake, TimeLimitInterceptor, usualSeconds } from '../../../api/platform/time-limits.ts';

const usual = (): string => 'usual';
const long = (): string => 'long';
MayTake(600)(Object.prototype, 'long', { value: long });

const routeOf = (handler: () => string): ExecutionContext =>
  ({ getHandler: () => handler }) as unknown as ExecutionContext;
const answeredBy = (work: CallHandler['handle']): CallHandler => ({ handle: work });

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('the work for a request', () => {
  const limits = new TimeLimitInterceptor(new Reflector());

  it.each([
    ['a usual', usual, usualSeconds],
    ['a long', long, 600],
  ] as const)('that never ends, of %s route, is given up in time', async (_, handler, seconds) => {
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
      routeOf(usual),
      answeredBy(() => of('done')),
    );
    expect(await firstValueFrom(answer)).toBe('done');
  });
});
