import { describe, expect, it } from 'vitest';
import { hasOthers, KNOWN_CAUSES_MOST, KnownFlags } from '../../../api/provenance/acknowledgements/known-flags.ts';

const ids = (count: number, from = 0): string[] =>
  Array.from({ length: count }, (_, place) => `record ${from + place}`);
const whole = (list: readonly string[]) => ({ ids: list, count: list.length });
const more = (list: readonly string[]) => ({ ids: list, count: list.length + 1 });
const most = KNOWN_CAUSES_MOST;

describe('whether a record causes a flag that did not when it was acknowledged', () => {
  it.each([
    ['the same records', ids(2), whole(ids(2)), false],
    ['some of them, the others cleared', ids(3), whole(ids(1)), false],
    ['no record at all, then as now', [], whole([]), false],
    ['another record beside them', ids(2), whole(ids(3)), true],
    ['another record in place of one', ids(2), whole(ids(2, 1)), true],
    ['more than are told, while few were known', ids(2), more(ids(2)), true],
    ['more than are told, all known, while as many were known as are kept', ids(most), more(ids(most)), null],
    ['another one, while as many were known as are kept', ids(most), whole(ids(1, most)), null],
    ['as many as are kept, all of them known', ids(most), whole(ids(most)), false],
  ] as const)('%s: %#', (_, known, now, expected) => {
    expect(hasOthers(known, now)).toBe(expected);
  });
});

describe('flags that are acknowledged', () => {
  const told = { version: 1, by: 'Ria', at: '2026-01-02T03:04:05.678Z', reason: 'lost' };
  const known = new KnownFlags([
    { ...told, id: '1', subjectId: 'frog', isOfAnimal: true, code: 'origin-gap', recordIds: ids(1) },
    { ...told, id: '2', subjectId: 'frog', isOfAnimal: true, code: 'outside-line', recordIds: ids(1) },
    { ...told, id: '3', subjectId: 'line', isOfAnimal: false, code: 'origin-gap', recordIds: ids(1) },
  ]);

  it('are found by animal or line and by code, without their causes', () => {
    expect(known.of('line', 'origin-gap', whole(ids(1)))).toEqual({ ...told, id: '3', otherCauses: false });
    expect(known.of('line', 'outside-line', whole(ids(1)))).toBeNull();
    expect(known.of('another', 'origin-gap', whole(ids(1)))).toBeNull();
  });

  it('are chosen among the flags that an animal carries', () => {
    expect(known.among('frog', ['mixed-labels', 'outside-line'])).toEqual(['outside-line']);
    expect(known.animals()).toEqual(['frog']);
  });
});
