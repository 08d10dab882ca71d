import type { Request } from 'express';

/**
 * The pattern of the route that answers a request, such as `/api/v1/individuals/:id`; `page` for the client's files and pages,
 * `none` where no route was found. The address itself holds ids, search words and the secrets of links.
 */
export function routeOf(request: Request): string {
  const route: unknown = request.route;
  if (typeof route === 'object' && route !== null && 'path' in route && typeof route.path === 'string')
    return request.baseUrl === '' ? route.path : 'none';
  return /^\/api(\/|$)/.test(request.path) ? 'none' : 'page';
}
