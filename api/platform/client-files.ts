import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { extname, join, sep } from 'node:path';
import express, { type Express, type NextFunction, type Request, type Response } from 'express';

/** Ways in which the build wrote each text file besides, the smaller one first: the end of its name, and what HTTP calls it. */
const packings = [
  { end: '.br', encoding: 'br' },
  { end: '.gz', encoding: 'gzip' },
] as const;

/**
 * Serves the built client: its files, compressed where the browser takes that, and its one page for every address that is neither a
 * file nor the API's. A chunk that is gone after an upgrade must answer 404, not the page, or the browser would run HTML as a program.
 */
export function serveClient(app: Express, folder: string): void {
  const page = 'index.html';
  if (!existsSync(join(folder, page))) return;
  const files = new Set(
    readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((path) => `/${path.split(sep).join('/')}`),
  );
  const linksOf = readLinks(folder);
  const serve = express.static(folder, { index: false, setHeaders: setCaching });
  app.use((request: Request, response: Response, next: NextFunction) => {
    if (!isRead(request)) {
      next();
      return;
    }
    if (files.has(request.path)) request.url = packed(request, response, request.path, files);
    serve(request, response, next);
  });
  app.use((request: Request, response: Response, next: NextFunction) => {
    const isPage = isRead(request) && !/^\/(api|_app|\.well-known)(\/|$)/.test(request.path);
    if (!isPage) {
      next();
      return;
    }
    response.setHeader('Cache-Control', 'no-cache');
    response.setHeader('Link', linksOf(request.path));
    response.sendFile(packed(request, response, `/${page}`, files), { root: folder });
  });
}

/**
 * The header that names what the page of an address begins with, so that a browser fetches it at once: without, it learns of it from the
 * first scripts.
 */
function readLinks(folder: string): (path: string) => string[] {
  const list = JSON.parse(readFileSync(join(folder, 'first-files.json'), 'utf8')) as {
    readonly pattern: string;
    readonly files: readonly string[];
  }[];
  const pages = list.map(({ pattern, files }) => ({ pattern: new RegExp(pattern), links: files.map(linkTo) }));
  return (path) => pages.find(({ pattern }) => pattern.test(path))?.links ?? [];
}

const linkTo = (file: string): string =>
  extname(file) === '.css' ? `<${file}>; rel=preload; as=style` : `<${file}>; rel=modulepreload`;

const isRead = (request: Request): boolean => ['GET', 'HEAD'].includes(request.method);

/** What is served of a version has the version in its name; the rest is looked at again each time. */
function setCaching(response: Response, path: string): void {
  const isHashed = path.includes(join('_app', 'immutable'));
  response.setHeader('Cache-Control', isHashed ? 'public, max-age=31536000, immutable' : 'no-cache');
}

/** The file that answers for `path`: one packed as the browser takes it, if there is one, with the headers that say so. */
function packed(request: Request, response: Response, path: string, files: ReadonlySet<string>): string {
  const there = packings.filter(({ end }) => files.has(path + end));
  if (there.length === 0) return path;
  response.vary('Accept-Encoding');
  // browsers name gzip first of those that they take alike: the smaller one is ours to choose
  const packing = there.find(({ encoding }) => request.acceptsEncodings(encoding));
  if (!packing) return path;
  response.setHeader('Content-Encoding', packing.encoding);
  response.type(extname(path));
  return path + packing.end;
}
