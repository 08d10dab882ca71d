import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startApi, type TestApi } from '../../support/api.ts';
import { importSheet } from './sheet-requests.ts';

/*
 * Habsburg pedigree after Alvarez, Ceballos & Quinteiro 2009, PLoS ONE 4(4):e5174; exact values of tests/reference/habsburg.json.
 * People of three centuries ago stand in for frogs: no pedigree of frogs is published that is as deep and as looped.
 */

interface Case {
  readonly name: string;
  readonly pedigree: readonly { readonly id: string; readonly sire: string | null; readonly dam: string | null }[];
  readonly expected: { readonly inbreeding: Readonly<Record<string, { readonly decimal: number }>> };
}

let api: TestApi;
let cases: readonly Case[];
beforeAll(async () => {
  const file = await readFile(new URL('../../reference/habsburg.json', import.meta.url), 'utf8');
  cases = (JSON.parse(file) as { cases: Case[] }).cases;
  api = await startApi();
});
afterAll(() => api.close());

test('the whole pedigree goes in as a register sheet, last people first, and its inbreeding is read back to 1e-12', async () => {
  const whole = cases.find(({ name }) => name === 'habsburg-full');
  if (!whole) throw new Error('the reference case is missing');
  const rows = whole.pedigree.map(({ id, sire, dam }) => `"${id}";Homo sapiens;${sire ?? '?'};${dam ?? ''}`);
  const answer = await importSheet(api, `\uFEFFcode;species;sire;dam\r\n${rows.join('\r\n')}`);
  expect([answer.status, answer.body]).toEqual([201, expect.objectContaining({ rows: 445 })]);
  const expected = Object.entries(whole.expected.inbreeding);
  expect(expected.length).toBeGreaterThan(8);
  for (const [code, { decimal }] of expected) {
    const list = await api.http.get('/api/v1/individuals').query({ code });
    const id = (list.body as { items: { id: string }[] }).items[0]?.id ?? 'nobody';
    const lineage = await api.http.get(`/api/v1/individuals/${id}/lineage`);
    expect(lineage.status).toBe(200);
    const { inbreeding } = lineage.body as { inbreeding: { expected: number; least: number; greatest: number } };
    for (const value of [inbreeding.expected, inbreeding.least, inbreeding.greatest])
      expect(Math.abs(value - decimal), code).toBeLessThan(1e-12);
  }
});
