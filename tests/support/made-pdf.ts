import { deflateSync } from 'node:zlib';

/** What a PDF of the tests is made of, beside its one empty page. */
interface PdfParts {
  /** Objects as they stand in the file, from number 4 on. */
  readonly objects?: readonly (string | Buffer)[];
  /** What stands in the catalogue besides. */
  readonly catalogue?: string;
  /** What stands in the trailer besides. */
  readonly trailer?: string;
  /** What stands before the header, and after the end. */
  readonly before?: string | Buffer;
  readonly after?: string | Buffer;
}

/** A PDF of one empty page, with a cross-reference table that is right. */
export function madePdf(parts: PdfParts = {}): Buffer {
  const { objects = [], catalogue = '', trailer = '', before = '', after = '' } = parts;
  const all = [
    `<</Type/Catalog/Pages 2 0 R${catalogue}>>`,
    '<</Type/Pages/Kids[3 0 R]/Count 1>>',
    '<</Type/Page/Parent 2 0 R/MediaBox[0 0 200 100]>>',
    ...objects,
  ];
  const chunks: Buffer[] = [Buffer.from('%PDF-1.7\n%\xe2\xe3\xcf\xd3\n', 'latin1')];
  const places: number[] = [];
  for (const [place, object] of all.entries()) {
    places.push(length(chunks));
    chunks.push(Buffer.from(`${place + 1} 0 obj\n`), Buffer.from(object), Buffer.from('\nendobj\n'));
  }
  const start = length(chunks);
  const rows = places.map((place) => `${String(place).padStart(10, '0')} 00000 n \n`).join('');
  const size = all.length + 1;
  chunks.push(
    Buffer.from(
      `xref\n0 ${size}\n0000000000 65535 f \n${rows}trailer\n<</Size ${size}/Root 1 0 R${trailer}>>\nstartxref\n${start}\n%%EOF\n`,
    ),
  );
  return Buffer.concat([Buffer.from(before), ...chunks, Buffer.from(after)]);
}

/** A stream object that packs others; `filter` and `data` as they are to stand in the file. */
export function packed(objects: string, dictionary?: string, data?: Buffer): Buffer {
  const header = '9 0 ';
  const bytes = data ?? deflateSync(Buffer.from(header + objects));
  const words = dictionary ?? `/Type/ObjStm/N 1/First ${header.length}/Filter/FlateDecode`;
  return Buffer.concat([
    Buffer.from(`<<${words}/Length ${bytes.length}>>\nstream\n`),
    bytes,
    Buffer.from('\nendstream'),
  ]);
}

const length = (chunks: readonly Buffer[]): number => chunks.reduce((sum, chunk) => sum + chunk.length, 0);
