import { SetMetadata } from '@nestjs/common';
import type { Request } from 'express';
import type { Allowance } from './rate-limits.ts';

/** Changes by one keeper. An evening's entry by hand, or what a phone kept while it was offline, never comes near. */
export const writing: Allowance = { name: 'writing', points: 3000, seconds: 300 };

/** Sheets sent by one keeper, checked or taken. */
export const sending: Allowance = { name: 'sending', points: 60, seconds: 600 };

/** Files of evidence and photographs sent by one keeper, taken or refused. */
export const attaching: Allowance = { name: 'attaching', points: 300, seconds: 600 };

/** Questions that cost arithmetic, by one keeper; what each costs grows with what it asks about. */
export const asking: Allowance = { name: 'asking', points: 3000, seconds: 60 };

/** Anything by somebody who is not signed in, by address. */
export const knocking: Allowance = { name: 'knocking', points: 1200, seconds: 60 };

/** What a request takes from which allowance. The body was not checked yet when `points` looks at it. */
export interface Cost {
  readonly allowance: Allowance;
  readonly points: (request: Request) => number;
}

const costKey = 'linekeeper:cost';

/** Says of a route what it costs, where that is not one point of writing for a change and nothing for reading. */
export const Costs = (allowance: Allowance, points: Cost['points'] = () => 1): MethodDecorator =>
  SetMetadata(costKey, { allowance, points } satisfies Cost);

/** Where a handler says what it costs. */
Costs.key = costKey;

/** How many entries the list `name` of a body has; no more than any address takes. */
export function entries(request: Request, name: string): number {
  const body: unknown = request.body;
  if (typeof body !== 'object' || body === null) return 0;
  const list = (body as Record<string, unknown>)[name];
  return Array.isArray(list) ? Math.min(list.length, 500) : 0;
}
