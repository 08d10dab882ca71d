import { cleanup, render, screen, waitFor, within } from '@testing-library/svelte';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { ClutchParents, Pairing, ParentCorrection, Ref } from '$lib/api/types.ts';
import CorrectionsNote from '$lib/housing/corrections-note.svelte';
import ParentsWords from '$lib/housing/parents-words.svelte';
import { undoOffer } from '$lib/ui/undo.svelte.ts';

type Candidate = Extract<ClutchParents, { mode: 'lists' }>['sires'][number];

const animal = (code: string, sex: Ref['sex']) => ({
  id: `id-${code}`,
  number: '10704-4',
  code,
  sex,
  status: 'alive' as const,
  isPrivate: false,
});
const candidate = (code: string, sex: Ref['sex'], probability = 1, reason: string | null = null): Candidate => ({
  individual: animal(code, sex),
  probability,
  reason,
});
const lists = (sires: Candidate[], dams: Candidate[]): ClutchParents => ({ mode: 'lists', sires, dams });
const pair = (a: string, b: string, probability: number) => ({
  a: animal(a, 'unsexed'),
  b: animal(b, 'unsexed'),
  probability,
  reason: null,
});

const dam = candidate('IH-61', 'female');
const recorded = lists([candidate('LK-01', 'male')], [dam]);
const housed = lists([candidate('LK-01', 'male', 0.5), candidate('LK-05', 'male', 0.5)], [dam]);
const correction = (day: string): ParentCorrection => ({
  clutch: { id: `c-${day}`, title: `clutch of ${day}`, version: 4, laid: day, parentsFromPairing: true },
  recorded,
  housed,
  why: 'LK-05 lived here when it was laid, but is not among the candidates.',
});
const pairing: Pairing = {
  id: 'p',
  version: 2,
  createdAt: '',
  updatedAt: '',
  withdrawn: null,
  name: 'Tank 14',
  keeper: 'Keeper',
  keeperId: 'k',
  notes: null,
  notation: '2.1.0',
  members: [],
  clutches: [],
};

/** What the network carries: corrections to read, and what was written. */
let offered: ParentCorrection[] = [];
let written: { path: string; match: string | null; body: unknown }[] = [];
let isRefused = false;

const answer = (status: number, body: unknown): Response =>
  new Response(JSON.stringify(body), {
    status,
    headers: { 'Content-Type': 'application/json', 'Journal-Entry': `entry-${written.length}` },
  });

beforeEach(() => {
  [offered, written, isRefused] = [[correction('2022-05-01'), correction('2022-03-01')], [], false];
  vi.stubGlobal(
    'fetch',
    (path: string, request: { method: string; headers: Headers; body: string }): Promise<Response> => {
      if (request.method === 'GET') return Promise.resolve(answer(200, { items: offered }));
      if (isRefused)
        return Promise.resolve(
          answer(412, { type: '/api/problems/stale', title: 'Changed', detail: 'Changed meanwhile.' }),
        );
      const body: unknown = JSON.parse(request.body);
      written.push({ path, match: request.headers.get('If-Match'), body });
      offered = offered.filter(({ clutch }) => !path.endsWith(clutch.id));
      return Promise.resolve(answer(200, { id: path.split('/').at(-1), version: 5 }));
    },
  );
});

afterEach(() => {
  cleanup();
  undoOffer.putAway();
  vi.unstubAllGlobals();
});

const said = (element: Element): string => element.textContent.replace(/\s+/g, ' ').trim();
/** The lines of a part: its headings, paragraphs and list items. */
const linesOf = (element: Element | null): string[] => [...(element?.querySelectorAll('h4, p, li') ?? [])].map(said);
const rowOf = async (title: string): Promise<HTMLElement> => {
  const row = (await screen.findByRole('link', { name: title })).closest('li');
  if (!row) throw new Error(`no row of the ${title}`);
  return row;
};

describe('clutches that may have other parents', () => {
  it('stand with what is recorded and what the housing proposes, and why', async () => {
    render(CorrectionsNote, { pairing });
    await screen.findByRole('heading', { name: 'Two clutches may have other parents now' });
    const row = await rowOf('clutch of 2022-05-01');
    expect(said(row)).toContain('LK-05 lived here when it was laid, but is not among the candidates.');
    const [left, right] = within(row)
      .getAllByRole('heading', { level: 4 })
      .map((head) => linesOf(head.parentElement));
    expect(left).toEqual(['recorded', 'sire LK-01', 'dam IH-61']);
    expect(right).toEqual(['proposed', 'sire LK-01 or LK-05', 'dam IH-61']);
    expect(within(row).getAllByRole('img', { name: 'male' })).toHaveLength(3);
    expect(written).toEqual([]);
  });

  it('take the parents that are shown at the version that was shown, and give the former ones back', async () => {
    render(CorrectionsNote, { pairing });
    within(await rowOf('clutch of 2022-05-01'))
      .getByRole('button', { name: /Take these parents/ })
      .click();
    await screen.findByRole('heading', { name: 'One clutch may have other parents now' });
    expect(written).toEqual([
      {
        path: '/api/v1/clutches/c-2022-05-01',
        match: '"4"',
        body: {
          sires: [
            { individualId: 'id-LK-01', weight: 0.5, reason: null },
            { individualId: 'id-LK-05', weight: 0.5, reason: null },
          ],
          dams: [{ individualId: 'id-IH-61', weight: 1, reason: null }],
        },
      },
    ]);
    await waitFor(() => expect(undoOffer.text).toBe('The parents of the clutch of 2022-05-01 are corrected.'));
    await undoOffer.undo?.();
    expect(written[1]).toMatchObject({ path: '/api/v1/journal/entry-1/reversal', body: {} });
    expect(undoOffer.text).toBe('Taken back: The parents of the clutch of 2022-05-01 are corrected.');
  });

  it('are left as recorded for this visit, without a write; the focus goes to the next', async () => {
    render(CorrectionsNote, { pairing });
    const row = await rowOf('clutch of 2022-05-01');
    within(row)
      .getByRole('button', { name: /Leave as recorded/ })
      .click();
    await waitFor(() => expect(screen.queryByRole('link', { name: 'clutch of 2022-05-01' })).toBeNull());
    await waitFor(() => expect(document.activeElement?.textContent).toBe('clutch of 2022-03-01'));
    expect(written).toEqual([]);
    await undoOffer.undo?.();
    await rowOf('clutch of 2022-05-01');
  });

  it('say so where the clutch was changed meanwhile, and take nothing', async () => {
    isRefused = true;
    render(CorrectionsNote, { pairing });
    within(await rowOf('clutch of 2022-05-01'))
      .getByRole('button', { name: /Take these parents/ })
      .click();
    await screen.findByText('Changed meanwhile.');
    expect(undoOffer.text).toBe('');
  });

  it('are told a few at a time', async () => {
    offered = ['01', '02', '03', '04', '05', '06'].map((day) => correction(`2022-05-${day}`));
    render(CorrectionsNote, { pairing });
    (await screen.findByRole('button', { name: 'Show 2 more clutches' })).click();
    await rowOf('clutch of 2022-05-06');
  });
});

describe('parents in words', () => {
  const words = (parents: ClutchParents): string[] => linesOf(render(ParentsWords, { parents }).container);

  it('tell odds where they differ, and reasons', () => {
    const sires = [candidate('LK-01', 'male', 0.75, 'seen calling'), candidate('LK-05', 'male', 0.25)];
    expect(words(lists(sires, []))).toEqual(['sire LK-01 75 % (seen calling) or LK-05 25 %', 'dam not known']);
  });

  it('tell a group as a group, and couples of it one by one', () => {
    const third = 1 / 3;
    const all = [pair('A', 'B', third), pair('A', 'C', third), pair('B', 'C', third)];
    expect(words({ mode: 'pairs', pairs: all })).toEqual(['any two of A, B, C']);
    cleanup();
    expect(words({ mode: 'pairs', pairs: [pair('A', 'B', 0.5), pair('A', 'C', 0.5)] })).toEqual([
      'A × B 50 %',
      'A × C 50 %',
    ]);
  });
});
