import { cleanup, render, screen } from '@testing-library/svelte';
import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import ShareBar from '$lib/ui/share-bar.svelte';
import { partInWords, partsOf, roundTogether } from '$lib/ui/shares.ts';

afterEach(cleanup);

describe('the printed shares of a bar', () => {
  it('add up to 100 % where plain rounding would say 99.9 %', () => {
    const third = 1 / 3;
    expect(roundTogether([third, third, third])).toEqual([334, 333, 333]);
  });

  it('add up to 100 % whatever the shares are', () => {
    const shares = fc
      .array(fc.integer({ min: 0, max: 10_000 }), { minLength: 1, maxLength: 6 })
      .filter((weights) => weights.some((weight) => weight > 0))
      .map((weights) => {
        const sum = weights.reduce((total, weight) => total + weight, 0);
        return weights.map((weight) => weight / sum);
      });
    fc.assert(
      fc.property(shares, (parts) => {
        const tenths = roundTogether(parts);
        expect(tenths.reduce((total, value) => total + value, 0)).toBe(1000);
        // nobody is rounded by a whole step or more
        parts.forEach((part, at) => expect(Math.abs((tenths[at] ?? 0) - part * 1000)).toBeLessThan(1 + 1e-6));
      }),
    );
  });

  it('stand in the order of standing, each standing once, without empty ones', () => {
    const parts = partsOf([
      { standing: 'unknown', share: 0.125 },
      { standing: 'documented', share: 0.5 },
      { standing: 'disputed', share: 0 },
      { standing: 'documented', share: 0.125 },
      { standing: 'stated', share: 0.25 },
    ]);
    expect(parts.map((part) => [part.standing, part.tenths])).toEqual([
      ['documented', 625],
      ['stated', 250],
      ['unknown', 125],
    ]);
  });

  it('say that a share is there even when it is too small to print', () => {
    const [, small] = partsOf([
      { standing: 'documented', share: 0.9999 },
      { standing: 'by-looks', share: 0.0001 },
    ]);
    expect(small && partInWords(small)).toBe('under 0.1\u202f% by looks');
  });
});

describe('a share bar', () => {
  it('says the whole bar to those who do not see it', () => {
    render(ShareBar, {
      shares: [
        { standing: 'stated', share: 0.375 },
        { standing: 'documented', share: 0.625 },
      ],
    });
    expect(screen.getByRole('img').getAttribute('aria-label')).toBe('62.5\u202f% documented · 37.5\u202f% stated');
  });

  it('takes the fine patterns for a row and the coarse ones for a page', () => {
    const fills = (size: 11 | 30): (string | null)[] => {
      const { container, unmount } = render(ShareBar, { shares: [{ standing: 'stated', share: 1 }], size });
      const found = [...container.querySelectorAll('rect')].map((rect) => rect.getAttribute('fill'));
      unmount();
      return found;
    };
    expect(fills(11)).toEqual(['url(#p-stated)']);
    expect(fills(30)).toEqual(['url(#q-stated)']);
  });
});
