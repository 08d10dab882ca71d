import type { NextFunction, Request, RequestHandler, Response } from 'express';
import helmet from 'helmet';
import type { Settings } from './settings.ts';

const nobody = ["'none'"];
const shut = { 'base-uri': nobody, 'form-action': nobody, 'frame-ancestors': nobody, 'object-src': nobody };

/** Answers of the API are data: whatever a browser takes them for, nothing in them runs or is fetched. */
const ofAnswers = helmet.contentSecurityPolicy({
  useDefaults: false,
  directives: { 'default-src': nobody, ...shut },
});

/** The pages that describe the API bring their scripts as files, and write styles into the page. */
const ofDescription = helmet.contentSecurityPolicy({
  useDefaults: false,
  directives: {
    'default-src': nobody,
    'script-src': ["'self'"],
    'style-src': ["'self'", "'unsafe-inline'"],
    'img-src': ["'self'", 'data:'],
    'connect-src': ["'self'"],
    ...shut,
  },
});

/** The client's page brings its own policy, with the hash of its script; this adds what a page cannot say of itself. */
const ofPages = helmet.contentSecurityPolicy({
  useDefaults: false,
  directives: {
    'default-src': helmet.contentSecurityPolicy.dangerouslyDisableDefaultSrc,
    ...shut,
    'form-action': ["'self'"],
  },
});

/** What browsers are told not to do with our answers. Links of the register hold ids, so nothing of them goes to other sites. */
export function securityHeaders({ publicUrl }: Pick<Settings, 'publicUrl'>): RequestHandler[] {
  const isHttps = publicUrl?.startsWith('https:') ?? false;
  const strictTransportSecurity = isHttps ? { maxAge: 31_536_000, includeSubDomains: false } : false;
  return [
    helmet({
      contentSecurityPolicy: false,
      strictTransportSecurity,
      referrerPolicy: { policy: 'no-referrer' },
      crossOriginOpenerPolicy: { policy: 'same-origin' },
      crossOriginResourcePolicy: { policy: 'same-origin' },
      xFrameOptions: { action: 'deny' },
    }),
    refuseFeatures,
    choosePolicy,
    sparePieces,
  ];
}

/** What says something of a page alone, and nothing of a piece that a page loads. */
const ofPagesAlone = [
  ...[
    'Content-Security-Policy',
    'Permissions-Policy',
    'Referrer-Policy',
    'Cross-Origin-Opener-Policy',
    'Origin-Agent-Cluster',
  ],
  ...[
    'X-Frame-Options',
    'X-DNS-Prefetch-Control',
    'X-Download-Options',
    'X-Permitted-Cross-Domain-Policies',
    'X-XSS-Protection',
  ],
];

/**
 * The pieces of the client, some fifty for a first page: a kilobyte of headers on each would weigh a third of all that a phone waits for.
 * Workers keep theirs, since they live by the policy of their own file.
 */
function sparePieces(request: Request, response: Response, next: NextFunction): void {
  if (/^\/_app\/immutable\/(?!workers\/)/.test(request.path))
    for (const name of ofPagesAlone) response.removeHeader(name);
  next();
}

function choosePolicy(request: Request, response: Response, next: NextFunction): void {
  const policy = /^\/api\/docs(\/|$)/i.test(request.path) ? ofDescription : isApi(request.path) ? ofAnswers : ofPages;
  policy(request, response, next);
}

const isApi = (path: string): boolean => /^\/api(\/|$)/i.test(path);

/** Our own pages read the codes of labels by the camera; no page of ours asks for any of the others. */
function refuseFeatures(_request: Request, response: Response, next: NextFunction): void {
  const refused = [
    'geolocation',
    'microphone',
    'payment',
    'usb',
    'serial',
    'hid',
    'bluetooth',
    'display-capture',
    'midi',
  ];
  response.setHeader('Permissions-Policy', ['camera=(self)', ...refused.map((name) => `${name}=()`)].join(', '));
  next();
}
