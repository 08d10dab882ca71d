import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import jsQR from 'jsqr';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SheetView } from '../../../api/selling/sheets/sheets.view.ts';
import { dateInWords } from '../../../shared/date-words.ts';
import type { SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { asBytes, documentIn, fileOf, foundSeller, issue, tokenOf } from './sheet-world.ts';

const run = promisify(execFile);
const hasReader = (process.env['PATH'] ?? '').split(':').some((folder) => existsSync(join(folder, 'pdftotext')));

let api: TestApi;
let folder: string;
let sheet: SheetView;
let said: SheetDocument;
let file: string;

/** As the text is read: breaks of lines are spaces, thin and fixed ones are plain. */
const asRead = (text: string): string => text.replace(/\s+/gu, ' ');

describe.skipIf(!hasReader)('a sheet on paper', () => {
  beforeAll(async () => {
    api = await startApi({ publicUrl: 'https://register.example.org' });
    folder = await mkdtemp(join(tmpdir(), 'linekeeper-sheet-'));
    file = join(folder, 'sheet.pdf');
    const seller = await foundSeller(api, 'Ø. Ambleside');
    const [one, two] = seller.froglets;
    await seller.make.photograph({ individualId: one?.id ?? '' });
    const [stray] = await seller.make.individuals({ speciesId: seller.speciesId, visibility: 'private', sex: 'male' });
    const mixed = await seller.make.clutch({
      sires: [{ individualId: seller.parents[0]?.id }, { individualId: stray?.id }],
      dams: [{ individualId: seller.parents[1]?.id }],
      laid: '2022-05-01',
    });
    const [third] = await seller.make.offspring(mixed.id, { count: 1 });
    sheet = await issue(seller.keeper.http, [one?.id ?? '', two?.id ?? '', third?.id ?? '']);
    said = documentIn(await fileOf(seller.keeper.http, sheet.id));
    const answer = await seller.keeper.http
      .get(`/api/v1/provenance-sheets/${sheet.id}/paper`)
      .buffer(true)
      .parse(asBytes)
      .expect(200);
    expect(answer.headers['content-type']).toBe('application/pdf');
    await writeFile(file, answer.body as Buffer);
    const look = process.env['LOOK_AT'];
    if (look) await writeFile(join(look, 'provenance-sheet.pdf'), answer.body as Buffer);
  });

  afterAll(async () => {
    await api.close();
    await rm(folder, { recursive: true, force: true });
  });

  it('says, read by another program, what the signed file says', async () => {
    const { stdout } = await run('pdftotext', ['-raw', '-enc', 'UTF-8', file, '-']);
    const text = asRead(stdout);
    // words that stand at the end of a line are joined with what follows by one space
    const has = (part: string): void =>
      expect(text.replaceAll(' ', ''), part).toContain(asRead(part).replaceAll(' ', ''));
    for (const part of [
      said.number,
      said.issued.slice(0, 10),
      said.lookUp,
      sheet.keyId,
      said.keeper ?? '-',
      ...said.cautions,
    ])
      has(part);
    for (const animal of said.animals) {
      for (const part of [animal.number, animal.species, animal.label.inWords, animal.line ?? '-']) has(part);
      has(`Hatched: ${animal.hatched === null ? 'not recorded' : dateInWords(animal.hatched)}.`);
      has(`Inbreeding: ${Number((100 * animal.inbreeding.expected).toFixed(2))} %`);
      has(`depth ${animal.depth}, all ancestors known over ${animal.fullDepth}`);
      for (const { sha256 } of animal.photographs) has(sha256);
    }
    for (const { number, line, isPrivate } of said.ancestors) {
      has(number ?? 'private animal');
      if (!isPrivate) has(line ?? '-');
    }
    expect(said.ancestors.some(({ isPrivate }) => isPrivate)).toBe(true);
    for (const { title, claims } of said.sources)
      for (const part of [title, ...claims.map(({ because }) => because)]) has(part);
    has('private animal 50 %');
  });

  it('is tagged, with the chart and the code described, and embeds its fonts', async () => {
    const { stdout: info } = await run('pdfinfo', [file]);
    expect(info).toMatch(/Tagged:\s+yes/u);
    expect(info).toContain(`Provenance sheet ${said.number}`);
    const { stdout: structure } = await run('pdfinfo', ['-struct', file]);
    expect(structure).toMatch(/Figure/u);
    expect(structure).toMatch(/Table/u);
    const { stdout: fonts } = await run('pdffonts', [file]);
    const rows = fonts.trim().split('\n').slice(2);
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) expect(row).toMatch(/\s(yes)\s+(yes|no)\s+(yes|no)\s+\d+\s+\d+$/u);
  });

  it('carries a code that leads to its public page', async () => {
    await run('pdftoppm', ['-r', '200', '-f', '1', '-l', '1', '-png', file, join(folder, 'page')]);
    const [page = ''] = (await run('ls', [folder])).stdout.split('\n').filter((name) => name.endsWith('.png'));
    const { data, info } = await sharp(join(folder, page)).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
    const found = jsQR.default(new Uint8ClampedArray(data), info.width, info.height);
    expect(found?.data).toBe(said.lookUp);
  });

  it('is given to whoever has its address, as long as its file is', async () => {
    const path = `/api/v1/sheets/${tokenOf(sheet)}/paper`;
    await api.stranger.get(path).expect(200);
    await api.http
      .post(`/api/v1/provenance-sheets/${sheet.id}/revocation`)
      .set('If-Match', '*')
      .send({ reason: 'mixed up' })
      .expect(201);
    await api.stranger.get(path).expect(410);
  });
});
