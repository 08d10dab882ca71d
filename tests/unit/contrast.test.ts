import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

/** The colours of the client, by theme, as they stand in its tokens. */
const css = readFileSync(fileURLToPath(new URL('../../client/src/lib/styles/tokens.css', import.meta.url)), 'utf8');
const [day, night, print] = [
  /:root \{([^}]*)\}/,
  /\[data-theme='night'\] \{([^}]*)\}/,
  /@media print \{[^{]*\{([^}]*)\}/,
].map((block) => colours(block.exec(css)?.[1] ?? ''));
const themes = { day, night: { ...day, ...night }, print: { ...day, ...print } } as Record<
  string,
  Record<string, string>
>;

function colours(block: string): Record<string, string> {
  return Object.fromEntries(
    [...block.matchAll(/--([\w-]+): (#[0-9a-f]+);/g)].map(([, name = '', colour = '']) => [name, colour]),
  );
}

/** Red, green and blue from 0 to 255. */
function channels(colour: string): [number, number, number] {
  const digits = colour.length < 6 ? [...colour.slice(1)].map((digit) => digit + digit).join('') : colour.slice(1);
  const [red = 0, green = 0, blue = 0] = [0, 2, 4].map((at) => parseInt(digits.slice(at, at + 2), 16));
  return [red, green, blue];
}

/** Relative luminance, WCAG 2.2, 0 to 1. */
function luminance(colour: string): number {
  const [red, green, blue] = channels(colour).map((channel) => {
    const part = channel / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio, WCAG 2.2, 1 to 21. */
function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

/** Each pair of an upper and an under colour, with its ratio. */
function ratios(theme: string, above: readonly string[], under: readonly string[]): { pair: string; ratio: number }[] {
  const of = (name: string): string => themes[theme]?.[name] ?? 'missing';
  return above.flatMap((one) =>
    under.map((other) => ({ pair: `${one} on ${other}`, ratio: contrast(of(one), of(other)) })),
  );
}

const papers = ['paper', 'card', 'sunk'];

it('is reckoned as WCAG 2.2 does: black on white is 21, grey #767676 on white 4.54', () => {
  expect(contrast('#000', '#fff')).toBeCloseTo(21, 10);
  // from memory: the grey that is named everywhere as the lightest that passes AA on white
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
});

describe.each(['day', 'night', 'print'])('the colours by %s', (theme) => {
  it('let text be read on every paper (AA, 4.5:1)', () => {
    const text = [
      ...ratios(theme, ['ink', 'ink-2', 'ink-3', 'pen'], papers),
      ...ratios(theme, ['on-do'], ['do']),
      ...(theme === 'print' ? [] : ratios(theme, ['on-ink'], ['ink'])),
      ...ratios(theme, ['qr-ink'], ['qr-ground']),
    ];
    expect(text.filter(({ ratio }) => !(ratio >= 4.5))).toEqual([]);
  });

  it('show the edges of fields and the fills of standings (3:1)', () => {
    const known = ['documented', 'corroborated', 'stated', 'by-looks', 'disputed'].map((standing) => `st-${standing}`);
    const shapes = [...ratios(theme, ['firm'], ['paper', 'card']), ...ratios(theme, known, ['card'])];
    expect(shapes.filter(({ ratio }) => !(ratio >= 3))).toEqual([]);
  });
});

it('keeps blue under three quarters of red in every colour of the night, for the sake of sleeping frogs', () => {
  const blue = Object.entries(night ?? {}).filter(([, colour]) => {
    const [red, , inBlue] = channels(colour);
    return inBlue >= 0.75 * red;
  });
  expect(Object.keys(night ?? {}).length).toBeGreaterThan(15);
  expect(blue).toEqual([]);
});
