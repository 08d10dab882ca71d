import { describe, expect, it } from 'vitest';
import { groupProblems } from '$lib/exchange/sheet-problems.ts';
import { isSameColumn, readRows } from '$lib/exchange/sheet-rows.ts';

describe('the problems of a sheet', () => {
  it('are grouped by what would mend them, the largest group first', () => {
    const groups = groupProblems([
      { row: 3, column: 'sire', detail: 'No animal has the code “EA-99”.' },
      { row: 4, column: 'hatched', detail: '“12.4.2021” is no date.' },
      { row: 9, column: 'hatched', detail: '“3.5.2021” is no date.' },
      { row: 9, column: 'laid', detail: '“3.5.2021” is no date.' },
      { detail: 'The sheet has no column “code”.' },
    ]);
    expect(groups.map((group) => [group.column, group.places.map((place) => place.row)])).toEqual([
      ['hatched', [4, 9]],
      ['sire', [3]],
      ['laid', [9]],
      ['', [undefined]],
    ]);
  });
});

describe('the rows beside the problems', () => {
  it('are numbered as a spreadsheet shows them, the header being row 1', async () => {
    const sheet = new Blob(['code;notes\nEA-01;"two; parts"\n\nEA-02;plain\n']);
    const read = await readRows(sheet, new Set([2, 4, 99]));
    expect(read?.header).toEqual(['code', 'notes']);
    expect([...(read?.rows ?? [])]).toEqual([
      [2, ['EA-01', 'two; parts']],
      [4, ['EA-02', 'plain']],
    ]);
  });

  it('find their column whatever its spelling', () => {
    expect(isSameColumn('out of water', 'Out_of-Water')).toBe(true);
    expect(isSameColumn('sire', 'dam')).toBe(false);
  });
});
