// @vitest-environment node
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { ApiClient } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import { passphraseProblem, passphraseStrength } from '$lib/people/passphrase.ts';
import { Permissions } from '$lib/people/permissions.ts';
import { wantedOf } from '$lib/people/session.svelte.ts';

interface Heard {
  method: string;
  key: string | undefined;
  body: string;
}

let server: Server;
let base = '';
let heard: Heard[] = [];
let isSignedIn = false;

beforeAll(async () => {
  server = createServer((request: IncomingMessage, response: ServerResponse) => {
    let body = '';
    request.on('data', (chunk) => (body += String(chunk)));
    request.on('end', () => {
      heard.push({ method: request.method ?? '', key: request.headers['idempotency-key']?.toString(), body });
      response.setHeader('Content-Type', 'application/json');
      if (!isSignedIn) response.writeHead(401).end(JSON.stringify({ title: 'Sign in', detail: 'Only for members.' }));
      else response.writeHead(201, { 'Journal-Entry': 'e-1' }).end(JSON.stringify({ id: '7' }));
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  base = `http://127.0.0.1:${(server.address() as AddressInfo).port}/api/v1`;
});
afterAll(() => new Promise((resolve) => server.close(resolve)));
beforeEach(() => {
  heard = [];
  isSignedIn = false;
});

const refusalOf = async (asked: Promise<unknown>): Promise<ProblemError> => {
  const error = await asked.then(
    () => null,
    (problem: unknown) => problem,
  );
  if (!(error instanceof ProblemError)) throw new Error(`expected a problem, got ${String(error)}`);
  return error;
};

describe('a session that ends in the midst of a write', () => {
  it('asks to sign in again, then sends the same request under the same key', async () => {
    const api = new ApiClient(base);
    let asked = 0;
    api.signInAgain = () => {
      asked += 1;
      isSignedIn = true;
      return Promise.resolve(true);
    };
    const answer = await api.post('/individuals', { code: 'RV-1' });
    expect(asked).toBe(1);
    expect(heard).toHaveLength(2);
    expect(heard[1]).toEqual(heard[0]);
    expect(api.entryOf(answer)).toBe('e-1');
  });

  it('is refused where nobody signs in again', async () => {
    const api = new ApiClient(base);
    api.signInAgain = () => Promise.resolve(false);
    expect((await refusalOf(api.post('/individuals', {}))).status).toBe(401);
    expect(heard).toHaveLength(1);
  });

  it('does not take a wrong passphrase for a session that ended', async () => {
    const api = new ApiClient(base);
    let asked = 0;
    api.signInAgain = () => {
      asked += 1;
      return Promise.resolve(true);
    };
    for (const path of ['/session', '/session/demo', '/setup', '/links/secret/use'])
      expect((await refusalOf(api.ask(path, {}))).status).toBe(401);
    expect(asked).toBe(0);
  });
});

describe('the address that was wanted', () => {
  const wanted = (to: string): string => wantedOf(new URL(`http://club.example/sign-in?to=${encodeURIComponent(to)}`));

  it('is opened after signing in', () => {
    expect(wanted('/animals/7?x=1')).toBe('/animals/7?x=1');
    expect(wantedOf(new URL('http://club.example/sign-in'))).toBe('/');
  });

  it('is never another site, nor the sign-in page again', () => {
    for (const to of [
      '//evil.example',
      '/\\evil.example',
      'https://evil.example',
      'javascript:alert(1)',
      '/sign-in?to=/a',
    ])
      expect(wanted(to)).toBe('/');
  });
});

describe('what is offered', () => {
  const rules = [
    { action: ['read', 'ask'], subject: ['individual', 'journal'] },
    { action: ['change'], subject: ['individual'], conditions: { keeperId: 'mine' } },
  ];

  it('is what the rules of the service allow, for a record as for its kind', () => {
    const may = new Permissions(rules);
    expect(may.may('read', 'individual', { keeperId: 'other' })).toBe(true);
    expect(may.may('change', 'individual', { keeperId: 'mine' })).toBe(true);
    expect(may.may('change', 'individual', { keeperId: 'other' })).toBe(false);
    expect(may.may('change', 'individual', { keeperId: null })).toBe(false);
    expect(may.may('merge', 'individual')).toBe(false);
  });

  it('is nothing without rules', () => {
    expect(new Permissions([]).may('read', 'individual')).toBe(false);
  });
});

describe('a passphrase', () => {
  it.each([
    ['', undefined],
    ['frog', 'too short'],
    ['aaaaaaaaaaaa', 'easily guessed'],
    ['frogfrogfrog', 'easily guessed'],
    ['12345678', 'easily guessed'],
    ['moss lamp', 'short'],
    ['moss under lamps', 'good'],
    ['moss under the third lamp', 'strong'],
  ])('“%s” is %s', (typed, word) => {
    expect(passphraseStrength(typed)).toBe(word);
  });

  it('is refused below 8 characters, counted as people count them', () => {
    expect(passphraseProblem('🐸🐸🐸🐸🐸🐸🐸')).toContain('7 so far');
    expect(passphraseProblem('🐸🐸🐸🐸🐸🐸🐸🐸')).toBeUndefined();
  });
});
