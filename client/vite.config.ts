import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vite';
import { wuchale } from 'wuchale/vite';

export default defineConfig({
  plugins: [wuchale(), sveltekit()],
  build: {
    rolldownOptions: {
      // what many screens share comes in one piece: fifty small ones cost a phone more than they weigh
      output: { codeSplitting: { groups: [{ name: 'shared', minShareCount: 8 }] } },
    },
  },
  server: {
    fs: { allow: ['..'] },
    proxy: { '/api': process.env['API_ORIGIN'] ?? 'http://127.0.0.1:3000' },
  },
});
