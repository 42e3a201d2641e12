import { resolve } from 'node:path';
import { defineConfig } from 'vite';

const pages = ['index', 'wall', 'desk', 'station', 'holding'];

export default defineConfig({
  build: {
    target: 'es2022',
    // Nothing inline: the pages run under a content security policy without unsafe-*.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rollupOptions: {
      input: Object.fromEntries(
        pages.map((page) => [page, resolve(import.meta.dirname, `${page}.html`)]),
      ),
    },
  },
});
