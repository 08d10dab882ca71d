// Writes each text file of the built client compressed besides, so that the service packs nothing while a phone waits: Brotli, which
// browsers take by https alone, and gzip for the network of a house.
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';

const folder = fileURLToPath(new URL('build/', import.meta.url));
const [asBrotli, asGzip] = [promisify(brotliCompress), promisify(gzip)];

async function pack(path) {
  const text = await readFile(path);
  // 9 of 11: the last two steps take ten times as long for the last few bytes
  const brotli = await asBrotli(text, { params: { [constants.BROTLI_PARAM_QUALITY]: 9 } });
  await writeFile(`${path}.br`, brotli);
  await writeFile(`${path}.gz`, await asGzip(text, { level: 9 }));
}

const names = await readdir(folder, { recursive: true });
await Promise.all(
  names.filter((name) => /\.(js|css|html|svg|json|csv|webmanifest)$/.test(name)).map((name) => pack(folder + name)),
);
