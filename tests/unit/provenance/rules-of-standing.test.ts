import { describe, expect, it } from 'vitest';
import { independent, standingOfClaim, type Bears } from '../../../api/provenance/standing-of-claim.ts';
import { evidenceKinds, type EvidenceKind, type Standing } from '../../../shared/vocabulary.ts';

let serial = 0;

/** An accepted document that supports the claim and names what it says. */
function piece(kind: EvidenceKind, fields: Partial<Bears> = {}): Bears {
  serial += 1;
  return {
    id: `piece ${serial}`,
    kind,
    bearing: 'supports',
    names: 'claim',
    issuedBy: `issuer ${serial}`,
    repeatsId: null,
    review: 'accepted',
    isWithdrawn: false,
    ...fields,
  };
}

const list = piece('importers-list', { id: 'the list', issuedBy: 'Importer' });
const permit = piece('export-permit');

const cases: readonly (readonly [string, readonly Bears[], Standing])[] = [
  ['nothing but somebody’s word', [], 'stated'],
  ['a permit that names the place', [permit], 'documented'],
  ['a permit that waits for its review', [piece('export-permit', { review: 'pending' })], 'stated'],
  ['a permit that was rejected', [piece('export-permit', { review: 'rejected' })], 'stated'],
  ['a permit that was withdrawn', [piece('export-permit', { isWithdrawn: true })], 'stated'],
  ['a permit that names only the country', [piece('export-permit', { names: 'country' })], 'stated'],
  ['one secondary document', [list], 'stated'],
  ['two secondary documents of two hands', [list, piece('invoice')], 'corroborated'],
  ['two of which one waits', [list, piece('invoice', { review: 'pending' })], 'stated'],
  ['two of which one was withdrawn', [list, piece('invoice', { isWithdrawn: true })], 'stated'],
  ['two of which one names only the country', [list, piece('invoice', { names: 'country' })], 'stated'],
  ['two of one issuer, written differently', [list, piece('invoice', { issuedBy: ' IMPORTER ' })], 'stated'],
  ['two without an issuer', [piece('letter', { issuedBy: null }), piece('invoice', { issuedBy: null })], 'stated'],
  ['one that repeats the other', [list, piece('letter', { repeatsId: 'the list' })], 'stated'],
  [
    'two that repeat a third which was rejected',
    [
      piece('importers-list', { id: 'root', review: 'rejected' }),
      piece('letter', { repeatsId: 'root' }),
      piece('invoice', { repeatsId: 'root' }),
    ],
    'stated',
  ],
  [
    'three, one repeating another',
    [list, piece('letter', { repeatsId: 'the list' }), piece('invoice')],
    'corroborated',
  ],
  [
    'two of two hands, and a third that waits and claims to join them',
    [
      list,
      piece('invoice', { id: 'bill', issuedBy: 'Dealer' }),
      piece('letter', { review: 'pending', issuedBy: 'Dealer', repeatsId: 'the list' }),
    ],
    'corroborated',
  ],
  ['looks alone', [piece('appearance')], 'by-looks'],
  ['looks twice', [piece('appearance'), piece('appearance')], 'by-looks'],
  ['looks beside one document', [piece('appearance'), list], 'stated'],
  ['a permit, and a letter against it', [permit, piece('letter', { bearing: 'contradicts' })], 'disputed'],
  [
    'a permit, and a letter against it that waits',
    [permit, piece('letter', { bearing: 'contradicts', review: 'pending' })],
    'documented',
  ],
  [
    'a permit, and a rejected letter against it',
    [permit, piece('letter', { bearing: 'contradicts', review: 'rejected' })],
    'documented',
  ],
  [
    'a permit, and a withdrawn letter against it',
    [permit, piece('letter', { bearing: 'contradicts', isWithdrawn: true })],
    'documented',
  ],
  [
    'two that agree and looks against them',
    [list, piece('invoice'), piece('appearance', { bearing: 'contradicts' })],
    'disputed',
  ],
];

describe('the standing of a claim', () => {
  it.each(cases)('with %s', (_, evidence, standing) => {
    expect(standingOfClaim(evidence).standing).toBe(standing);
    expect(standingOfClaim([...evidence].reverse()).standing).toBe(standing);
  });

  it.each(Object.entries(evidenceKinds))('ranks a %s as %s', (kind, rank) => {
    const standing = { primary: 'documented', secondary: 'stated', appearance: 'by-looks' }[rank];
    expect(standingOfClaim([piece(kind as EvidenceKind)]).standing).toBe(standing);
  });

  it('names the evidence that decides it', () => {
    expect(standingOfClaim([list, permit]).decidedBy).toEqual([permit.id]);
    expect(standingOfClaim([]).decidedBy).toEqual([]);
    const against = piece('letter', { bearing: 'contradicts' });
    expect(standingOfClaim([permit, against]).decidedBy).toEqual([against.id]);
  });

  it('counts documents that repeat each other in a ring as one voice', () => {
    const ring = ['a', 'b', 'c'].map((id, at) => piece('letter', { id, repeatsId: ['b', 'c', 'a'][at] ?? null }));
    expect(independent(ring, ring)).toBe(1);
  });
});
