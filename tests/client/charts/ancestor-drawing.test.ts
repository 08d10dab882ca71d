import { cleanup, render } from '@testing-library/svelte';
import { tick } from 'svelte';
import { afterEach, expect, it } from 'vitest';
import AncestorDrawing from '../../../client/src/lib/charts/ancestors/ancestor-drawing.svelte';
import { AncestorChart } from '../../../client/src/lib/charts/ancestors/ancestor-view.svelte.ts';
import AncestorWords from '../../../client/src/lib/charts/ancestors/ancestor-words.svelte';
import { inventedPedigree } from './invented-pedigree.ts';

const view = inventedPedigree({ seed: 1, generations: 4, breeders: 5, founders: 8, uncertain: 0.3 });

afterEach(cleanup);

async function drawn() {
  const chart = new AncestorChart();
  chart.frameWidth = 856;
  await chart.read(() => Promise.resolve(view), 4);
  const layout = chart.layout;
  if (!layout) throw new Error('The chart has no layout.');
  const { container } = render(AncestorDrawing, { chart, layout, label: 'Ancestors of G4-0' });
  const links = [...container.querySelectorAll<SVGAElement>('a[data-animal]')];
  return { chart, layout, container, links };
}

it('makes every animal a link to its page, with one stop for the tab key', async () => {
  const { layout, links } = await drawn();
  expect(links.map((link) => link.getAttribute('href')).sort()).toEqual(
    layout.animals.map((placed) => `/animals/${placed.animal.id}`).sort(),
  );
  const stops = links.filter((link) => link.getAttribute('tabindex') === '0');
  expect(stops.map((link) => link.dataset['animal'])).toEqual([view.root]);
});

it('names an animal beginning with what is written beside it', async () => {
  const { links } = await drawn();
  for (const link of links) {
    const written = link.textContent.replace('?', '').replace(/\s+/g, ' ').trim();
    expect(link.getAttribute('aria-label')?.startsWith(written)).toBe(true);
  }
});

it('moves by arrow keys and lights the loop of a common ancestor that has the focus', async () => {
  const { chart, container, links } = await drawn();
  const svg = container.querySelector('svg');
  svg?.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowUp', bubbles: true, cancelable: true }));
  await tick();
  expect(chart.focused).not.toBe(view.root);
  const common = [...chart.common.values()].find(({ part }) => part > 0);
  links.find((link) => link.dataset['animal'] === common?.id)?.focus();
  await tick();
  expect(chart.litAnimal?.animal.id).toBe(common?.id);
  expect(container.querySelectorAll('.pencil')).toHaveLength(chart.lit.streams.size);
  expect(chart.sentence).toContain('stands behind both parents');
});

it('draws a symbol for every animal, and all that is lit once more in red', async () => {
  const { chart, layout, container } = await drawn();
  const symbolsIn = (path: string) => container.querySelector(path)?.getAttribute('d')?.match(/M/g)?.length ?? 0;
  expect(symbolsIn('g:not(.lit) > .symbol')).toBe(layout.animals.length);
  const lit = layout.animals.filter(({ animal }) => chart.lit.nodes.has(animal.id));
  expect(lit.length).toBeGreaterThan(1);
  expect(symbolsIn('g.lit > .symbol')).toBe(lit.length);
});

it('lights what the mouse points at, and lets it go again', async () => {
  const { chart, links } = await drawn();
  const [common] = [...chart.common.values()].filter(({ part }) => part > 0).slice(-1);
  const link = links.find((one) => one.dataset['animal'] === common?.id);
  const point = (type: string, to: Element | null | undefined): void => {
    const mouse = { pointerType: 'mouse', bubbles: true, relatedTarget: to ?? null };
    link?.firstElementChild?.dispatchEvent(new PointerEvent(type, mouse));
  };
  point('pointerover', null);
  expect(chart.pointed).toBe(common?.id);
  point('pointerout', link?.lastElementChild);
  expect(chart.pointed).toBe(common?.id);
  point('pointerout', links[0]?.ownerSVGElement);
  expect(chart.pointed).toBeNull();
});

it('has a table for screen readers that names every animal and hides no link', async () => {
  const { links } = await drawn();
  const { container } = render(AncestorWords, { pedigree: view, quiet: true });
  const table = container.querySelector('table');
  expect(table?.querySelectorAll('a')).toHaveLength(0);
  for (const link of links) expect(table?.textContent).toContain((link.dataset['animal'] ?? '').toUpperCase());
});
