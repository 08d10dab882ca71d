import type { CanActivate, ExecutionContext } from '@nestjs/common';
import type { Request } from 'express';
import { InvalidProblem, Problem } from './problem.ts';
import { say } from './say.ts';

/** How deep lists and objects of a body may stand in each other; the deepest that any address takes is four. */
const deepestBody = 16;

/**
 * Looks at the body as a whole before anything else does: one that nobody read (of another type than the address takes) is
 * told so, instead of being taken for no body at all; one that is nested without end would exhaust whatever walks through it.
 */
export class BodyGuard implements CanActivate {
  canActivate(context: ExecutionContext): boolean {
    const request = context.switchToHttp().getRequest<Request>();
    const body: unknown = request.body;
    if (body === undefined && hasBody(request))
      throw new Problem(
        'unsupported-media-type',
        415,
        say`Not a type that is read here`,
        say`Send the body as application/json.`,
      );
    if (isDeeperThan(body, deepestBody)) {
      const detail = say`The body has lists or objects more than ${deepestBody} deep in each other. No field here needs that.`;
      throw new InvalidProblem(detail, [{ pointer: '', detail }]);
    }
    return true;
  }
}

function hasBody(request: Request): boolean {
  const { 'content-length': length, 'transfer-encoding': coding } = request.headers;
  const isChange = ['POST', 'PUT', 'PATCH'].includes(request.method);
  return isChange && (coding !== undefined || Number(length ?? 0) > 0);
}

/** Level by level, not by recursion, which is what a deep body would break. */
function isDeeperThan(value: unknown, most: number): boolean {
  let level = [value].filter(isNest);
  for (let depth = 0; level.length > 0; depth++) {
    if (depth >= most) return true;
    level = level.flatMap((nest) => Object.values(nest).filter(isNest));
  }
  return false;
}

const isNest = (value: unknown): value is object => typeof value === 'object' && value !== null;
