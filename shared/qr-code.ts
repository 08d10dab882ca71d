import qrcode from 'qrcode-generator';

/** A QR code (ISO/IEC 18004) as an outline: squares of 1 × 1, without the quiet zone. */
export interface QrCode {
  /** Squares on a side. */
  readonly size: number;
  /** Path of the dark squares, as SVG and PDF take it; 0 to `size` on both axes. */
  readonly path: string;
}

/** Blank squares that the standard asks for on each side of a code. */
export const quietZone = 4;

/** A QR code that carries a text, as small as it fits, and is read although 15 % of it be covered (level M). */
export function qrCode(text: string): QrCode {
  const code = qrcode(0, 'M');
  code.addData(text);
  code.make();
  const size = code.getModuleCount();
  let path = '';
  for (let row = 0; row < size; row++)
    for (let from = 0; from < size; from++) {
      if (!code.isDark(row, from)) continue;
      let to = from + 1;
      while (to < size && code.isDark(row, to)) to++;
      path += `M${from} ${row}h${to - from}v1h${from - to}z`;
      from = to;
    }
  return { size, path };
}
