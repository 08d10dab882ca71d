import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import tseslint from 'typescript-eslint';
import svelteConfig from './client/svelte.config.js';

export default tseslint.config(
  {
    ignores: [
      'dist/',
      'client/build/',
      'client/.svelte-kit/',
      // written by the build from the catalogue of words
      'client/src/lib/words/catalogue/.wuchale/',
      'client/src/lib/words/catalogue/data.js',
      'client/src/lib/api/openapi.d.ts',
      'data/',
      'tests/output/',
    ],
  },
  ...tseslint.configs.strictTypeChecked,
  ...svelte.configs.recommended,
  {
    languageOptions: {
      parserOptions: {
        projectService: { allowDefaultProject: ['vitest.config.ts'] },
        tsconfigRootDir: import.meta.dirname,
        extraFileExtensions: ['.svelte'],
      },
    },
    rules: {
      // a class that only carries decorators is how Nest declares a module
      '@typescript-eslint/no-extraneous-class': ['error', { allowWithDecorator: true }],
      // numbers are what most of our sentences are about
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      // a database answers what the schema says; the parameter names the row
      '@typescript-eslint/no-unnecessary-type-parameters': 'off',
      // views are classes only so that OpenAPI can describe them; what goes out are plain objects of their shape
      '@typescript-eslint/no-unsafe-class-instance-assignment': 'off',
      // and what comes in has the fields of its class and no methods, so that spreading it loses nothing
      '@typescript-eslint/no-misused-spread': 'off',
      'max-lines': ['error', { max: 400, skipBlankLines: false, skipComments: false }],
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { globals: globals.browser, parserOptions: { parser: tseslint.parser, svelteConfig } },
    // addresses are the API's record ids put through encodeURIComponent; the client always lives at the root
    rules: { 'svelte/no-navigation-without-resolve': 'off' },
  },
  {
    files: ['**/*.svelte'],
    // the linter sees no types of other components and takes what they hand over for any; svelte-check sees them
    rules: {
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
    },
  },
  {
    files: ['**/*.js', '**/*.cjs'],
    extends: [tseslint.configs.disableTypeChecked],
    languageOptions: { globals: globals.node },
  },
);
