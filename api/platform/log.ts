import { inspect } from 'node:util';
import type { LoggerService } from '@nestjs/common';
import type { NextFunction, Request, Response } from 'express';
import { pino, stdTimeFunctions, type DestinationStream, type Logger } from 'pino';
import { pinoHttp } from 'pino-http';
import type { RequestContext } from './acting.ts';
import type { LogLevel } from './settings.ts';
import { networkOf } from './network.ts';
import { routeOf } from './route.ts';

/** The service's log: one JSON object a line, on `to` or the standard output. */
export function openLog(level: LogLevel, to?: DestinationStream): Logger {
  const options = { level, base: undefined, timestamp: stdTimeFunctions.isoTime };
  return to ? pino(options, to) : pino(options);
}

/**
 * Writes one line for each request: its id, method, the pattern of its route, status, milliseconds, who asked. Never an address
 * (it may hold search words or the secret of a link), a header or a body.
 */
export function logRequests(log: Logger): (request: Request, response: Response, next: NextFunction) => void {
  return pinoHttp<Request, Response>({
    logger: log,
    quietReqLogger: true,
    quietResLogger: true,
    genReqId: (_, response) => contextOf(response)?.requestId ?? '',
    customAttributeKeys: { reqId: 'request' },
    autoLogging: { ignore: (request) => request.url.startsWith('/api/health/') || request.url === '/api/metrics' },
    customLogLevel: (_, response, error) => {
      if (error !== undefined || response.statusCode >= 500) return 'error';
      return response.statusCode === 429 ? 'warn' : 'info';
    },
    customSuccessMessage: () => 'answered',
    customErrorMessage: () => 'failed',
    customSuccessObject: (request, response, { responseTime }: { responseTime: number }) =>
      lineOf(request, response, responseTime),
    customErrorObject: (request, response, _, { responseTime }: { responseTime: number }) =>
      lineOf(request, response, responseTime),
  });
}

function lineOf(request: Request, response: Response, milliseconds: number): Record<string, unknown> {
  const who = contextOf(response)?.viewer ?? null;
  return {
    method: request.method.slice(0, 10),
    route: routeOf(request),
    status: response.statusCode,
    milliseconds,
    // a keeper is known by the id; of a stranger only the address can be told
    ...(who === null ? { address: networkOf(request.ip) } : { keeper: who.id, via: who.via }),
    ...(response.writableFinished ? {} : { isCutOff: true }),
  };
}

/** What was noted of a request when it was opened; events of a response may come outside of its context. */
function contextOf(response: Response): RequestContext | undefined {
  return (response.locals as { context?: RequestContext }).context;
}

/** Lets the framework write to the service's log. */
export class FrameworkLog implements LoggerService {
  constructor(private readonly to: Logger) {}

  log(message: unknown): void {
    this.to.debug(asText(message)); // the framework tells of every route it maps
  }

  warn(message: unknown): void {
    this.to.warn(asText(message));
  }

  error(message: unknown, ...details: unknown[]): void {
    this.to.error({ details: details.map(asText) }, asText(message));
  }

  fatal(message: unknown, ...details: unknown[]): void {
    this.to.fatal({ details: details.map(asText) }, asText(message));
  }
}

function asText(part: unknown): string {
  if (part instanceof Error) return part.stack ?? part.message;
  return typeof part === 'string' ? part : inspect(part);
}
