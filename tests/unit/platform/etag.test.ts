import { describe, expect, it } from 'vitest';
import { etagOf, isMatch, parseIfMatch } from '../../../api/platform/etag.ts';

describe('If-Match (RFC 9110, 13.1.1)', () => {
  it.each([
    ['"3"', 3, true],
    ['"2", "3"', 3, true],
    ['*', 3, true],
    ['"2"', 3, false],
    ['W/"3"', 3, false],
    ['3', 3, false],
    ['', 3, false],
    ['"abc"', 3, false],
  ])('%s against version %i: %s', (header, version, matches) => {
    expect(isMatch(parseIfMatch(header), version)).toBe(matches);
  });

  it('takes the tag that was given out', () => {
    expect(isMatch(parseIfMatch(etagOf(17)), 17)).toBe(true);
  });
});
