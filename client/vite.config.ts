import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig, type Plugin } from 'vite';
import { wuchale } from 'wuchale/vite';

/** Files, and all that comes with them: what they import, and what that imports, but for what a later `import()` brings. */
class Together {
  readonly #first: RegExp;
  #ids: ReadonlySet<string> = new Set();

  constructor(first: RegExp) {
    this.#first = first;
  }

  has = (id: string): boolean => this.#ids.has(id);

  /** Looks again once all files are known, before they are put into pieces. */
  plugin(): Plugin {
    const { find } = this;
    return {
      name: 'together',
      buildEnd() {
        find([...this.getModuleIds()], (id) => this.getModuleInfo(id)?.importedIds ?? []);
      },
    };
  }

  private find = (ids: readonly string[], importsOf: (id: string) => readonly string[]): void => {
    const found = new Set<string>();
    const ahead = ids.filter((id) => this.#first.test(id));
    for (let id = ahead.pop(); id !== undefined; id = ahead.pop()) {
      if (found.has(id)) continue;
      found.add(id);
      ahead.push(...importsOf(id));
    }
    this.#ids = found;
  };
}

/** What every page stands in. */
const frame = new Together(/\/runtime\/client\/entry\.js$|\/client-optimized\/(app|nodes\/[01])\.js$/);
/** What the two pages show that are opened first and most. */
const firstPages = new Together(/\/src\/routes\/(register\/)?\+page\.(svelte|ts)$/);

export default defineConfig({
  plugins: [wuchale(), sveltekit(), frame.plugin(), firstPages.plugin()],
  build: {
    // letters that a page does not have must not come with its styles
    assetsInlineLimit: (file) => (file.endsWith('.woff2') ? false : undefined),
    rolldownOptions: {
      output: {
        codeSplitting: {
          // fifty small pieces cost a phone more than they weigh, and one large piece brings what the first page does not show
          groups: [
            { name: 'frame', test: frame.has, priority: 3 },
            { name: 'first', test: firstPages.has, minShareCount: 2, priority: 2 },
            { name: 'shared', minShareCount: 8, priority: 1 },
          ],
        },
      },
    },
  },
  server: {
    fs: { allow: ['..'] },
    proxy: { '/api': process.env['API_ORIGIN'] ?? 'http://127.0.0.1:3000' },
  },
});
