import { describe, expect, it } from 'vitest';
import { ancestorTable, probabilitiesInWords } from '../../../client/src/lib/charts/ancestors/ancestor-table.ts';
import { layoutAncestors } from '../../../client/src/lib/charts/ancestors/ancestor-layout.ts';
import { moveFrom } from '../../../client/src/lib/charts/ancestors/chart-moves.ts';
import { proposedId, proposedYoung } from '../../../client/src/lib/charts/ancestors/proposed-young.ts';
import { roundTo, standingParts } from '../../../client/src/lib/records/source-parts.ts';
import { inventedPedigree } from './invented-pedigree.ts';

const view = inventedPedigree({ seed: 2, generations: 5, breeders: 6, founders: 8, uncertain: 0.3, undated: 0.2 });

describe('the table beside the chart', () => {
  const table = ancestorTable(view);
  const rows = table.flatMap((generation) => generation.rows);

  it('names every animal of the chart once, the animal itself first', () => {
    const drawn = layoutAncestors(view).animals.map((placed) => placed.animal.id);
    expect(rows.map((row) => row.animal.id).sort()).toEqual([...drawn].sort());
    expect(table[0]?.rows.map((row) => row.animal.id)).toEqual([view.root]);
  });

  it('gives the parents of the animal half of its genome each', () => {
    const sum = (side: string) =>
      rows
        .filter((row) => row.role.includes(`${side} `) && row.role.includes(`of ${view.root.toUpperCase()}`))
        .filter((row) => table[1]?.rows.includes(row))
        .reduce((total, row) => total + row.share, 0);
    expect(sum('sire')).toBeGreaterThanOrEqual(0.5);
    expect(sum('dam')).toBeGreaterThanOrEqual(0.5);
  });

  it('says where a founder came from, and in words where nobody knows', () => {
    const unknown = view.nodes.find((node) => node.kind === 'individual' && node.unknownOrigin);
    expect(rows.find((row) => row.animal.id === unknown?.id)?.origin).toBe('origin unknown');
    expect(rows.some((row) => row.origin.startsWith('Import, about 2001, received as Quebrada Tornasol'))).toBe(true);
  });
});

it('says many probabilities of one candidate in the room that one has', () => {
  expect(probabilitiesInWords([0.75])).toBe('0.75');
  expect(probabilitiesInWords([0.75, 0.5])).toBe('0.75 · 0.5');
  expect(probabilitiesInWords([0.5, 0.5, 0.5])).toBe('3 × 0.5');
  expect(probabilitiesInWords([0.5, 1 / 3, 0.999])).toBe('0.33 to 0.99');
});

describe('arrow keys in the chart', () => {
  const layout = layoutAncestors(view, 856);

  it('lead up to a parent and back down to the young one came from', () => {
    const parent = moveFrom(layout, view.root, 'stepUp', null);
    expect(parent).not.toBeNull();
    expect(moveFrom(layout, parent ?? '', 'stepDown', view.root)).toBe(view.root);
  });

  it('reach every animal from the root', () => {
    const seen = new Set([view.root]);
    const queue = [view.root];
    for (let id = queue.pop(); id !== undefined; id = queue.pop())
      for (const key of ['stepUp', 'stepDown', 'stepLeft', 'stepRight'] as const) {
        const next = moveFrom(layout, id, key, null);
        if (next !== null && !seen.has(next)) {
          seen.add(next);
          queue.push(next);
        }
      }
    expect(seen.size).toBe(layout.animals.length);
  });
});

it('lays the pedigrees of two animals over each other, shared ancestors once', () => {
  const parents = view.edges.filter((edge) => edge.to === `c-${view.root}`).map((edge) => edge.from);
  const of = (root: string) => ({ ...view, root });
  const both = proposedYoung(of(parents[0] ?? ''), of(parents[1] ?? ''), '2026-11-25', []);
  expect(new Set(both.nodes.map((node) => node.id)).size).toBe(both.nodes.length);
  const layout = layoutAncestors(both);
  expect(layout.animals.find((placed) => placed.animal.id === proposedId)?.share).toBe(1);
  expect(layout.animals.find((placed) => placed.animal.id === parents[0])?.share).toBeGreaterThanOrEqual(0.5);
});

describe('printed shares', () => {
  it('of the sources add up to the printed share of their standing, and these to 100', () => {
    const third = (id: string) => ({
      source: { id, title: id, standing: 'stated' as const, label: 'Quebrada Tornasol', isPrivate: false },
      standing: 'stated' as const,
      share: 1 / 6,
    });
    const founder = {
      founder: { id: 'f', number: '1-9', code: null, sex: 'male' as const, isPrivate: false },
      standing: 'unknown' as const,
      share: 0.5,
    };
    const parts = standingParts([third('a'), third('b'), third('c'), founder]);
    expect(parts.map((part) => [part.standing, part.tenths])).toEqual([
      ['stated', 500],
      ['unknown', 500],
    ]);
    expect(parts[0]?.sources.map((source) => source.tenths)).toEqual([167, 167, 166]);
  });

  it('keep their sum whatever the parts', () => {
    expect(roundTo([1, 1, 1], 1000)).toEqual([334, 333, 333]);
    expect(roundTo([0.0004, 0.9996], 1000)).toEqual([0, 1000]);
    expect(roundTo([], 0)).toEqual([]);
  });
});
