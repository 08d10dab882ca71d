import { describe, expect, it } from 'vitest';
import {
  foldedLabel,
  isTraceable,
  sharesByStanding,
  standingOfSource,
  tracesLabel,
  weakestStanding,
} from '../../../api/provenance/standing.ts';

describe('the standing of a label', () => {
  it('is somebody’s word while a source has a label and no claim', () => {
    expect(standingOfSource({ labelAsReceived: 'Quebrada Honda' })).toBe('stated');
  });

  it('is unknown where a source came without a label, or with an empty one', () => {
    expect(standingOfSource({ labelAsReceived: null })).toBe('unknown');
    expect(standingOfSource({ labelAsReceived: '  ' })).toBe('unknown');
  });

  it('traces a label only when corroborated or better', () => {
    expect((['documented', 'corroborated'] as const).every(isTraceable)).toBe(true);
    expect((['stated', 'by-looks', 'disputed', 'unknown'] as const).some(isTraceable)).toBe(false);
  });

  it('traces no label by somebody’s word, and nothing to an animal without a label', () => {
    expect(tracesLabel({ labelAsReceived: 'Quebrada Honda' }, 'Quebrada Honda')).toBe(false);
    expect(tracesLabel({ labelAsReceived: null }, null)).toBe(false);
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
