import { ModulesContainer } from '@nestjs/core';
import type { OpenAPIObject } from '@nestjs/swagger';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { forAnyoneKey } from '../../../api/platform/for-anyone.ts';
import { needKey } from '../../../api/people/permission.guard.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { askers, table, type Asker, type Row } from './route-table.ts';
import { foundWorld, setPublicReading, type World } from './route-world.ts';

let api: TestApi;
let world: World;

beforeAll(async () => {
  // as a club runs it, so that nothing is open only because nobody else could come
  api = await startApi({ publicUrl: 'https://register.example.org' });
  world = await foundWorld(api);
});

afterAll(() => api.close());

beforeEach(() => api.dataSource.query('delete from rate_limit'));

/** The routes that the service really has, from the router that answers. */
function routes(): string[] {
  const { router } = api.app.getHttpAdapter().getInstance();
  const layers = router.stack as { route?: { path: string | RegExp; methods: Record<string, boolean> } }[];
  return layers.flatMap(({ route }) =>
    route && typeof route.path === 'string' && !isForTheRest(route.path, route.methods)
      ? Object.keys(route.methods).map((method) => `${method.toUpperCase()} ${route.path.toString()}`)
      : [],
  );
}

/** Outside of /api the framework puts behind a route what answers every other method with 404. */
const isForTheRest = (path: string, methods: Record<string, boolean>): boolean =>
  path === '/.well-known/jwks.json' && 'trace' in methods;

const named = (route: string): string => route.replace(/:(\w+)/g, '{$1}').replace(/\/$/, '');

/** What serves the pages about the API themselves. */
const isAboutTheApi = (route: string): boolean => /^GET \/api\/(docs|openapi)/.test(route);

describe('the table of routes', () => {
  it('has every route of the service, and no other', () => {
    const real = routes()
      .map(named)
      .filter((route) => !isAboutTheApi(route));
    expect(real.length).toBeGreaterThan(50);
    expect(real.filter((route) => !(route in table))).toEqual([]);
    expect(Object.keys(table).filter((route) => !isAboutTheApi(route) && !real.includes(route))).toEqual([]);
  });

  it('has every route of the description', async () => {
    const { paths } = (await api.stranger.get('/api/openapi.json').expect(200)).body as OpenAPIObject;
    const described = Object.entries(paths).flatMap(([path, item]) =>
      Object.keys(item).map((method) => `${method.toUpperCase()} ${path}`),
    );
    expect(described.filter((route) => !(route in table))).toEqual([]);
    expect(Object.keys(table).filter((route) => !isAboutTheApi(route) && !described.includes(route))).toEqual([]);
  });
});

it('every handler says what it needs, or that it is open to anyone', () => {
  const silent: string[] = [];
  for (const module of api.app.get(ModulesContainer).values())
    for (const { metatype } of module.controllers.values()) {
      if (typeof metatype !== 'function') continue;
      const prototype = metatype.prototype as Record<string, unknown>;
      for (const name of Object.getOwnPropertyNames(prototype)) {
        const handler = prototype[name];
        if (name === 'constructor' || typeof handler !== 'function' || !Reflect.hasMetadata('path', handler)) continue;
        const says = [needKey, forAnyoneKey].filter(
          (key) => Reflect.hasMetadata(key, handler) || Reflect.hasMetadata(key, metatype),
        );
        if (says.length !== 1) silent.push(`${metatype.name}.${name}`);
      }
    }
  expect(silent).toEqual([]);
});

async function send(route: string, { ask }: Row, asker: Asker): Promise<{ status: number; text: string }> {
  const { at = [], query = '', body, sheet, bytes, form } = await ask(world, asker);
  const [method = '', pattern = ''] = route.split(' ');
  const parts = at[Symbol.iterator]();
  const path = pattern.replace(/\{\w+\}/g, () => encodeURIComponent(parts.next().value ?? 'missing')) + query;
  await setPublicReading(api, asker === 'stranger, public');
  const agent = world.askers[asker];
  const request = agent[method.toLowerCase() as 'get'](path).redirects(0);
  // a change says which version it was made from; * stands for whatever is there
  if (method !== 'GET') request.set('If-Match', '*');
  if (bytes) return request.type('application/octet-stream').send(bytes);
  if (form) return request.field(form.fields ?? {}).attach('file', form.file, 'any.name');
  return sheet === undefined ? request.send(body) : request.type('text/csv').send(sheet);
}

describe.each(Object.entries(table))('%s', (route, row) => {
  it.each(askers.map((asker, at) => ({ asker, outcome: row.outcomes[at] })))(
    '$asker: $outcome',
    async ({ asker, outcome }) => {
      const { status, text } = await send(route, row, asker);
      if (outcome === '✓') expect(status, text).toBeLessThan(400);
      else expect(status, text).toBe(outcome);
    },
  );
});
