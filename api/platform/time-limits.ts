import type { Server } from 'node:http';
import type { Socket } from 'node:net';
import {
  Inject,
  Injectable,
  SetMetadata,
  type CallHandler,
  type ExecutionContext,
  type NestInterceptor,
} from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { throwError, timeout, type Observable } from 'rxjs';
import { currentRequest } from './acting.ts';
import { Problem } from './problem.ts';
import { say } from './say.ts';

/** Seconds that the work for one request may take, where its route says nothing else. */
export const usualSeconds = 60;

const secondsKey = 'linekeeper:seconds';

/** Lets the work for a route take longer than usual. */
export const MayTake = (seconds: number): MethodDecorator => SetMetadata(secondsKey, seconds);

/** 503: the work for a request took longer than it may. */
class TooSlowProblem extends Problem {
  override readonly headers = { 'Retry-After': '30' };

  constructor(seconds: number) {
    super(
      'too-slow',
      503,
      say`It took too long`,
      say`This was not done within ${seconds} seconds and was given up; nothing of it was written. Ask for less, or try again later.`,
    );
  }
}

/**
 * Ends a request whose work takes longer than it may with a clear answer. What it was about to write is rolled back: its
 * transaction looks at `isGivenUp` before it commits.
 */
@Injectable()
export class TimeLimitInterceptor implements NestInterceptor {
  constructor(@Inject(Reflector) private readonly reflector: Reflector) {}

  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const seconds = this.reflector.get<number | undefined>(secondsKey, context.getHandler()) ?? usualSeconds;
    const asked = currentRequest();
    const giveUp = (): Observable<never> => {
      if (asked) asked.isGivenUp = true;
      return throwError(() => new TooSlowProblem(seconds));
    };
    return next.handle().pipe(timeout({ each: seconds * 1000, with: giveUp }));
  }
}

/** How long a client may take to send, and how many may be connected: a slow or crowded line must not hold the service up. */
export function limitConnections(server: Server): void {
  server.headersTimeout = 20_000;
  // a sheet of 100 MB over a slow line from home
  server.requestTimeout = 300_000;
  server.keepAliveTimeout = 65_000;
  server.maxConnections = 1000;
  server.maxHeadersCount = 100;
}

/**
 * Watches the connections of a server. Gives the function that, at a stop, ends those that carry no request at once and the others after
 * their answer: a browser keeps connections open, some without ever having asked anything, and the stop would wait for them.
 */
export function watchConnections(server: Server): () => void {
  const requestsOn = new Map<Socket, number>();
  let isStopping = false;
  const count = (socket: Socket, change: number): void => {
    const requests = (requestsOn.get(socket) ?? 0) + change;
    requestsOn.set(socket, requests);
    if (isStopping && requests === 0) socket.destroySoon();
  };
  server.on('connection', (socket) => {
    socket.once('close', () => requestsOn.delete(socket));
    count(socket, 0);
  });
  server.on('request', ({ socket }, response) => {
    count(socket, 1);
    response.once('close', () => count(socket, -1));
  });
  return () => {
    isStopping = true;
    for (const socket of requestsOn.keys()) count(socket, 0);
  };
}
