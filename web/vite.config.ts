import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { defineConfig, type Plugin } from 'vite';

const pages = [
  'index',
  'wall',
  'desk',
  'station',
  'holding',
  'pocket',
  'paper',
  'review',
  'sheets',
];

/** The font's licence asks to go with the font. */
function fontLicence(): Plugin {
  const font = '@fontsource-variable/atkinson-hyperlegible-next';
  return {
    name: 'font-licence',
    apply: 'build',
    generateBundle() {
      const path = createRequire(import.meta.url).resolve(`${font}/LICENSE`);
      this.emitFile({
        type: 'asset',
        fileName: 'assets/atkinson-hyperlegible-next-LICENSE.txt',
        source: readFileSync(path, 'utf8'),
      });
    },
  };
}

export default defineConfig({
  plugins: [fontLicence()],
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
