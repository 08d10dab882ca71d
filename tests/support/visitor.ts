import supertest from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import type { TestApi } from './api.ts';

/** A browser that keeps the cookies of the service, as a page of the service itself would send them. */
export function visit(api: Pick<TestApi, 'url'>): TestAgent {
  const browser = supertest.agent(api.url);
  browser.set('Origin', api.url);
  return browser;
}

/** A browser in which somebody is signed in. */
export async function signedIn(
  api: Pick<TestApi, 'url'>,
  { name, password }: { readonly name: string; readonly password: string },
): Promise<TestAgent> {
  const browser = visit(api);
  await browser.post('/api/v1/session').send({ name, password }).expect(201);
  return browser;
}

/** The cookie that an answer sets: the whole header field. */
export function cookieOf(answer: { readonly headers: Record<string, unknown> }): string {
  const fields = answer.headers['set-cookie'];
  return Array.isArray(fields) ? String(fields[0]) : '';
}
