import { existsSync } from 'node:fs';
import { join } from 'node:path';
import express, { type Express, type NextFunction, type Request, type Response } from 'express';

/**
 * Serves the built client: its files, and its one page for every address that is neither a file nor the API's. A chunk that
 * is gone after an upgrade must answer 404, not the page, or the browser would run HTML as a program.
 */
export function serveClient(app: Express, folder: string): void {
  const page = join(folder, 'index.html');
  if (!existsSync(page)) return;
  app.use(
    express.static(folder, {
      index: false,
      setHeaders: (response, path) => {
        const isHashed = path.includes(join('_app', 'immutable'));
        response.setHeader('Cache-Control', isHashed ? 'public, max-age=31536000, immutable' : 'no-cache');
      },
    }),
  );
  app.use((request: Request, response: Response, next: NextFunction) => {
    const isPage = ['GET', 'HEAD'].includes(request.method) && !/^\/(api|_app|\.well-known)(\/|$)/.test(request.path);
    if (!isPage) {
      next();
      return;
    }
    response.setHeader('Cache-Control', 'no-cache');
    response.sendFile(page);
  });
}
