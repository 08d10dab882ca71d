import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import type { Response } from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApi, type TestApi } from '../../support/api.ts';
import { bodyOf, type ProblemBody } from '../../support/answer.ts';
import { Factory } from '../../support/factories.ts';
import { madeArchive } from '../../support/made-archive.ts';
import { madePdf, packed } from '../../support/made-pdf.ts';
import { fromPhone, movingWebp, picture, pngThatClaims } from '../../support/made-pictures.ts';

let api: TestApi;
let make: Factory;

beforeAll(async () => {
  api = await startApi({ documentBytes: 300_000, pictureBytes: 400_000 });
  make = new Factory(api.http);
});

afterAll(() => api.close());

/** Names of all files that are stored. */
async function stored(): Promise<string[]> {
  const all = await readdir(api.filesDir, { recursive: true, withFileTypes: true }).catch(() => []);
  return all.flatMap((entry) => (entry.isFile() ? [join(entry.parentPath, entry.name)] : [])).sort();
}

type Make = () => Promise<Buffer> | Buffer;
type Hostile = [what: string, status: number, told: RegExp, name: string, make: Make];

const svg = '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>';
const page = '<!doctype html><script>alert(1)</script>';
const phar = '<?php system($_GET["c"]); __HALT_COMPILER(); ?>';
const noise = Buffer.from(Array.from({ length: 500_000 }, (_, at) => (at * 7919) % 251));

/** What is neither a paper nor a picture, or would be more than that. */
const refusedAnywhere: Hostile[] = [
  ['a program with the name of a picture', 415, /JPEG, PNG or WebP/, 'frog.jpg', () => Buffer.from('MZ\x90\0program')],
  ['a page with the name of a picture', 415, /JPEG/, 'frog.png', () => Buffer.from(page)],
  ['a page with the name of a paper', 415, /JPEG/, 'permit.pdf', () => Buffer.from(page)],
  ['a drawing with a script', 415, /JPEG/, 'frog.svg', () => Buffer.from(svg)],
  ['a drawing with a script, as a picture', 415, /JPEG/, 'frog.webp', () => Buffer.from(`<?xml version="1.0"?>${svg}`)],
  ['an archive', 415, /application\/zip/, 'frog.jpg', () => madeArchive('frog.jpg', 'x')],
  ['a script for the server', 415, /JPEG/, 'frog.jpg.php', () => Buffer.from(phar)],
  ['a moving GIF', 415, /image\/gif/, 'frog.gif', () => picture().gif().toBuffer()],
  ['a TIFF', 415, /image\/tiff/, 'frog.tif', () => picture().tiff().toBuffer()],
  ['an HEIC of a phone', 415, /Save the picture as JPEG/, 'IMG_1.HEIC', heic],
  ['a picture that moves', 422, /several pictures/, 'frog.webp', movingWebp],
  ['a picture that claims a width beyond all', 422, /60 million/, 'frog.png', () => pngThatClaims(65_000, 65_000)],
  ['a bomb', 422, /60 million/, 'b.png', () => pngThatClaims(30_000, 30_000, deflateSync(Buffer.alloc(9_000_000)))],
  ['half a photograph', 422, /ends too early/, 'frog.jpg', async () => (await fromPhone()).subarray(0, 700)],
  [
    'the head of a photograph before a script',
    422,
    /damaged/,
    'a.jpg',
    async () => mixed((await fromPhone()).subarray(0, 400), page),
  ],
  ['nothing', 422, /empty/, 'frog.jpg', () => Buffer.alloc(0)],
  ['a file that is too large', 413, /0\.4 MB at most/, 'frog.jpg', () => noise],
];

const refusedPapers: Hostile[] = [
  [
    'a paper that is an archive as well',
    422,
    /behind its end/,
    'permit.pdf',
    () => mixed(madePdf(), madeArchive('a', 'b')),
  ],
  ['a paper that is a page as well', 422, /behind its end/, 'permit.pdf', () => mixed(madePdf(), page)],
  ['a paper behind a page', 415, /PDF/, 'permit.pdf', () => mixed(page, madePdf())],
  [
    'a paper that runs a script',
    422,
    /script/,
    'permit.pdf',
    () => madePdf({ catalogue: '/OpenAction<</S/JavaScript/JS(1)>>' }),
  ],
  [
    'a paper that packs a script',
    422,
    /script/,
    'permit.pdf',
    () => madePdf({ objects: [packed('<</S/JavaScript/JS(1)>>')] }),
  ],
  [
    'a paper that holds a file',
    422,
    /another file/,
    'permit.pdf',
    () => madePdf({ catalogue: '/Names<</EmbeddedFiles 4 0 R>>' }),
  ],
  ['a locked paper', 422, /locked/, 'permit.pdf', () => madePdf({ trailer: '/Encrypt<</Filter/Standard>>' })],
  ['half a paper', 422, /ends too early/, 'permit.pdf', () => madePdf().subarray(0, 200)],
  [
    'a paper that is too large',
    413,
    /0\.3 MB at most/,
    'p.pdf',
    () => madePdf({ objects: [mixed('(', noise.subarray(0, 320_000), ')')] }),
  ],
];

const mixed = (...parts: (Buffer | string)[]): Buffer => Buffer.concat(parts.map((part) => Buffer.from(part)));

/** The beginning of an HEIC, as phones write it. */
function heic(): Buffer {
  const brand = mixed('\0\0\0\x18ftypheic\0\0\0\0mif1heic', Buffer.alloc(200));
  return brand;
}

const sendPhotograph = async (bytes: Buffer, name: string): Promise<Response> => {
  const { id } = await make.individual();
  return api.http.post('/api/v1/photographs').field({ individualId: id, view: 'back' }).attach('file', bytes, name);
};

const sendPaper = async (bytes: Buffer, name: string): Promise<Response> => {
  const { id } = await make.evidence();
  return api.http.put(`/api/v1/evidence/${id}/file`).set('If-Match', '*').attach('file', bytes, name);
};

/** A bare body, under the type that a sender would like to be believed. */
const sendBody = async (bytes: Buffer): Promise<Response> => {
  const { id } = await make.evidence();
  return api.http.put(`/api/v1/evidence/${id}/file`).set('If-Match', '*').type('application/pdf').send(bytes);
};

async function expectRefused(
  send: typeof sendPaper,
  [, status, told, name, made]: Hostile,
  pointer: string,
): Promise<void> {
  const before = await stored();
  const answer = await send(await made(), name);
  expect(answer.status, answer.text).toBe(status);
  expect(answer.type).toBe('application/problem+json');
  const problem = bodyOf<ProblemBody>(answer);
  expect(problem.detail).toMatch(told);
  expect(problem.errors).toEqual([{ pointer, detail: problem.detail }]);
  // advice on what to do follows what is wrong
  expect(problem.detail.split('. ').length).toBeGreaterThan(1);
  expect(await stored()).toEqual(before);
}

describe('as a photograph is refused', () => {
  it.each([...refusedAnywhere, ['a paper', 415, /pdf/, 'permit.pdf', () => madePdf()] satisfies Hostile])(
    '%s',
    async (...hostile) => {
      await expectRefused(sendPhotograph, hostile, '/file');
    },
  );
});

describe('as evidence is refused', () => {
  it.each([...refusedAnywhere, ...refusedPapers])('%s', async (...hostile) => {
    await expectRefused(sendPaper, hostile, '/file');
  });

  it.each([...refusedAnywhere, ...refusedPapers])('%s, as the whole body', async (...hostile) => {
    await expectRefused(sendBody, hostile, '');
  });
});

describe('what is taken', () => {
  it('of a phone tells no position, whatever is looked for in the stored bytes', async () => {
    const sent = await fromPhone();
    expect(sent.includes('SecretCamera')).toBe(true);
    const { id } = bodyOf<{ id: string }>(await sendPhotograph(sent, 'IMG_20210504.jpg'));
    const body = pictureOf(await api.http.get(`/api/v1/photographs/${id}/file`).expect(200));
    const kept = body;
    for (const trace of ['Exif', 'GPS', 'SecretCamera', 'secret', 'xmpmeta', 'IMG_'])
      expect(kept.includes(trace), trace).toBe(false);
    expect(await sharp(kept).metadata()).toMatchObject({ width: 80, height: 120 });
    const paper = await sendPaper(sent, 'permit.jpg');
    expect(paper.status).toBe(200);
    for (const path of await stored()) expect((await readFile(path)).includes('secret')).toBe(false);
  });

  it('of what is a picture and an archive is the picture alone', async () => {
    const both = mixed(await picture().jpeg().toBuffer(), madeArchive('Evil.class', 'program'));
    const { id } = bodyOf<{ id: string }>(await sendPhotograph(both, 'frog.jpg').then(taken));
    const body = pictureOf(await api.http.get(`/api/v1/photographs/${id}/file`).expect(200));
    for (const trace of ['PK\x05\x06', 'PK\x03\x04', 'Evil']) expect(body.includes(trace)).toBe(false);
  });

  it.each([
    ['a JPEG of four inks', () => picture().toColourspace('cmyk').jpeg().toBuffer()],
    ['a PNG of 16 bits', () => picture().toColourspace('rgb16').png().toBuffer()],
    ['a WebP', () => picture().webp().toBuffer()],
    ['an AVIF', () => picture().avif().toBuffer()],
  ])('%s can be looked at by any browser', async (_, made) => {
    const { id } = bodyOf<{ id: string }>(await sendPhotograph(await made(), 'frog.exe').then(taken));
    const answer = await api.http.get(`/api/v1/photographs/${id}/file`).expect(200);
    expect(answer.type).toBe('image/jpeg');
    expect(await sharp(pictureOf(answer)).metadata()).toMatchObject({ format: 'jpeg', space: 'srgb', depth: 'uchar' });
  });

  it.each([
    '../../../etc/passwd',
    'C:\\frogs\\a.jpg',
    'a\0.jpg',
    'a"; filename="b.html',
    'frog\r\nX-Evil: 1.jpg',
    '',
    '.',
    '…🐸'.repeat(80),
  ])('has a name of ours, and not %j', async (name) => {
    // built by hand, since a decent sender would not write such a name
    const edge = 'edge-of-the-part';
    const { id: individualId } = await make.individual();
    const field = (what: string, value: string): string =>
      `--${edge}\r\nContent-Disposition: form-data; name="${what}"\r\n\r\n${value}\r\n`;
    const head = `--${edge}\r\nContent-Disposition: form-data; name="file"; filename="${name}"\r\nContent-Type: text/html\r\n\r\n`;
    const form = mixed(
      field('individualId', individualId),
      field('view', 'back'),
      head,
      await picture().jpeg().toBuffer(),
      `\r\n--${edge}--\r\n`,
    );
    const answer = await api.http.post('/api/v1/photographs').type(`multipart/form-data; boundary=${edge}`).send(form);
    if (answer.status !== 201) {
      // a form that cannot be read is told so
      expect([400, 422]).toContain(answer.status);
      return;
    }
    const { headers } = await api.http.get(`/api/v1/photographs/${bodyOf<{ id: string }>(answer).id}/file`).expect(200);
    expect(headers['content-disposition']).toMatch(/^inline; filename="animal-\d+-[\dX]\.jpg"$/);
    expect(headers['content-type']).toBe('image/jpeg');
    expect((await stored()).every((path) => /^[0-9a-f]{64}$/.test(path.split('/').at(-1) ?? ''))).toBe(true);
  });
});

/** The bytes of a picture that was given. */
const pictureOf = (answer: Response): Buffer => answer.body as Buffer;

const taken = (answer: Response): Response => {
  expect(answer.status, answer.text).toBe(201);
  return answer;
};

describe('a form', () => {
  it.each([
    [
      'without a file',
      (id: string) => api.http.post('/api/v1/photographs').field({ individualId: id, view: 'back' }),
      422,
    ],
    [
      'with two files',
      (id: string) =>
        api.http
          .post('/api/v1/photographs')
          .field({ individualId: id, view: 'back' })
          .attach('file', Buffer.from('a'), 'a')
          .attach('file', Buffer.from('b'), 'b'),
      422,
    ],
    [
      'with the file under another name',
      (id: string) =>
        api.http
          .post('/api/v1/photographs')
          .field({ individualId: id, view: 'back' })
          .attach('image', Buffer.from('a'), 'a'),
      422,
    ],
    [
      'with an unknown field',
      (id: string) =>
        api.http
          .post('/api/v1/photographs')
          .field({ individualId: id, view: 'back', keeperId: id })
          .attach('file', madePdf(), 'a'),
      422,
    ],
    [
      'without a view',
      (id: string) => api.http.post('/api/v1/photographs').field({ individualId: id }).attach('file', madePdf(), 'a'),
      422,
    ],
    [
      'that is none',
      (id: string) => api.http.post('/api/v1/photographs').send({ individualId: id, view: 'back' }),
      415,
    ],
    [
      'that breaks off',
      () => api.http.post('/api/v1/photographs').type('multipart/form-data; boundary=x').send('--x\r\nContent-Disp'),
      400,
    ],
    ['without an edge', () => api.http.post('/api/v1/photographs').type('multipart/form-data').send('x'), 400],
    [
      'that is packed',
      () =>
        api.http
          .post('/api/v1/photographs')
          .type('multipart/form-data; boundary=x')
          .set('Content-Encoding', 'gzip')
          .send('x'),
      415,
    ],
  ] as const)('%s is told what is wrong', async (_, send, status) => {
    const { id } = await make.individual();
    const before = await stored();
    const answer = await send(id);
    expect(answer.status, answer.text).toBe(status);
    expect(answer.type).toBe('application/problem+json');
    expect(bodyOf<ProblemBody>(answer).detail.length).toBeGreaterThan(20);
    expect(await stored()).toEqual(before);
  });
});
