import { describe, expect, it } from 'vitest';
import { claimFacts, type ClaimFacts, type EvidenceRow } from '../../../api/provenance/claim-facts.ts';
import { auditLabel } from '../../../api/provenance/flags.ts';
import type { Claimant, LabelFindings, SourceFacts } from '../../../api/provenance/label-findings.ts';
import { dateBounds } from '../../../shared/edtf.ts';
import type { FlagCode, LabelKind } from '../../../shared/vocabulary.ts';

let serial = 0;

/** A collecting permit without a date that names the claim and was accepted, unless something else is said. */
function paper(fields: Partial<EvidenceRow> & { on?: string } = {}): EvidenceRow {
  const { on, ...told } = fields;
  return {
    id: `e${++serial}`,
    kind: 'collecting-permit',
    bearing: 'supports',
    names: 'claim',
    issuedBy: `issuer ${serial}`,
    repeatsId: null,
    review: 'accepted',
    isWithdrawn: false,
    dated: on === undefined ? null : dateBounds(on),
    ...told,
  };
}

/** A claim of the label itself, at a place in Ecuador. */
const claim = (evidence: readonly EvidenceRow[] = [], value = 'Quebrada Honda', countryCode = 'EC'): ClaimFacts =>
  claimFacts({ id: `c${++serial}`, aspect: 'locality', value, countryCode, statedOn: null }, evidence);

const came = (kind: SourceFacts['kind'], on: string | null, countryOfExport: string | null = 'EC'): SourceFacts => ({
  kind,
  countryOfExport,
  date: on === null ? null : dateBounds(on),
});

const of = (claims: readonly ClaimFacts[], source: SourceFacts | null = came('import', '1994')): Claimant => ({
  record: { kind: 'source', id: 'the source', name: 'Import, 1994', isPrivate: false },
  claims,
  source,
});

const ofLine = (countryCode: string): Claimant => ({
  record: { kind: 'line', id: 'the line', name: 'Quebrada Honda', isPrivate: false },
  claims: [claim([], 'Quebrada Honda', countryCode)],
  source: null,
});

/** An animal that is traced whole, with these claims about where it came from. */
const findings = (claimants: readonly Claimant[], more: Partial<LabelFindings> = {}): LabelFindings => ({
  label: { name: 'Quebrada Honda', kind: 'locality' as LabelKind },
  tracedShare: { expected: 1, least: 1 },
  untraced: [],
  labelCount: 1,
  founderLabels: [],
  gaps: [],
  outsiders: [],
  crossedLines: [],
  uncertainClutches: [],
  isProposalUncertain: false,
  claimants,
  relabelled: [],
  nativeRange: ['EC', 'PE'],
  ...more,
});

const against = paper({ kind: 'letter', bearing: 'contradicts' });

type Case = readonly [what: string, of: LabelFindings, raised: readonly FlagCode[]];

const cases: readonly Case[] = [
  ['nothing is claimed', findings([]), []],
  ['all is in order', findings([of([claim([paper({ on: '1994-02' })])])]), []],

  ['accepted evidence contradicts the label', findings([of([claim([paper(), against])])]), ['disputed-claim']],
  ['the contradiction waits for its review', findings([of([claim([paper(), { ...against, review: 'pending' }])])]), []],
  ['the contradiction was rejected', findings([of([claim([paper(), { ...against, review: 'rejected' }])])]), []],
  ['the contradiction was withdrawn', findings([of([claim([paper(), { ...against, isWithdrawn: true }])])]), []],

  [
    'the claimed place lies outside the range',
    findings([of([claim([paper()], 'Quebrada Honda', 'BR')], came('import', '1994', 'BR'))]),
    ['outside-range'],
  ],
  ['it lies inside', findings([of([claim([paper()], 'Quebrada Honda', 'PE')], came('import', '1994', 'PE'))]), []],
  [
    'the profile names no country',
    findings([of([claim([paper()], 'Quebrada Honda', 'BR')], came('import', '1994', 'BR'))], { nativeRange: [] }),
    [],
  ],
  [
    'the claim of the place is disputed anyway',
    findings([of([claim([paper(), against], 'Quebrada Honda', 'BR')], came('import', '1994', 'BR'))]),
    ['disputed-claim'],
  ],

  ['it was exported elsewhere', findings([of([claim([paper()])], came('import', '1994', 'DE'))]), ['export-route']],
  ['the country of export is not known', findings([of([claim([paper()])], came('import', '1994', null))]), []],
  [
    'only the line says where the place is, and it was exported elsewhere',
    findings([ofLine('EC'), of([], came('import', '1994', 'PE'))]),
    ['export-route'],
  ],
  ['only the line says where the place is', findings([ofLine('EC'), of([])]), []],

  [
    'a collecting permit is dated after the animals came',
    findings([of([claim([paper({ on: '1995' })])])]),
    ['date-conflict'],
  ],
  ['it may be of the same year', findings([of([claim([paper({ on: '1994-12' })])])]), []],
  ['its date is vague enough to fit', findings([of([claim([paper({ on: '1994/1996' })])])]), []],
  [
    'a list is over two years older than the import',
    findings([of([claim([paper(), paper({ kind: 'importers-list', on: '1990' })])])]),
    ['date-conflict'],
  ],
  [
    'a publication is much older or younger',
    findings([of([claim([paper({ kind: 'publication', on: '1980' }), paper({ kind: 'publication', on: '2010' })])])]),
    [],
  ],
  [
    'a purchase has papers of any shipment before it',
    findings([of([claim([paper({ on: '1980' })])], came('purchase', '1994'))]),
    [],
  ],
  ['nobody knows when it came', findings([of([claim([paper({ on: '2005' })])], came('import', null))]), []],

  [
    'papers name only the country',
    findings([of([claim([paper({ kind: 'export-permit', names: 'country' })])])]),
    ['country-only'],
  ],
  [
    'one of the papers names the place',
    findings([of([claim([paper({ kind: 'export-permit', names: 'country' }), paper()])])]),
    [],
  ],
  [
    'the paper that names only the country was rejected',
    findings([of([claim([paper({ kind: 'export-permit', names: 'country', review: 'rejected' })])])]),
    [],
  ],
  ['looks are no paper', findings([of([claim([paper({ kind: 'appearance' })])])]), []],

  [
    'the label took the place of another',
    findings([], {
      relabelled: [{ kind: 'source', id: 'the source', name: 'Purchase, 2012', isPrivate: false, from: 'Río Verde' }],
    }),
    ['label-changed'],
  ],
];

describe('a flag that follows from claims', () => {
  it.each(cases)('where %s', (_, found, raised) => {
    const flags = auditLabel(found);
    expect(flags.map(({ code }) => code)).toEqual(raised);
    for (const { detail, clearedBy, records } of flags) {
      expect(records.length).toBeGreaterThan(0);
      expect([detail, clearedBy]).toEqual([expect.stringMatching(/^[A-Z].+\.$/), expect.stringMatching(/^[A-Z].+\.$/)]);
    }
  });

  it('is as grave as what it does to the label', () => {
    const severityOf = (found: LabelFindings) => auditLabel(found)[0]?.severity;
    expect(severityOf(findings([of([claim([paper(), against])])]))).toBe('breaks');
    expect(severityOf(findings([of([claim([paper(), against], 'Río Verde')])]))).toBe('worth-knowing');
    expect(severityOf(findings([of([claim([paper()])], came('wild-collection', '1994', 'DE'))]))).toBe('weakens');
    expect(severityOf(findings([of([claim([paper()])], came('import', '1994', 'DE'))]))).toBe('worth-knowing');
  });
});
