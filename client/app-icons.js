// Draws the icons of the installed app from the mark, before the client is built: plain ones, and one with a border that systems may
// cut to any shape (maskable: all that counts lies within the middle four fifths).
import { mkdir, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

const at = (path) => fileURLToPath(new URL(path, import.meta.url));

const mark = await readFile(at('static/mark.svg'), 'utf8');
const ground = /<rect [^>]*fill="(#[\da-f]{6})"/.exec(mark)?.[1];
if (ground === undefined) throw new Error('client/static/mark.svg must begin with a rect that paints its ground');

/** The mark as PNG, `share` of the side wide, on its own ground. */
async function draw(name, side, share = 1) {
  const size = Math.round(side * share);
  const edge = Math.floor((side - size) / 2);
  const rest = side - size - edge;
  await sharp(Buffer.from(mark), { density: (72 * size) / 36 })
    .resize(size, size)
    .extend({ top: edge, left: edge, bottom: rest, right: rest, background: ground })
    .flatten({ background: ground })
    .png({ compressionLevel: 9, palette: true })
    .toFile(at(`static/icons/${name}.png`));
}

await mkdir(at('static/icons'), { recursive: true });
await draw('mark-192', 192, 0.86);
await draw('mark-512', 512, 0.86);
await draw('mark-maskable-512', 512, 0.64);
await draw('mark-touch-180', 180, 0.8);
