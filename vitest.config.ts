import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

const folder = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const database = { globalSetup: ['tests/support/postgres.ts'], setupFiles: ['reflect-metadata'] };

export default defineConfig({
  test: {
    restoreMocks: true,
    projects: [
      { extends: true, test: { name: 'unit', include: ['tests/unit/**/*.test.ts'], setupFiles: ['reflect-metadata'] } },
      {
        extends: true,
        test: {
          name: 'api',
          include: ['tests/api/**/*.test.ts'],
          isolate: false,
          testTimeout: 30_000,
          hookTimeout: 60_000,
          ...database,
        },
      },
      {
        extends: true,
        test: {
          name: 'faults',
          include: ['tests/faults/**/*.test.ts'],
          fileParallelism: false,
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
      {
        plugins: [svelte({ configFile: false })],
        resolve: { conditions: ['browser'], alias: { $lib: folder('client/src/lib'), $shared: folder('shared') } },
        test: { name: 'client', include: ['tests/client/**/*.test.ts'], environment: 'happy-dom' },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          setupFiles: ['tests/support/failed-page.ts'],
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
