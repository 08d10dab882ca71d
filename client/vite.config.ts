import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vite';

export default defineConfig({
  plugins: [sveltekit()],
  server: {
    fs: { allow: ['..'] },
    proxy: { '/api': process.env['API_ORIGIN'] ?? 'http://127.0.0.1:3000' },
  },
});
