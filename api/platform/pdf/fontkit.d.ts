/** What we use of fontkit, which comes without types. */
declare module 'fontkit' {
  export interface PathCommand {
    readonly command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';
    readonly args: readonly number[];
  }
  export interface Glyph {
    readonly advanceWidth: number;
    readonly path: { readonly commands: readonly PathCommand[] };
  }
  export interface Font {
    readonly numGlyphs: number;
    readonly unitsPerEm: number;
    readonly characterSet: readonly number[];
    readonly directory: { readonly tables: Readonly<Record<string, { readonly length: number } | undefined>> };
    getGlyph(id: number): Glyph;
    _getTableStream(tag: string): { readBuffer(length: number): Uint8Array };
  }
  export function create(file: Buffer): Font;
}
