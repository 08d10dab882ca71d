import { describe, expect, it } from 'vitest';
import { faultsOf, type ProvJson } from '../../support/prov-json.ts';

const sound = {
  prefix: { a: 'urn:x-a:' },
  entity: { 'a:one': { 'prov:label': 'one' }, 'a:two': {} },
  wasDerivedFrom: { '_:r1': { 'prov:generatedEntity': 'a:two', 'prov:usedEntity': 'a:one' } },
};

describe('a document of PROV-JSON', () => {
  it('without a fault has none told', () => {
    expect(faultsOf(sound as unknown as ProvJson)).toEqual([]);
  });

  it.each<[string, object, string]>([
    [
      'a relation to nothing',
      { wasAttributedTo: { '_:r2': { 'prov:entity': 'a:one', 'prov:agent': 'a:x' } } },
      'names nothing',
    ],
    ['a relation without its end', { used: { '_:r2': { 'prov:entity': 'a:one' } } }, 'prov:activity is missing'],
    ['an unknown prefix', { agent: { 'b:one': {} } }, 'no name'],
    ['a value that is no literal', { agent: { 'a:x': { 'a:y': { z: 1 } } } }, 'no literal'],
    ['a day in the place of an instant', { activity: { 'a:x': { 'prov:startTime': '2001-03-04' } } }, 'xsd:dateTime'],
    ['an entity that is an activity', { activity: { 'a:one': {} } }, 'is both'],
    ['a statement that PROV does not know', { wasEatenBy: {} }, 'no statement'],
    [
      'a thing that comes out of itself',
      {
        wasDerivedFrom: {
          ...sound.wasDerivedFrom,
          '_:r2': { 'prov:generatedEntity': 'a:one', 'prov:usedEntity': 'a:two' },
        },
      },
      'comes out of itself',
    ],
  ])('with %s is told', (_, more, fault) => {
    expect(faultsOf({ ...sound, ...more } as unknown as ProvJson).join('\n')).toContain(fault);
  });
});
