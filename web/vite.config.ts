import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { shelf } from './offline/shelf.ts';

const service = process.env.PLYHUE_SERVICE ?? 'http://127.0.0.1:7443';

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  plugins: [shelf()],
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // What several screens use is one file, not twenty.
    rolldownOptions: {
      output: { codeSplitting: { groups: [{ name: 'shared', minShareCount: 2 }] } },
    },
  },
  server: { host: '127.0.0.1', proxy: { '/api': service } },
});
