import { Catch, HttpException, Logger, type ArgumentsHost, type ExceptionFilter } from '@nestjs/common';
import type { Request, Response } from 'express';
import { currentRequest } from './acting.ts';
import { databaseProblem } from './database-problem.ts';
import { Problem } from './problem.ts';
import { routeOf } from './route.ts';
import { inReadersWords, sentenceInReadersWords } from './say.ts';
import { say } from './say.ts';

/** Turns whatever was thrown into a problem document (RFC 9457). Nothing of a stack or of SQL ever leaves. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  private readonly log = new Logger('Problem');

  catch(thrown: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    const request = http.getRequest<Request>();
    const response = http.getResponse<Response>();
    if (response.headersSent) {
      response.end();
      return;
    }
    const problem = asProblem(thrown);
    if (problem.status >= 500)
      this.log.error(
        `${request.method} ${routeOf(request)} (${currentRequest()?.requestId}) failed`,
        thrown instanceof Error ? thrown.stack : String(thrown),
      );
    const document = problemDocument(problem, request.originalUrl);
    const title = sentenceInReadersWords(problem.title);
    response
      .status(problem.status)
      .set(problem.headers)
      .type('application/problem+json')
      .send(JSON.stringify({ ...inReadersWords(document), title }));
  }
}

/** The document that tells a problem (RFC 9457). @param instance the address that was asked */
export function problemDocument(problem: Problem, instance: string): Record<string, unknown> {
  return {
    type: `/api/problems/${problem.slug}`,
    title: problem.title,
    status: problem.status,
    detail: problem.message,
    instance,
    ...(problem.errors ? { errors: problem.errors } : {}),
    ...problem.extra,
  };
}

/** The problem behind anything thrown: our own, the framework's, the body parser's or the database's. */
export function asProblem(thrown: unknown): Problem {
  if (thrown instanceof Problem) return thrown;
  const fromDatabase = databaseProblem(thrown);
  if (fromDatabase) return fromDatabase;
  const status = statusOf(thrown);
  const known = status === null ? undefined : frameworkProblems[status];
  if (status !== null && known) return new Problem(known.slug, status, known.title, known.detail);
  if (status !== null && status >= 400 && status < 500)
    return new Problem('malformed', status, say`Not understood`, say`The request could not be understood.`);
  return new Problem(
    'internal',
    500,
    say`Something broke here`,
    say`The service failed to answer. It was noted; nothing was half written.`,
  );
}

function statusOf(thrown: unknown): number | null {
  if (thrown instanceof HttpException) return thrown.getStatus();
  // body parser, multer and router errors carry the status they ask for
  if (thrown instanceof URIError) return 400;
  if (thrown instanceof Error && 'code' in thrown && String(thrown.code).startsWith('LIMIT_')) return 413;
  if (thrown instanceof Error && 'status' in thrown && typeof thrown.status === 'number') return thrown.status;
  return null;
}

const frameworkProblems: Record<number, { slug: string; title: string; detail: string }> = {
  400: {
    slug: 'malformed',
    title: say`Not understood`,
    detail: say`The request could not be read: the body is no valid JSON, or the address is no valid address.`,
  },
  404: { slug: 'not-found', title: say`Not found`, detail: say`There is nothing at this address.` },
  413: { slug: 'too-large', title: say`Too large`, detail: say`The request is larger than this address takes.` },
  415: {
    slug: 'unsupported-media-type',
    title: say`Not a type that is read here`,
    detail: say`Send the body in a type that this address reads.`,
  },
  503: {
    slug: 'unavailable',
    title: say`Not now`,
    detail: say`The service is starting, stopping or without its database. Try again shortly.`,
  },
};
