import { create, type Font, type PathCommand } from 'fontkit';

/** Tables that are taken over as they are: names, what characters have which glyphs, and which pairs stand closer. */
const KEPT = ['cmap', 'name', 'OS/2', 'post', 'GPOS', 'GDEF'];
const COORDINATE_MOST = 32767;

/**
 * A web font (WOFF2) as plain TrueType, in its regular weight: the writer of PDF can take parts only of fonts whose outlines are stored
 * plainly. Glyphs that are put together of others become outlines of their own.
 *
 * @throws Error where it is no TrueType font
 */
export function trueTypeOf(webFont: Buffer): Buffer {
  const font = create(webFont);
  const glyphs = Array.from({ length: font.numGlyphs }, (_, id) => font.getGlyph(id));
  const outlines = glyphs.map((glyph) => outlineOf(glyph.path.commands));
  const encoded = outlines.map(encodeOutline);
  return assemble({
    ...Object.fromEntries(KEPT.flatMap((tag) => (font.directory.tables[tag] ? [[tag, tableOf(font, tag)]] : []))),
    head: patched(tableOf(font, 'head'), [[50, 1]]),
    hhea: patched(tableOf(font, 'hhea'), [[34, glyphs.length]]),
    maxp: patched(tableOf(font, 'maxp'), [
      [6, Math.max(...outlines.map((outline) => outline.flat().length))],
      [8, Math.max(...outlines.map(({ length }) => length))],
    ]),
    hmtx: Buffer.concat(glyphs.map(({ advanceWidth }, id) => shorts([advanceWidth, leastX(outlines[id] ?? [])]))),
    glyf: Buffer.concat(encoded),
    loca: offsetsOf(encoded),
  });
}

/** A corner of an outline, or what pulls a curve. */
interface Point {
  readonly x: number;
  readonly y: number;
  readonly isCorner: boolean;
}
type Outline = readonly (readonly Point[])[];

function outlineOf(commands: readonly PathCommand[]): Outline {
  const contours: Point[][] = [];
  for (const { command, args } of commands) {
    if (command === 'moveTo') contours.push([]);
    const contour = contours.at(-1);
    for (let at = 0; at + 1 < args.length; at += 2)
      contour?.push({
        x: Math.round(args[at] ?? 0),
        y: Math.round(args[at + 1] ?? 0),
        isCorner: command !== 'quadraticCurveTo' || at > 0,
      });
    if (command === 'bezierCurveTo') throw new Error('a font with cubic curves is no TrueType font');
  }
  return contours.map(withoutRepeatedEnd).filter(({ length }) => length > 0);
}

function withoutRepeatedEnd(contour: Point[]): Point[] {
  const [first, last] = [contour[0], contour.at(-1)];
  return contour.length > 1 && first?.x === last?.x && first?.y === last?.y ? contour.slice(0, -1) : contour;
}

/** A simple glyph as TrueType has it: bounds, ends of contours, a flag a point, then the steps from point to point. */
function encodeOutline(outline: Outline): Buffer {
  const points = outline.flat();
  if (points.length === 0) return Buffer.alloc(0);
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  let end = -1;
  const ends = outline.map((contour) => (end += contour.length));
  const steps = (values: readonly number[]): number[] => values.map((value, at) => value - (values[at - 1] ?? 0));
  const glyph = Buffer.concat([
    shorts([outline.length, Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys), ...ends, 0]),
    Buffer.from(points.map(({ isCorner }) => (isCorner ? 1 : 0))),
    shorts(steps(xs)),
    shorts(steps(ys)),
  ]);
  return padded(glyph);
}

const leastX = (outline: Outline): number =>
  Math.min(COORDINATE_MOST, ...outline.flat().map(({ x }) => x)) % COORDINATE_MOST;

function tableOf(font: Font, tag: string): Buffer {
  const stream = font._getTableStream(tag);
  return Buffer.from(stream.readBuffer(font.directory.tables[tag]?.length ?? 0));
}

/** Numbers of 16 bits at some places of a table. */
function patched(table: Buffer, changes: readonly (readonly [at: number, value: number])[]): Buffer {
  for (const [at, value] of changes) table.writeUInt16BE(value, at);
  return table;
}

function offsetsOf(parts: readonly Buffer[]): Buffer {
  const offsets = Buffer.alloc(4 * (parts.length + 1));
  let sum = 0;
  parts.forEach((part, at) => {
    offsets.writeUInt32BE(sum, 4 * at);
    sum += part.length;
  });
  offsets.writeUInt32BE(sum, 4 * parts.length);
  return offsets;
}

/** A font file of some tables; checksums are left out, which no reader of embedded fonts looks at. */
function assemble(tables: Readonly<Record<string, Buffer>>): Buffer {
  const tags = Object.keys(tables).sort();
  const directory = Buffer.alloc(12 + 16 * tags.length);
  directory.writeUInt32BE(0x00010000, 0);
  directory.writeUInt16BE(tags.length, 4);
  const parts: Buffer[] = [directory];
  let offset = directory.length;
  tags.forEach((tag, at) => {
    const table = tables[tag] ?? Buffer.alloc(0);
    directory.write(tag.padEnd(4), 12 + 16 * at, 'latin1');
    directory.writeUInt32BE(offset, 20 + 16 * at);
    directory.writeUInt32BE(table.length, 24 + 16 * at);
    const part = padded(table);
    parts.push(part);
    offset += part.length;
  });
  return Buffer.concat(parts);
}

const padded = (bytes: Buffer): Buffer => Buffer.concat([bytes, Buffer.alloc((4 - (bytes.length % 4)) % 4)]);

function shorts(values: readonly number[]): Buffer {
  const bytes = Buffer.alloc(2 * values.length);
  values.forEach((value, at) => bytes.writeInt16BE(value > COORDINATE_MOST ? value - 65536 : value, 2 * at));
  return bytes;
}
