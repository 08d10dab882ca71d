import { describe, expect, it } from 'vitest';
import {
  claimReceived,
  foldedLabel,
  isTraceable,
  labelCarried,
  saidOfSource,
  sharesByStanding,
  standingUnder,
  tracesLabel,
  weakestStanding,
  type LabelClaim,
} from '../../../api/provenance/standing.ts';
import type { LabelKind, Standing } from '../../../shared/vocabulary.ts';

type Said = readonly [value: string, standing: LabelClaim['standing']];

const claim = ([value, standing]: Said): LabelClaim => ({ value, folded: foldedLabel(value), standing });

/** Everything said of a founder whose source came under a label. */
const said = (received: string | null, ...claims: readonly Said[]): readonly LabelClaim[] =>
  saidOfSource(claimReceived(received), claims.map(claim));

interface Case {
  readonly it: string;
  readonly said: readonly LabelClaim[];
  /** Kind of the label Honda; null for no label at all. */
  readonly kind?: LabelKind | null;
  readonly stands: Standing;
  readonly traces: boolean;
}

const cases: readonly Case[] = [
  { it: 'nothing said', said: said(null), stands: 'unknown', traces: false },
  { it: 'an empty label', said: said('  '), stands: 'unknown', traces: false },
  { it: 'the label it came under, by somebody’s word', said: said('Honda'), stands: 'stated', traces: false },
  { it: 'another label it came under', said: said('Verde'), stands: 'stated', traces: false },
  { it: 'papers that name it', said: said('Honda', ['Honda', 'documented']), stands: 'documented', traces: true },
  { it: 'papers in another hand', said: said(null, [' HONDA ', 'documented']), stands: 'documented', traces: true },
  { it: 'two papers that agree', said: said(null, ['Honda', 'corroborated']), stands: 'corroborated', traces: true },
  { it: 'one paper', said: said(null, ['Honda', 'stated']), stands: 'stated', traces: false },
  { it: 'looks', said: said(null, ['Honda', 'by-looks']), stands: 'by-looks', traces: false },
  {
    it: 'a claim by looks that names what it came under: the claim stands for the label received',
    said: said('Honda', ['Honda', 'by-looks']),
    stands: 'by-looks',
    traces: false,
  },
  {
    it: 'two claims of which the better counts',
    said: said(null, ['Honda', 'stated'], ['honda', 'documented']),
    stands: 'documented',
    traces: true,
  },
  {
    it: 'two claims of which one is contradicted',
    said: said(null, ['Honda', 'documented'], ['honda', 'disputed']),
    stands: 'disputed',
    traces: false,
  },
  {
    it: 'papers that name another place',
    said: said(null, ['Verde', 'documented']),
    stands: 'stated',
    traces: false,
  },
  { it: 'another place by looks', said: said(null, ['Verde', 'by-looks']), stands: 'by-looks', traces: false },
  { it: 'another place, contradicted', said: said(null, ['Verde', 'disputed']), stands: 'disputed', traces: false },
  {
    it: 'another place on paper beside the word for this one',
    said: said('Honda', ['Verde', 'documented']),
    stands: 'stated',
    traces: false,
  },
  {
    it: 'another place contradicted beside the word for this one',
    said: said('Honda', ['Verde', 'disputed']),
    stands: 'stated',
    traces: false,
  },
  {
    it: 'a trade name, papers that name another',
    kind: 'trade-name',
    said: said(null, ['Verde', 'documented']),
    stands: 'stated',
    traces: false,
  },
  {
    it: 'a trade name, papers that name it',
    kind: 'trade-name',
    said: said(null, ['Honda', 'corroborated']),
    stands: 'corroborated',
    traces: true,
  },
  {
    it: 'a cross, papers of the founder’s own place',
    kind: 'cross',
    said: said(null, ['Verde', 'documented']),
    stands: 'documented',
    traces: false,
  },
  {
    it: 'kept without a label, papers of a place',
    kind: 'unlabelled',
    said: said('Verde', ['Verde', 'corroborated']),
    stands: 'corroborated',
    traces: false,
  },
  {
    it: 'no line at all, the best that is said',
    kind: null,
    said: said('Verde', ['Rio', 'by-looks']),
    stands: 'stated',
    traces: false,
  },
  {
    it: 'no line and a contradicted claim',
    kind: null,
    said: said(null, ['Rio', 'disputed']),
    stands: 'disputed',
    traces: false,
  },
];

describe('the standing of a founder under a label', () => {
  it.each(cases)('$it: $stands', ({ said, kind = 'locality', stands, traces }) => {
    const label = kind === null ? null : { name: 'Honda', kind };
    expect(standingUnder(label, said)).toBe(stands);
    expect(tracesLabel(label?.name ?? null, said)).toBe(traces);
  });

  it('traces a label only when corroborated or better', () => {
    expect((['documented', 'corroborated'] as const).every(isTraceable)).toBe(true);
    expect((['stated', 'by-looks', 'disputed', 'unknown'] as const).some(isTraceable)).toBe(false);
  });

  it('is as weak as the weakest part that carries a share', () => {
    const shares = [
      { standing: 'documented', share: 0.5 },
      { standing: 'by-looks', share: 0.5 },
      { standing: 'unknown', share: 0 },
    ] as const;
    expect(weakestStanding(shares)).toBe('by-looks');
    expect(weakestStanding([...shares, { standing: 'disputed', share: 0.01 }])).toBe('disputed');
    expect(weakestStanding([])).toBe('unknown');
  });

  it('adds shares up, best first, and leaves out what carries nothing', () => {
    const shares = sharesByStanding([
      { standing: 'unknown', share: 0.25 },
      { standing: 'stated', share: 0.5 },
      { standing: 'unknown', share: 0.25 },
      { standing: 'disputed', share: 0 },
    ]);
    expect(shares).toEqual([
      { standing: 'stated', share: 0.5 },
      { standing: 'unknown', share: 0.5 },
    ]);
  });
});

describe('the label that a founder counts under', () => {
  it.each<[string, readonly LabelClaim[], string | null]>([
    ['none where nothing is said', said(null), null],
    ['what it came under', said('Verde'), 'Verde'],
    [
      'the one asked about where a paper names it, whatever it came under',
      said('Verde', ['Honda', 'documented']),
      'Honda',
    ],
    [
      'the one asked about by somebody’s word where no better paper names another',
      said('Verde', ['Honda', 'stated']),
      'Honda',
    ],
    ['what papers name rather than the word for the one asked about', said('Honda', ['Verde', 'documented']), 'Verde'],
    ['the better one of two others', said('Verde', ['Rio', 'corroborated']), 'Rio'],
    ['what it came under before what was said later', said('Verde', ['Rio', 'stated']), 'Verde'],
  ])('is %s', (_, said, value) => {
    expect(labelCarried('Honda', said)?.value ?? null).toBe(value);
  });
});

describe('comparing labels', () => {
  it('minds neither case nor spaces', () => {
    expect(foldedLabel('  Quebrada \t HONDA ')).toBe(foldedLabel('quebrada honda'));
  });

  it('minds neither the two ways to write an accent', () => {
    expect(foldedLabel('Río Verde')).toBe(foldedLabel('Ri\u0301o Verde'));
  });

  it('tells different names apart, and an empty one from any', () => {
    expect(foldedLabel('Quebrada Honda')).not.toBe(foldedLabel('Quebrada Honda II'));
    expect(foldedLabel(' ')).toBeNull();
  });
});
