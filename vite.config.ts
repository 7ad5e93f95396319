import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { makeBaseMap } from './geodata/base-map/make-base-map.mjs';

const path = (relative: string) => fileURLToPath(new URL(relative, import.meta.url));

/** Puts the offline base map into the build, made from the package that holds its data. */
function baseMap(): Plugin {
  return {
    name: 'base-map',
    apply: 'build',
    generateBundle() {
      for (const [name, source] of Object.entries(makeBaseMap())) {
        this.emitFile({ type: 'asset', fileName: `base-map/${name}`, source });
      }
    },
  };
}

const test = {
  include: ['tests/**/*.test.ts'],
  // From this file, not from the root: the build's root is another folder.
  setupFiles: [path('./tests/seeded-properties.ts')],
  testTimeout: 120_000,
  hookTimeout: 120_000,
};

/** The dashboard: static files that any server can give out, with no address but relative ones in them. */
const app = {
  root: path('src/app'),
  base: './',
  plugins: [react(), baseMap()],
  worker: { format: 'es' as const },
  build: {
    outDir: path('dist/app'),
    emptyOutDir: true,
    manifest: true,
    target: 'es2023',
    // Fonts and pictures stay files: the content security policy has no data: for fonts.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 2000,
    rolldownOptions: {
      // The engine is pure, so that what a view does not use of it need not be loaded with the view.
      treeshake: { moduleSideEffects: (id: string) => !id.includes('/src/engine/') },
    },
  },
};

/** The command line, and beside it the worker that it plays long runs in. */
const commands = {
  build: {
    rolldownOptions: {
      input: { main: path('src/cli/main.ts'), 'play-worker': path('src/adapters/workers/node-play-worker.ts') },
    },
  },
};

/** `vite build --ssr` makes the command line, `vite build` the dashboard. */
export default defineConfig(({ isSsrBuild, command }) => {
  if (command !== 'build') return { test };
  return isSsrBuild ? { ...commands, test } : { ...app, test };
});
