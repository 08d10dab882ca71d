import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LineAuditView } from '../../../api/lineage/audit/line-audit.view.ts';
import { percent } from '../../../api/provenance/flag-words.ts';
import { bodyOf } from '../../support/answer.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { writeSketch, type RegisterSketch, type SketchIds } from '../../support/register-sketch.ts';

const certain = (individual: number) => [{ individual, probability: 1 }];
/** A herd so large that lists of it are cut. */
const herd = 60;

/** Founders of three sources, blood of another line, an unknown sire, and many young; names with letters of several alphabets. */
const sketch: RegisterSketch = {
  lines: [{ name: 'Quebrada Łódź × Río Ñandú' }, { name: 'Жаба φ' }],
  sources: [
    { label: 'Quebrada Łódź × Río Ñandú', date: '1994-03-01' },
    { label: 'Otra → aquí', date: '1996-05-01' },
  ],
  clutches: [
    { sires: certain(0), dams: certain(1) },
    { sires: certain(-1), dams: certain(2) },
  ],
  individuals: [
    { code: 'Ñ-1', source: 0, sex: 'male', line: 0, status: 'died' },
    { code: 'Ж-2', source: 1, sex: 'female', line: 1 },
    { code: 'D-3', source: 0, sex: 'female', line: 0 },
    ...Array.from({ length: herd }, (_, at) => ({ code: `young ${at}`, clutch: at % 2, line: 0 })),
  ],
};

/** The text of a PDF as poppler reads it, in reading order, without breaks of lines. */
async function textOf(paper: Buffer): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'line-audit-'));
  try {
    await writeFile(join(folder, 'paper.pdf'), paper);
    const { stdout } = await promisify(execFile)('pdftotext', [
      '-raw',
      '-enc',
      'UTF-8',
      join(folder, 'paper.pdf'),
      '-',
    ]);
    return stdout.replace(/\s+/gu, ' ');
  } finally {
    await rm(folder, { recursive: true });
  }
}

const hasReader = (process.env['PATH'] ?? '').split(':').some((folder) => existsSync(join(folder, 'pdftotext')));

/** As the text is read: the breaks of lines are spaces, and thin spaces are plain. */
const asRead = (text: string): string => text.replace(/\s+/gu, ' ');

describe('the audit of a line on paper', () => {
  let api: TestApi;
  let ids: SketchIds;
  const paperOf = async (http: TestApi['http']): Promise<Buffer> => {
    const answer = await http.get(`/api/v1/lines/${ids.lines[0]}/audit.pdf`).buffer().expect(200);
    const look = process.env['LOOK_AT'];
    if (look) await writeFile(join(look, 'line-audit.pdf'), answer.body as Buffer);
    return answer.body as Buffer;
  };

  beforeAll(async () => {
    api = await startApi();
    ids = await writeSketch(api.dataSource, sketch);
    await api.dataSource.query(
      `update individual set hatched = '2003', hatched_earliest = '2003-01-01', hatched_latest = '2003-12-31' where clutch_id is not null`,
    );
  });
  afterAll(() => api.close());

  it('is a download of its own type that no page can show as a part of itself', async () => {
    const answer = await api.http.get(`/api/v1/lines/${ids.lines[0]}/audit.pdf`).buffer().expect(200);
    expect(answer.headers).toMatchObject({
      'content-type': 'application/pdf',
      'content-disposition': 'attachment; filename="line-audit.pdf"',
      'x-content-type-options': 'nosniff',
      'cache-control': 'no-store',
    });
    expect((answer.body as Buffer).subarray(0, 8).toString('latin1')).toBe('%PDF-1.7');
    await api.http.get(`/api/v1/lines/${ids.sources[0]}/audit.pdf`).expect(404);
    await api.stranger.get(`/api/v1/lines/${ids.lines[0]}/audit.pdf`).expect(401);
  });

  it('is written for A4, or for Letter where that is asked for', async () => {
    const sizes = async (query: string): Promise<Set<string>> => {
      const answer = await api.http.get(`/api/v1/lines/${ids.lines[0]}/audit.pdf${query}`).buffer().expect(200);
      return new Set(
        [...(answer.body as Buffer).toString('latin1').matchAll(/\/MediaBox \[([\d. ]+)\]/g)].map(
          ([, box = '']) => box,
        ),
      );
    };
    expect(await sizes('')).toEqual(new Set(['0 0 595.28 841.89']));
    expect(await sizes('?paper=letter')).toEqual(new Set(['0 0 612 792']));
    await api.http.get(`/api/v1/lines/${ids.lines[0]}/audit.pdf?paper=a5`).expect(422);
  });

  it('is tagged, has a title and a language, and embeds its fonts', async () => {
    const raw = (await paperOf(api.http)).toString('latin1');
    for (const told of ['/Marked true', '/Lang (en)', '/DisplayDocTitle true']) expect(raw.includes(told)).toBe(true);
    for (const kind of ['Document', 'H1', 'H2', 'P', 'Table', 'TR', 'TH', 'TD', 'L', 'LI', 'LBody'])
      expect(new RegExp(`/S /${kind}\\b`).test(raw), kind).toBe(true);
    const fonts = raw.match(/\/BaseFont \/[^\n]+/g) ?? [];
    expect(fonts.length).toBeGreaterThan(0);
    for (const font of fonts) expect(font).toMatch(/\/BaseFont \/[A-Z]{6}\+/);
    expect(/\/JavaScript|\/OpenAction|\/Launch/.test(raw)).toBe(false);
  });

  it.skipIf(!hasReader)('says what the page says: members, flags, figures, names in any alphabet', async () => {
    const audit = bodyOf<LineAuditView>(await api.http.get(`/api/v1/lines/${ids.lines[0]}/audit`).expect(200));
    const text = await textOf(await paperOf(api.http));
    expect(text).toContain('Audit of Quebrada Łódź × Río Ñandú');
    expect(text).toContain(`${audit.members.living} living of ${audit.members.all} members`);
    expect(text).toContain(`revision ${audit.asOf.revision}`);
    expect(text).toMatch(/Page 1 of \d+/);
    expect(audit.flags.length).toBeGreaterThan(3);
    for (const { clearedBy } of audit.flags) expect(text).toContain(asRead(clearedBy));
    for (const { causes } of audit.flags) for (const { name } of causes.slice(0, 3)) expect(text).toContain(name);
    for (const { through, line, share } of audit.outsideBlood)
      expect(text).toContain(asRead(`${through.code} (${through.number}) ${line} 2003 ${percent(share)}`));
    const today = audit.now;
    const figures = [today.meanInbreeding, today.geneDiversity].map((value) => percent(value ?? NaN)).join(' ');
    expect(text).toContain(
      asRead(
        `today ${today.animals} ${figures} ${today.founderGenomeEquivalents?.toFixed(1)} ${today.effectiveFounders?.toFixed(1)}`,
      ),
    );
    for (const { question, settles } of audit.questions.items)
      expect(text).toContain(asRead(`${question} ${percent(settles)}`));
    for (const caution of audit.cautions) expect(text).toContain(asRead(caution));
    expect(text).toContain('“Otra -> aquí”');
    expect(text).not.toContain('?d');
  });

  it.skipIf(!hasReader)('cuts long lists and says how many more there are', async () => {
    const audit = bodyOf<LineAuditView>(await api.http.get(`/api/v1/lines/${ids.lines[0]}/audit`).expect(200));
    expect(audit.traced.outrunning).toBe(herd + 1);
    const text = await textOf(await paperOf(api.http));
    expect(text).toContain(`And ${herd + 1 - 40} more animals; the CSV has all.`);
  });

  it.skipIf(!hasReader)('tells what a registrar said to a flag, with the reason', async () => {
    const reason = 'The importer wrote both names on one box.';
    const body = { lineId: ids.lines[0], code: 'mixed-labels', reason };
    await api.http.post('/api/v1/acknowledgements').send(body).expect(201);
    expect(await textOf(await paperOf(api.http))).toContain(`: “${reason}”`);
  });

  it.skipIf(!hasReader)('conceals what whoever asks may not see', async () => {
    await api.dataSource.query(`update individual set visibility = 'private' where code = 'Ж-2'`);
    const other = await api.addKeeper('Somebody else');
    const text = await textOf(await paperOf(other.http));
    expect(text).not.toContain('Ж-2');
    expect(text).not.toContain('Жаба');
    expect(text).toContain('private animal 1');
  });
});
