import { ProblemError } from '../api/problem.ts';
import type { Outcome } from './queue.ts';
import type { QueueEntry, Refusal } from './queue-entry.ts';

/** Answers that say nothing of the entry itself: nobody is signed in, too much at once, the way to the service is broken. */
const passing = new Set([0, 401, 408, 425, 429, 502, 503, 504]);

/** What a refusal means for the entry that was sent. */
export function outcomeOf(entry: QueueEntry, problem: ProblemError): Outcome {
  if (passing.has(problem.status) || problem.slug === 'still-at-work') return { kind: 'again' };
  const refusal = refusalFrom(problem);
  // after a fault of the service nobody knows how far it came; the same key may be sent again, another one may not
  if (problem.status >= 500) return { kind: 'stopped', as: 'unsure', refusal };
  if (problem.status !== 412) return { kind: 'stopped', as: 'refused', refusal };
  const { current } = refusal;
  if (current && saysAlready(current, entry.body)) return { kind: 'done', ...namesOf(current) };
  return { kind: 'stopped', as: 'changed', refusal };
}

/** The id and version that the answer to a write tells. */
export function namesOf(record: Readonly<Record<string, unknown>>): { id: string; version: number | null } {
  const { id, version } = record;
  return { id: typeof id === 'string' ? id : '', version: typeof version === 'number' ? version : null };
}

/** Whether a record has all fields as a change would make them: then there is nothing left to change. */
export function saysAlready(
  record: Readonly<Record<string, unknown>>,
  body: Readonly<Record<string, unknown>>,
): boolean {
  return Object.entries(body).every(([field, value]) => sameValue(record[field], value));
}

/** Whether two values of a field are the same; losses are, in whatever order they stand. */
export function sameValue(one: unknown, other: unknown): boolean {
  return canonical(one ?? null) === canonical(other ?? null);
}

function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).sort().join()}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const fields = Object.entries(value).map(([name, part]) => `${JSON.stringify(name)}:${canonical(part)}`);
  return `{${fields.sort().join()}}`;
}

function refusalFrom(problem: ProblemError): Refusal {
  const { current } = problem.document;
  return {
    status: problem.status,
    detail: problem.detail,
    errors: problem.errors.map(({ pointer, detail }) => ({ ...(pointer === undefined ? {} : { pointer }), detail })),
    current: typeof current === 'object' && current !== null ? { ...current } : null,
  };
}
