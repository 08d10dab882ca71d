// Builds the page that checks sheets without any site: one file, the program within it. Runs after the client was built.
import { readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const at = (path) => fileURLToPath(new URL(path, import.meta.url));

const [bundle] = [
  await build({
    configFile: false,
    root: at('.'),
    logLevel: 'error',
    resolve: { alias: { $shared: at('../shared') } },
    build: {
      write: false,
      rollupOptions: { input: at('src/checker/checker.ts'), output: { format: 'iife', codeSplitting: false } },
    },
  }),
].flat();
const chunk = bundle.output.find(({ type }) => type === 'chunk');
const page = await readFile(at('src/checker/checker.html'), 'utf8');
// a script ends where the text of its end stands, wherever that is
const program = chunk.code.replaceAll('</script', '<\\/script');
await writeFile(
  at('build/check-sheet.html'),
  page.replace('/* program */', () => program),
);
