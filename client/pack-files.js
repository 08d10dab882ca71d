// Writes beside each text file of the built client what it is compressed, so that the service packs nothing while a phone waits: Brotli,
// which browsers take by https alone, and gzip for the network of a house. And writes down which files each page begins with.
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';

const at = (path) => fileURLToPath(new URL(path, import.meta.url));
const folder = at('build/');
const [asBrotli, asGzip] = [promisify(brotliCompress), promisify(gzip)];

async function pack(path) {
  const text = await readFile(path);
  // the two last steps cost seconds for the largest file, and bring a tenth
  await writeFile(`${path}.br`, await asBrotli(text, { params: { [constants.BROTLI_PARAM_SIZE_HINT]: text.length } }));
  await writeFile(`${path}.gz`, await asGzip(text, { level: 9 }));
}

/**
 * For each address that there is, as a pattern: the files that its page begins with besides those that the page itself names. The service
 * names them with its answer, since a browser finds them otherwise only once the first scripts have run.
 */
async function firstFiles() {
  const manifest = JSON.parse(await readFile(at('.svelte-kit/output/client/.vite/manifest.json'), 'utf8'));
  const page = await readFile(`${folder}index.html`, 'utf8');
  const withImports = (key, found = new Set()) => {
    if (found.has(key)) return found;
    found.add(key);
    for (const other of manifest[key].imports ?? []) withImports(other, found);
    return found;
  };
  const pages = [];
  for (const key of Object.keys(manifest).filter((name) => /client-optimized\/nodes\/\d+\.js$/.test(name))) {
    const [, route] = /src\/routes\/(.*)\+page\.svelte"/.exec(await readFile(at(key), 'utf8')) ?? [];
    if (route === undefined) continue;
    const files = [...withImports(key)].flatMap((each) => [manifest[each].file, ...(manifest[each].css ?? [])]);
    const pattern = `^/${route.replace(/\/$/, '').replace(/\[\w+\]/g, '[^/]+')}/?$`;
    pages.push({
      pattern,
      files: [...new Set(files)].map((file) => `/${file}`).filter((file) => !page.includes(file)),
    });
  }
  // `/animals/new` before any other animal
  return pages.sort((one, other) => one.pattern.split('[^').length - other.pattern.split('[^').length);
}

/** The page names the fonts that nearly every text is written in, so that they are there when it is drawn and no text jumps. */
async function nameFonts(names) {
  const fonts = names.filter((name) => /-first-wght-\w+\.[\w-]+\.woff2$/.test(name));
  const links = fonts.map(
    (name) => `<link rel="preload" href="/${name}" as="font" type="font/woff2" crossorigin fetchpriority="low" />`,
  );
  const page = await readFile(`${folder}index.html`, 'utf8');
  await writeFile(`${folder}index.html`, page.replace('</head>', `${links.join('')}</head>`));
}

const names = await readdir(folder, { recursive: true });
await nameFonts(names);
await Promise.all(
  names.filter((name) => /\.(js|css|html|svg|json|csv|webmanifest)$/.test(name)).map((name) => pack(folder + name)),
);
await writeFile(`${folder}first-files.json`, JSON.stringify(await firstFiles()));
