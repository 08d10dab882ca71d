import { deflateSync } from 'node:zlib';
import PDFDocument from 'pdfkit';
import { describe, expect, it } from 'vitest';
import { faultOfPdf } from '../../../api/provenance/files/pdf-check.ts';
import { madeArchive } from '../../support/made-archive.ts';
import { madePdf, packed } from '../../support/made-pdf.ts';

async function written(options: PDFKit.PDFDocumentOptions): Promise<Buffer> {
  const document = new PDFDocument(options);
  const chunks: Buffer[] = [];
  document.on('data', (chunk: Buffer) => chunks.push(chunk));
  const ended = new Promise((resolve) => document.on('end', resolve));
  document.text('Importer’s list of 12 April 1996: twelve animals, “Quebrada Sonora”.');
  document.addPage().text('A second page').end();
  await ended;
  return Buffer.concat(chunks);
}

const odd = '/Type/ObjStm/N 1/First 4/Filter/ASCIIHexDecode';

const action = '<</S/JavaScript/JS(app.alert(1))>>';

describe('a paper', () => {
  it('is taken, as programs write it', async () => {
    expect(faultOfPdf(await written({ compress: true }))).toBeNull();
    expect(faultOfPdf(await written({ compress: false, pdfVersion: '1.4' }))).toBeNull();
    expect(faultOfPdf(madePdf())).toBeNull();
  });

  it('is taken with packed objects, with a first view, with a link, and after it was added to', () => {
    expect(faultOfPdf(madePdf({ objects: [packed('<</Type/Font/BaseFont/Courier>>')] }))).toBeNull();
    expect(faultOfPdf(madePdf({ catalogue: '/OpenAction[3 0 R/Fit]' }))).toBeNull();
    expect(faultOfPdf(madePdf({ objects: ['<</S/URI/URI(https://example.org/)>>'] }))).toBeNull();
    const once = madePdf();
    const added = `4 0 obj\n<<>>\nendobj\nxref\n4 1\n${String(once.length).padStart(10, '0')} 00000 n \ntrailer\n<</Size 5/Root 1 0 R/Prev 200>>\nstartxref\n${once.length + 22}\n%%EOF`;
    expect(faultOfPdf(Buffer.concat([once, Buffer.from(added)]))).toBeNull();
  });
});

const hostile: [what: string, bytes: Buffer, told: RegExp][] = [
  ['does not begin at its first byte', madePdf({ before: 'GIF89a\n' }), /begin/],
  ['ends too early', madePdf().subarray(0, -12), /ends too early/],
  ['has a page of a browser behind its end', madePdf({ after: '<html><script>alert(1)</script>' }), /behind its end/],
  ['has an archive behind its end', madePdf({ after: madeArchive('a.class', 'x') }), /behind its end/],
  ['is an archive that ends in a comment', madePdf({ trailer: madeArchive('a', 'b').toString('latin1') }), /archive/],
  ['is an archive inside a stream', madePdf({ objects: [packed('', '/N 1', madeArchive('a.class', 'x'))] }), /archive/],
  ['is a page in a comment', madePdf({ objects: ['%<script>alert(1)</script>\n<<>>'] }), /web page/],
  ['is a drawing with a script', madePdf({ objects: ['(<SVG onload=alert(1)>)'] }), /web page/],
  ['runs a script when it opens', madePdf({ catalogue: `/OpenAction ${action}` }), /script/],
  ['hides the name of a script', madePdf({ catalogue: '/OpenAction<</S/J#61vaScript/JS(1)>>' }), /script/],
  ['hides all of the name', madePdf({ catalogue: `/AA<</O<</S/${hidden('JavaScript')}/JS(1)>>>>` }), /script/],
  ['packs a script', madePdf({ objects: [packed(action)] }), /script/],
  ['packs a hidden script', madePdf({ objects: [packed('<</S/#4aavaScript/JS(1)>>')] }), /script/],
  ['packs a script and says nothing of it', madePdf({ objects: [packed(action, '/Filter/FlateDecode')] }), /script/],
  ['packs a script with a wrong sum', madePdf({ objects: [packed('', undefined, wrongSum(action))] }), /script/],
  ['packs its objects twice', madePdf({ objects: [twice(action)] }), /cannot be checked/],
  ['packs its objects in an odd way', madePdf({ objects: [packed('', odd, Buffer.from('>'))] }), /cannot be checked/],
  ['packs its objects by rows', madePdf({ objects: [byRows()] }), /cannot be checked/],
  ['packs a bomb', madePdf({ objects: [packed('0 '.repeat(40_000_000))] }), /cannot be checked/],
  ['is locked', madePdf({ trailer: '/Encrypt 4 0 R', objects: ['<</Filter/Standard/V 2>>'] }), /locked/],
  ['starts a program', madePdf({ objects: ['<</S/Launch/F(cmd.exe)>>'] }), /starts a program/],
  ['holds a file', madePdf({ catalogue: '/Names<</EmbeddedFiles<</Names[]>>>>' }), /another file/],
  ['holds a file under another name', madePdf({ objects: ['<</Type/F /EF <</F 5 0 R>>>>'] }), /another file/],
  ['sends a form away', madePdf({ objects: ['<</S/SubmitForm/F(http://x)>>'] }), /sends a form/],
  ['holds a form with a program', madePdf({ catalogue: '/AcroForm<</XFA 4 0 R>>' }), /form with a program/],
  ['holds a film', madePdf({ objects: ['<</Subtype/RichMedia>>'] }), /film/],
  ['has no object', Buffer.from('%PDF-1.7\nstartxref\n0\n%%EOF'), /no page/],
  [
    'is of a version that there is not',
    Buffer.from(madePdf().toString('latin1').replace('1.7', '9.9'), 'latin1'),
    /begin/,
  ],
];

function hidden(name: string): string {
  return [...name].map((letter) => `#${letter.charCodeAt(0).toString(16)}`).join('');
}

function wrongSum(objects: string): Buffer {
  const bytes = deflateSync(Buffer.from(`9 0 ${objects}`));
  bytes.writeUInt32BE(0, bytes.length - 4);
  return bytes;
}

function twice(objects: string): Buffer {
  const data = deflateSync(deflateSync(Buffer.from(`9 0 ${objects}`)));
  return packed('', '/Type/ObjStm/N 1/First 4/Filter[/FlateDecode/FlateDecode]', data);
}

function byRows(): Buffer {
  return packed('<<>>', '/Type/ObjStm/N 1/First 4/Filter/FlateDecode/DecodeParms<</Predictor 12>>');
}

describe('a PDF is refused that', () => {
  it.each(hostile)('%s', (_, bytes, told) => {
    expect(faultOfPdf(bytes)).toMatch(told);
  });

  it('has very many parts, within a second or two', () => {
    const parts = Buffer.concat([madePdf().subarray(0, 100), Buffer.from('stream\n'.repeat(2_000_000)), madePdf()]);
    const begun = performance.now();
    expect(faultOfPdf(parts)).toMatch(/too many parts|cannot be checked/);
    expect(performance.now() - begun).toBeLessThan(3000);
  });
});

it('no byte of a paper can be damaged so that the check fails instead of answering', () => {
  const paper = madePdf({ objects: [packed('<</Type/Font>>')] });
  for (let at = 0; at < paper.length; at++) {
    const damaged = Buffer.from(paper);
    damaged[at] = 255 - (damaged[at] ?? 0);
    const fault = faultOfPdf(damaged);
    expect(fault === null || fault.length > 20).toBe(true);
  }
});
