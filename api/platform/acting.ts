import { AsyncLocalStorage } from 'node:async_hooks';
import { createParamDecorator } from '@nestjs/common';
import type { Role } from '../../shared/vocabulary.ts';
import { Problem } from './problem.ts';
import { say } from './say.ts';

/** The keeper in whose name a request acts. */
export interface Acting {
  readonly id: string;
  readonly name: string;
  readonly roles: readonly Role[];
  /** How the keeper was recognised: by a session of the browser or by a program's token. */
  readonly via: 'session' | 'token';
  /** A token may be for reading only. */
  readonly scope: 'read' | 'write';
}

/** Who asks: a keeper, or null for a stranger. */
export type Viewer = Acting | null;

/** What is known of the request that is being answered. */
export interface RequestContext {
  readonly requestId: string;
  /** Undefined until it was decided who asks. */
  viewer?: Viewer;
  /** Its time was over before its work was: nothing of it may be written any more. */
  isGivenUp?: boolean;
  /** Whether it changed something that figures of the lineage follow from. */
  changedLineage?: boolean;
  /** The main entry that the request wrote into the journal: the first. */
  journalEntryId?: string;
}

const context = new AsyncLocalStorage<RequestContext>();

/** Runs `work`, and all that it calls, as the answer to one request. */
export function answering<T>(request: RequestContext, work: () => T): T {
  return context.run(request, work);
}

/** The request that is being answered, or undefined for the service's own work. */
export function currentRequest(): RequestContext | undefined {
  return context.getStore();
}

/**
 * Who asks. Throws where nobody decided that yet: what a stranger may see is then never taken for what everybody may see.
 */
export function viewer(): Viewer {
  const request = context.getStore();
  if (request?.viewer === undefined) throw new Error('nobody is known to ask: this runs outside of a request');
  return request.viewer;
}

/** The keeper who acts. 401 for a stranger. */
export function acting(): Acting {
  const keeper = viewer();
  if (keeper === null) throw new SignInProblem();
  return keeper;
}

/** 401: only a member may do this. */
export class SignInProblem extends Problem {
  constructor(detail = say`Sign in first: this is for members of the club.`) {
    super('sign-in', 401, say`Who are you?`, detail);
  }
}

/** Hands the acting keeper to a handler; 401 for a stranger. */
export const ActingKeeper = createParamDecorator((): Acting => acting());
