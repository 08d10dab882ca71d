import adapter from '@sveltejs/adapter-static';

/** @type {import('@sveltejs/kit').Config} */
export default {
  compilerOptions: { runes: true },
  kit: {
    adapter: adapter({ fallback: 'index.html' }),
    alias: { $shared: '../shared' },
    csp: {
      mode: 'hash',
      directives: {
        'default-src': ['self'],
        'script-src': ['self'],
        // Charts and bars place their parts through the style objects of their elements, which needs no leave.
        'style-src': ['self'],
        // The one style attribute that SvelteKit writes: it hides the line that reads a page's title out.
        'style-src-attr': ['unsafe-hashes', 'sha256-S8qMpvofolR8Mpjy4kQvEm7m1q8clzU4dfDH0AmvZjo='],
        'img-src': ['self', 'data:', 'blob:'],
        'font-src': ['self'],
        'connect-src': ['self'],
        'manifest-src': ['self'],
        'worker-src': ['self'],
        'object-src': ['none'],
        'base-uri': ['none'],
        'form-action': ['self'],
      },
    },
    typescript: {
      config: (config) => ({ ...config, include: [...config.include, '../../shared/**/*.ts', '../svelte.config.js'] }),
    },
  },
};
