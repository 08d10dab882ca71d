import { randomUUID } from 'node:crypto';
import { isIP } from 'node:net';
import { RequestMethod, VersioningType, type INestApplication } from '@nestjs/common';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { NextFunction, Request, Response } from 'express';
import type { Logger } from 'pino';
import { answering, type RequestContext } from './acting.ts';
import { BodyGuard } from './body.guard.ts';
import { EtagInterceptor } from './etag.interceptor.ts';
import { IdempotencyInterceptor } from './idempotency.interceptor.ts';
import { JournalEntryInterceptor } from './journal-entry.interceptor.ts';
import { logRequests } from './log.ts';
import { Metrics } from './metrics.ts';
import { serveDocument } from './openapi.ts';
import { securityHeaders } from './security-headers.ts';
import { Problem } from './problem.ts';
import { ProblemFilter } from './problem.filter.ts';
import { ReadersWordsInterceptor } from './readers-words.interceptor.ts';
import { answeringIn } from './say.ts';
import type { Settings } from './settings.ts';
import { limitConnections, TimeLimitInterceptor } from './time-limits.ts';
import { validationPipe } from './validation.ts';
import { say } from './say.ts';

/** Sets an application up the way the service and its tests both run it. */
export function configureHttp(app: NestExpressApplication, settings: Settings, log: Logger): void {
  limitConnections(app.getHttpServer());
  app.set('trust proxy', settings.trustProxy);
  app.set('query parser', 'simple');
  app.disable('x-powered-by');
  // entity tags are the versions of records; Express would add its own, weak ones, to everything else
  app.set('etag', false);
  app.use(openRequest(settings.trustProxy > 0));
  app.use(logRequests(log));
  app.use(app.get(Metrics).measure);
  for (const headers of securityHeaders(settings)) app.use(headers);
  app.use(refuseOtherSites(settings.publicUrl));
  app.use('/api', keepNoCopies);
  app.useBodyParser('json', { limit: '1mb' });
  app.setGlobalPrefix('api', { exclude: [{ path: '.well-known/jwks.json', method: RequestMethod.GET }] });
  app.enableVersioning({ type: VersioningType.URI, defaultVersion: '1' });
  app.useGlobalGuards(new BodyGuard());
  app.useGlobalPipes(validationPipe());
  app.useGlobalFilters(new ProblemFilter());
  app.useGlobalInterceptors(
    app.get(TimeLimitInterceptor),
    new ReadersWordsInterceptor(),
    new EtagInterceptor(),
    new JournalEntryInterceptor(),
    app.get(IdempotencyInterceptor),
  );
  serveDocument(app as INestApplication);
}

/**
 * Opens what is known of a request, for all that answers it. The id that a proxy of ours gave it is taken over, so that its log
 * and ours can be laid side by side; a stranger's never is.
 */
function openRequest(isBehindProxy: boolean): (request: Request, response: Response, next: NextFunction) => void {
  return (request, response, next) => {
    const given = isBehindProxy ? request.headers['x-request-id'] : undefined;
    const requestId = typeof given === 'string' && /^[\w.-]{8,64}$/.test(given) ? given : randomUUID();
    const context: RequestContext = { requestId };
    response.locals['context'] = context;
    response.setHeader('X-Request-Id', requestId);
    response.vary('Accept-Language');
    answeringIn(
      (languages) => request.acceptsLanguages(languages),
      () => answering(context, next),
    );
  };
}

/** A page of another site must not change the register through a reader's browser, nor sign anybody in. */
function refuseOtherSites(publicUrl: string | null) {
  return (request: Request, _response: Response, next: NextFunction): void => {
    const isChange = !['GET', 'HEAD', 'OPTIONS'].includes(request.method);
    if (isChange && isFromOtherSite(request, publicUrl))
      next(new Problem('forbidden', 403, say`Not from there`, say`Pages of other sites may not change the register.`));
    else if (isChange && isFromNowhere(request))
      next(
        new Problem(
          'forbidden',
          403,
          say`Not from there`,
          say`A change with a cookie must say which page it comes from (Origin). Programs send a token instead: make one under Club, My account.`,
        ),
      );
    else next();
  };
}

/**
 * Browsers send Sec-Fetch-Site to https and to this machine only; at a plain address of the house's network the Origin of a form
 * tells instead. Neighbours under the same domain are other sites as well. Programs send neither.
 */
function isFromOtherSite({ headers }: Request, publicUrl: string | null): boolean {
  const site = headers['sec-fetch-site'];
  if (site !== undefined) return site !== 'same-origin' && site !== 'none';
  if (headers.origin === undefined) return false;
  const host = hostOf(headers.origin);
  // a proxy may call the service by another name than the browser called the proxy
  return host === null || (host !== headers.host?.toLowerCase() && headers.origin.toLowerCase() !== publicUrl);
}

/** A cookie goes with whatever a browser sends, so that it alone does not say that the keeper meant it. */
function isFromNowhere({ headers }: Request): boolean {
  const saysFrom = headers['sec-fetch-site'] !== undefined || headers.origin !== undefined;
  return headers.cookie !== undefined && headers.authorization === undefined && !saysFrom;
}

function hostOf(origin: string): string | null {
  // what a browser hides behind the word "null" is another site as well
  return URL.canParse(origin) ? new URL(origin).host : null;
}

/**
 * A service on the loopback address answers only to names of this machine and to its public name: a page of another site whose name
 * was made to point here (DNS rebinding) could otherwise speak to it as if it were its own, and look around in a demo club.
 */
export function answerOnlyToThisMachine(publicUrl: string | null) {
  const publicName = publicUrl === null ? null : new URL(publicUrl).hostname;
  return (request: Request, _response: Response, next: NextFunction): void => {
    // a program that speaks HTTP/1.0 may send no name; no browser does
    const name = (request.headers.host ?? 'localhost').toLowerCase().replace(/:\d*$/, '').replace(/\.$/, '');
    if (name === 'localhost' || name === publicName || isIP(name.replace(/^\[|\]$/g, '')) !== 0) next();
    else
      next(
        new Problem(
          'misdirected',
          421,
          say`Not under that name`,
          say`This service answers to localhost and to addresses only. To offer it under a name, set PUBLIC_URL to the address that members open.`,
        ),
      );
  };
}

/** A record may change without its own version changing (a clutch gets young), so no copy of an answer is kept anywhere. */
function keepNoCopies(_request: Request, response: Response, next: NextFunction): void {
  response.setHeader('Cache-Control', 'no-store');
  next();
}
