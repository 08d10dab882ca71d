import { describe, expect, it } from 'vitest';
import { explainStanding } from '../../../api/provenance/claims/standing-in-words.ts';
import { independent, standingOfClaim, type Bears } from '../../../api/provenance/standing-of-claim.ts';

let serial = 0;

/** Accepted evidence that supports a claim, a letter of somebody if nothing else is said. */
function evidence(fields: Partial<Bears> = {}): Bears {
  serial += 1;
  return {
    id: `e${serial}`,
    kind: 'letter',
    bearing: 'supports',
    names: 'claim',
    issuedBy: `issuer ${serial}`,
    repeatsId: null,
    review: 'accepted',
    isWithdrawn: false,
    ...fields,
  };
}

const permit = evidence({ kind: 'collecting-permit' });
const list = evidence({ kind: 'importers-list', issuedBy: 'Importer' });
const invoice = evidence({ kind: 'invoice', issuedBy: 'importer ' });
const letter = evidence({ kind: 'letter', issuedBy: 'A previous keeper' });
const looks = evidence({ kind: 'appearance' });

// the rules of the domain's table of standings
describe('the standing of a claim', () => {
  it.each<[string, Bears[], string]>([
    ['nobody brought evidence', [], 'stated'],
    ['a collecting permit names the place', [permit], 'documented'],
    ['an export permit names the place', [evidence({ kind: 'export-permit' })], 'documented'],
    ["a collector's field note names it", [evidence({ kind: 'field-note' })], 'documented'],
    ['a publication on that shipment names it', [evidence({ kind: 'publication' })], 'documented'],
    ['an export permit names only the country', [evidence({ kind: 'export-permit', names: 'country' })], 'stated'],
    ['a permit waits for its review', [evidence({ kind: 'collecting-permit', review: 'pending' })], 'stated'],
    ['a permit was rejected', [evidence({ kind: 'collecting-permit', review: 'rejected' })], 'stated'],
    ['a permit was withdrawn', [evidence({ kind: 'collecting-permit', isWithdrawn: true })], 'stated'],
    ['two secondary documents of different issuers agree', [list, letter], 'corroborated'],
    ['one secondary document names it', [list], 'stated'],
    ['two documents are of one issuer, written otherwise', [list, invoice], 'stated'],
    ['two documents have no issuer', [evidence({ issuedBy: null }), evidence({ issuedBy: ' ' })], 'stated'],
    ['one document has an issuer and one has none', [evidence({ issuedBy: null }), letter], 'corroborated'],
    ['one of two waits', [list, { ...letter, review: 'pending' }], 'stated'],
    ['one of two names only the country', [list, { ...letter, names: 'country' }], 'stated'],
    ['a letter only repeats the list', [list, { ...letter, repeatsId: list.id }], 'stated'],
    [
      'two letters repeat one list that was never accepted',
      [
        { ...list, review: 'rejected' },
        { ...letter, repeatsId: list.id },
        { ...evidence(), repeatsId: list.id },
      ],
      'stated',
    ],
    ['it was assigned from looks', [looks], 'by-looks'],
    ['it was assigned from looks, and one letter names it', [looks, letter], 'stated'],
    ['looks were rejected', [{ ...looks, review: 'rejected' }], 'stated'],
    ['an accepted letter contradicts a permit', [permit, { ...letter, bearing: 'contradicts' }], 'disputed'],
    ['looks contradict it', [permit, { ...looks, bearing: 'contradicts' }], 'disputed'],
    [
      'a contradiction waits for its review',
      [permit, { ...letter, bearing: 'contradicts', review: 'pending' }],
      'documented',
    ],
    ['a contradiction was rejected', [permit, { ...letter, bearing: 'contradicts', review: 'rejected' }], 'documented'],
    ['a contradiction was withdrawn', [permit, { ...letter, bearing: 'contradicts', isWithdrawn: true }], 'documented'],
  ])('where %s', (_, pieces, standing) => {
    expect(standingOfClaim(pieces).standing).toBe(standing);
    expect(standingOfClaim([...pieces].reverse()).standing).toBe(standing);
    expect(explainStanding(pieces).because).toMatch(new RegExp(`^${standing.replace('-', ' ')}, because .+\\.$`));
  });

  it('names the evidence that decides it, and no other', () => {
    expect(standingOfClaim([letter, permit, looks]).decidedBy).toEqual([permit.id]);
    expect(standingOfClaim([list, letter, looks]).decidedBy).toEqual([list.id, letter.id]);
  });

  it('is told in words, with what would raise it', () => {
    expect(explainStanding([permit])).toMatchObject({
      because: 'documented, because a collecting permit names it.',
      raisedBy: null,
    });
    expect(explainStanding([list, letter]).because).toBe(
      "corroborated, because an importer's list and a letter name it, 2 of them independent of each other, and nothing contradicts it.",
    );
    expect(explainStanding([evidence({ kind: 'export-permit', names: 'country' })]).because).toBe(
      'stated, because its papers name only the country of export, so that it is somebody’s word.',
    );
    expect(explainStanding([evidence({ review: 'pending' })]).raisedBy).toMatch(
      /One piece of evidence waits for a review\.$/,
    );
  });
});

describe('how many independent voices there are', () => {
  it('follows repeats through any number of papers, whatever their order', () => {
    const [one, two, three] = [evidence(), evidence(), evidence()];
    const chain = [one, { ...two, repeatsId: one.id }, { ...three, repeatsId: two.id }];
    expect(independent(chain, chain)).toBe(1);
    expect(independent([...chain].reverse(), [...chain].reverse())).toBe(1);
  });

  it('survives papers that repeat each other', () => {
    const [one, two] = [evidence(), evidence()];
    const ring = [
      { ...one, repeatsId: two.id },
      { ...two, repeatsId: one.id },
    ];
    expect(independent(ring, ring)).toBe(1);
  });
});
