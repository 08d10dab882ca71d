import { execFile } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { Page } from 'playwright-core';
import sharp from 'sharp';

const run = promisify(execFile);

/** Papers in points, as a reader of PDFs tells them. */
export const paperSizes = { a4: [595, 842], letter: [612, 792] } as const;

export interface Printed {
  pages: number;
  /** Width and height of the first page in points. */
  size: [number, number];
  text: string;
  /** Least height of a letter in points: of its font, not of the letter itself. */
  leastLetter: number;
  /** Mean of all dots and the darkest of them, 0 black to 255 white, and how far the colours are from grey. */
  ink: { mean: number; darkest: number; colour: number };
  file: string;
}

/** Prints a page as a keeper's printer gets it, with margins of a usual printer unless the page has a size of its own. */
export async function printPage(
  page: Page,
  folder: string,
  name: string,
  paper: 'a4' | 'letter' = 'a4',
): Promise<Printed> {
  const file = join(folder, `${name}.pdf`);
  const [width, height] = paperSizes[paper];
  const margin = '10mm';
  await writeFile(
    file,
    await page.pdf({
      width: `${width / 72}in`,
      height: `${height / 72}in`,
      preferCSSPageSize: true,
      margin: { top: margin, right: margin, bottom: margin, left: margin },
    }),
  );
  return readPdf(file);
}

/** What a reader of PDFs finds in a file. */
export async function readPdf(file: string): Promise<Printed> {
  const { stdout: info } = await run('pdfinfo', [file]);
  const [, pages = '', width = '', height = ''] =
    /Pages:\s+(\d+)[\s\S]*Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(info) ?? [];
  const { stdout: text } = await run('pdftotext', ['-layout', file, '-'], { maxBuffer: 2 ** 28 });
  const { stdout: boxes } = await run('pdftotext', ['-bbox', file, '-'], { maxBuffer: 2 ** 28 });
  const heights = [...boxes.matchAll(/yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)"/g)].map(
    ([, top, bottom]) => Number(bottom) - Number(top),
  );
  const picture = file.replace(/\.pdf$/, '');
  await run('pdftoppm', ['-r', '50', '-png', '-f', '1', '-l', '1', '-singlefile', file, picture]);
  const {
    channels: [red, green, blue],
  } = await sharp(await readFile(`${picture}.png`)).stats();
  const [r, g, b] = [red?.mean ?? 0, green?.mean ?? 0, blue?.mean ?? 0];
  return {
    pages: Number(pages),
    size: [Math.round(Number(width)), Math.round(Number(height))],
    text,
    // the box of a font of this house is 1.24 times as high as its letters are large
    leastLetter: Math.min(...heights) / 1.24,
    ink: { mean: r, darkest: red?.min ?? 255, colour: Math.max(Math.abs(r - g), Math.abs(r - b)) },
    file,
  };
}
