import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';

let api: TestApi;
let behindTls: TestApi;

beforeAll(async () => {
  api = await startApi();
  behindTls = await startApiOn(api.databaseUrl, { publicUrl: 'https://register.example.org' });
});

afterAll(async () => {
  await behindTls.close();
  await api.close();
});

const policyOf = (answer: { headers: Record<string, unknown> }): string =>
  String(answer.headers['content-security-policy']);

describe('a browser is told', () => {
  it.each(['/api/v1/species', '/api/v1/newts', '/api/openapi.json', '/api/health/live'])(
    'that nothing in %s runs, is fetched, framed or kept',
    async (path) => {
      const answer = await api.http.get(path);
      expect(policyOf(answer)).toBe(
        "default-src 'none';base-uri 'none';form-action 'none';frame-ancestors 'none';object-src 'none'",
      );
      expect(answer.headers).toMatchObject({
        'cache-control': 'no-store',
        'x-content-type-options': 'nosniff',
        'x-frame-options': 'DENY',
        'referrer-policy': 'no-referrer',
        'cross-origin-opener-policy': 'same-origin',
        'cross-origin-resource-policy': 'same-origin',
      });
      expect(answer.headers['permissions-policy']).toMatch(/^camera=\(self\), geolocation=\(\), microphone=\(\)/);
      expect(answer.headers).not.toHaveProperty('x-powered-by');
    },
  );

  it('to run the scripts of the description of the API, and none that stand in the page', async () => {
    const page = await api.stranger.get('/api/docs').expect(200);
    expect(policyOf(page)).toContain("script-src 'self';");
    expect(page.text).not.toMatch(/<script(?![^>]* src=)[^>]*>[^<]/);
    for (const script of page.text.matchAll(/<script[^>]* src="([^"]+)"/g))
      await api.stranger.get(new URL(script[1] ?? '', `${api.url}/api/docs`).pathname).expect(200);
  });

  it('of a page only what a page needs, and of its pieces no more than that they are what they say', async () => {
    const page = (await api.stranger.get('/register')).headers;
    const piece = (await api.stranger.get('/_app/immutable/chunks/a.js')).headers;
    const worker = (await api.stranger.get('/_app/immutable/workers/a.js')).headers;
    for (const headers of [page, piece, worker])
      expect(headers).toMatchObject({
        'x-content-type-options': 'nosniff',
        'cross-origin-resource-policy': 'same-origin',
      });
    for (const headers of [page, worker]) expect(headers).toHaveProperty('content-security-policy');
    for (const name of ['permissions-policy', 'x-frame-options', 'cross-origin-opener-policy']) {
      expect(page).toHaveProperty(name);
      expect(piece).not.toHaveProperty(name);
    }
  });

  it('to keep to https, where the register is offered under it, and only there', async () => {
    expect((await behindTls.http.get('/api/v1/club')).headers['strict-transport-security']).toBe('max-age=31536000');
    expect((await api.http.get('/api/v1/club')).headers).not.toHaveProperty('strict-transport-security');
  });

  it('nothing that would let a page of another site read an answer', async () => {
    const asked = await api.http.get('/api/v1/club').set('Origin', 'https://elsewhere.example').expect(200);
    const preflight = await api.stranger
      .options('/api/v1/species')
      .set({ Origin: 'https://elsewhere.example', 'Access-Control-Request-Method': 'POST' });
    for (const { headers } of [asked, preflight])
      expect(Object.keys(headers as object).filter((name) => name.startsWith('access-control-'))).toEqual([]);
  });
});

describe('the figures of an exposed service', () => {
  it('are for administrators', async () => {
    await behindTls.stranger.get('/api/metrics').expect(401);
    await (await behindTls.addKeeper('Hanna')).http.get('/api/metrics').expect(403);
    await behindTls.http.get('/api/metrics').expect(200);
    await api.stranger.get('/api/metrics').expect(200);
  });

  it('are for the bearer of METRICS_TOKEN, where that is set', async () => {
    const metricsToken = 'figures-for-the-collector';
    const watched = await startApiOn(api.databaseUrl, { metricsToken });
    await watched.stranger.get('/api/metrics').expect(401);
    await watched.stranger.get('/api/metrics').set('Authorization', `Bearer ${metricsToken}x`).expect(401);
    const figures = await watched.stranger
      .get('/api/metrics')
      .set('Authorization', `Bearer ${metricsToken}`)
      .expect(200);
    for (const name of ['http_request_duration_seconds', 'database_waiting', 'nodejs_eventloop_lag_seconds'])
      expect(figures.text).toContain(name);
    await watched.stranger.get('/api/v1/club').set('Authorization', `Bearer ${metricsToken}`).expect(401);
    await watched.close();
  });
});
