interface Face {
  rule: CSSFontFaceRule;
  /** Address that the rule's own addresses are relative to. */
  base: string;
}

/**
 * Style rules that carry every font of the page that a drawing's texts need, inside themselves, so that a saved drawing reads as
 * it does here. `original` is the drawing in the page; a font that cannot be read is left out, and the reader's next best one stands in.
 */
export async function fontRules(original: SVGSVGElement): Promise<string> {
  const wanted = lettersByFont(original);
  const rules = await Promise.all(
    fontFaces().map(async ({ rule, base }) => {
      const face = (name: string): string => rule.style.getPropertyValue(name);
      const letters = wanted.get(fontKey(face('font-family'), face('font-style')));
      if (!letters || ![...letters].some((letter) => covers(face('unicode-range'), letter))) return '';
      const address = /url\("?([^")]+)"?\)/.exec(face('src'))?.[1];
      const data = address === undefined ? null : await dataAddress(new URL(address, base));
      if (data === null) return '';
      const weight = face('font-weight') || 'normal';
      const range = face('unicode-range');
      return (
        `@font-face{font-family:${face('font-family')};font-style:${face('font-style') || 'normal'};font-weight:${weight};` +
        `${range === '' ? '' : `unicode-range:${range};`}src:url("${data}") format("woff2")}`
      );
    }),
  );
  return rules.join('');
}

/** The first family of a list and the style, as one word. */
function fontKey(families: string, style: string): string {
  const first = families.split(',')[0] ?? '';
  return `${first.replaceAll(/["']/g, '').trim().toLowerCase()} ${style === 'italic' ? 'italic' : 'normal'}`;
}

function lettersByFont(svg: SVGSVGElement): Map<string, Set<number>> {
  const found = new Map<string, Set<number>>();
  for (const text of svg.querySelectorAll('text, tspan')) {
    const { fontFamily, fontStyle } = getComputedStyle(text);
    const key = fontKey(fontFamily, fontStyle);
    const letters = found.get(key) ?? new Set<number>();
    for (const letter of text.textContent) letters.add(letter.codePointAt(0) ?? 0);
    found.set(key, letters);
  }
  return found;
}

function fontFaces(): Face[] {
  const faces: Face[] = [];
  const walk = (rules: CSSRuleList, base: string): void => {
    for (const rule of rules) {
      if (rule instanceof CSSFontFaceRule) faces.push({ rule, base });
      else if (rule instanceof CSSGroupingRule) walk(rule.cssRules, base);
      else if (rule instanceof CSSImportRule && rule.styleSheet)
        walk(rule.styleSheet.cssRules, rule.styleSheet.href ?? base);
    }
  };
  for (const sheet of document.styleSheets) walk(sheet.cssRules, sheet.href ?? document.baseURI);
  return faces;
}

/** Whether a `unicode-range` holds a letter; no range holds all. */
export function covers(range: string, letter: number): boolean {
  if (range.trim() === '') return true;
  return range.split(',').some((part) => {
    const match = /^U\+([0-9A-F?]+)(?:-([0-9A-F]+))?$/i.exec(part.trim());
    if (!match) return false;
    const from = parseInt((match[1] ?? '').replaceAll('?', '0'), 16);
    const to = parseInt(match[2] ?? (match[1] ?? '').replaceAll('?', 'F'), 16);
    return letter >= from && letter <= to;
  });
}

async function dataAddress(url: URL): Promise<string | null> {
  const answer = await fetch(url).catch(() => null);
  if (!answer?.ok) return null;
  const bytes = new Uint8Array(await answer.arrayBuffer());
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return `data:font/woff2;base64,${btoa(text)}`;
}
