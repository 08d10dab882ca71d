import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { Request } from 'express';
import { PreconditionRequiredProblem } from './problem.ts';

/** The versions of a record that a change accepts as its base: those listed in If-Match, or any that exists. */
export type VersionMatch = readonly number[] | 'any';

/** The strong entity tag of a record at a version (RFC 9110, 8.8.3). */
export function etagOf(version: number): string {
  return `"${version}"`;
}

/**
 * Reads an If-Match header: a list of tags or `*`. Weak tags and tags of other makers match nothing, as RFC 9110 wants of a
 * strong comparison.
 */
export function parseIfMatch(header: string): VersionMatch {
  if (header.trim() === '*') return 'any';
  return header.split(',').flatMap((tag) => {
    const digits = /^\s*"(\d{1,9})"\s*$/.exec(tag)?.[1];
    return digits === undefined ? [] : [Number(digits)];
  });
}

/** Whether a record at `version` is one that the change was made from. */
export function isMatch(match: VersionMatch, version: number): boolean {
  return match === 'any' || match.includes(version);
}

/** The If-Match of the request; without one the change is refused with 428. */
export const IfMatch = createParamDecorator((_: unknown, context: ExecutionContext): VersionMatch => {
  const header = context.switchToHttp().getRequest<Request>().headers['if-match'];
  if (header === undefined) throw new PreconditionRequiredProblem();
  return parseIfMatch(header);
});
