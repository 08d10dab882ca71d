import { quietZone } from '$shared/qr-code.ts';

/** What may stand on a label besides the number and its code; the first is given up last. */
export const labelParts = ['code', 'line', 'hatched', 'species', 'keeper'] as const;
export type LabelPart = (typeof labelParts)[number];

/** One line of text on a label. */
export interface LabelText {
  readonly part: 'number' | LabelPart;
  readonly text: string;
}

/** How a label is filled; lengths in millimetres. */
export interface LabelFit {
  readonly padding: number;
  /** Side of the QR code with its blank edge. */
  readonly qrSide: number;
  /** Side of one of its squares. */
  readonly qrSquare: number;
  readonly isUpright: boolean;
  readonly textWidth: number;
  readonly texts: readonly (LabelText & { readonly size: number; readonly lines: number })[];
  /** Parts for which there is no room. */
  readonly leftOut: readonly LabelPart[];
}

/** Squares smaller than this are not read by every phone (common practice, no source). */
export const leastQrSquare = 0.3;
/** Print smaller than this is not read at arm's length (common practice, no source). */
const leastText = 1.7;
const mostText = 4.5;
const lineHeight = 1.16;
const weights: Readonly<Record<LabelText['part'], number>> = {
  number: 1.55,
  code: 1.3,
  line: 1.1,
  hatched: 1,
  species: 1,
  keeper: 0.9,
};

/**
 * Fits a code and texts on a label: the code beside the text, or above it on an upright label; the text as large as goes, in two lines
 * where it is long, and the least important part left out until what stays can be read.
 *
 * @param squares squares on a side of the code
 */
export function fitLabel(
  { width, height }: { readonly width: number; readonly height: number },
  squares: number,
  texts: readonly LabelText[],
): LabelFit {
  const padding = Math.max(1, Math.min(width, height) * 0.05);
  const isUpright = height > width * 1.15;
  const qrSide = isUpright
    ? Math.min(width - 2 * padding, (height - 2 * padding) * 0.6)
    : Math.min(height - 2 * padding, (width - 3 * padding) * 0.46);
  const textWidth = isUpright ? width - 2 * padding : width - qrSide - 3 * padding;
  const textHeight = isUpright ? height - qrSide - 3 * padding : height - 2 * padding;
  let shown = [...texts];
  const leftOut: LabelPart[] = [];
  let size = sizeFor(shown, textWidth, textHeight);
  while (size < leastText) {
    const last = [...labelParts].reverse().find((part) => shown.some((text) => text.part === part));
    if (last === undefined) break;
    shown = shown.filter(({ part }) => part !== last);
    leftOut.unshift(last);
    size = sizeFor(shown, textWidth, textHeight);
  }
  return {
    padding,
    qrSide,
    qrSquare: qrSide / (squares + 2 * quietZone),
    isUpright,
    textWidth,
    texts: shown.map((text) => ({
      ...text,
      size: size * weights[text.part],
      lines: linesOf(text, size, textWidth),
    })),
    leftOut,
  };
}

/** The largest size at which everything stands in the space, found in steps of a twentieth of a millimetre. */
function sizeFor(texts: readonly LabelText[], width: number, height: number): number {
  for (let size = mostText; size > 0.4; size -= 0.05) {
    const needed = texts.reduce(
      (sum, text) => sum + linesOf(text, size, width) * weights[text.part] * size * lineHeight,
      0,
    );
    const isWhole = texts.every((text) => linesOf(text, size, width) <= (text.part === 'number' ? 1 : 2));
    if (needed <= height && isWhole) return size;
  }
  return 0.4;
}

function linesOf({ part, text }: LabelText, size: number, width: number): number {
  return Math.max(1, Math.ceil((widthOf(text) * weights[part] * size) / width));
}

/** Width of a text as a multiple of its size, on the generous side for both our faces. */
export function widthOf(text: string): number {
  let width = 0;
  for (const letter of text)
    width += letter === ' ' ? 0.28 : /\d/.test(letter) ? 0.6 : letter === letter.toLowerCase() ? 0.5 : 0.66;
  return width;
}
