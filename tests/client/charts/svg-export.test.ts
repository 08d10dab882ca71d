import { describe, expect, it } from 'vitest';
import { plainColour } from '../../../client/src/lib/charts/svg-export.ts';
import { covers } from '../../../client/src/lib/charts/svg-fonts.ts';

describe('a saved drawing', () => {
  it('names mixed and see-through colours so that every program reads them', () => {
    expect(plainColour('color(srgb 1 0.5 0)')).toEqual({ colour: 'rgb(255, 128, 0)', part: 1 });
    expect(plainColour('color(srgb 0.2 1e-5 1.2 / 0.25)')).toEqual({ colour: 'rgb(51, 0, 255)', part: 0.25 });
    expect(plainColour('rgba(176, 28, 46, 0.14)')).toEqual({ colour: 'rgb(176, 28, 46)', part: 0.14 });
  });

  it('leaves patterns, plain colours and nothing at all as they are', () => {
    for (const value of ['none', 'rgb(30, 38, 48)', 'url("#p-stated")'])
      expect(plainColour(value)).toEqual({ colour: value, part: 1 });
  });

  it('takes only the fonts that its letters need', () => {
    const latin = 'U+0000-00FF, U+0131, U+2000-206F';
    const letter = (text: string) => text.codePointAt(0) ?? 0;
    expect(covers(latin, letter('ü'))).toBe(true);
    expect(covers(latin, letter('ı'))).toBe(true);
    expect(covers(latin, letter('ő'))).toBe(false);
    expect(covers('U+4??', letter('Ж'))).toBe(true);
    expect(covers('', letter('Ж'))).toBe(true);
  });
});
