import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { defineConfig, type Plugin } from 'vite';

const place = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Leaves the bundle packed: it stands in every page that answers back. */
function packed(): Plugin {
  return {
    name: 'packed',
    generateBundle(_, bundle) {
      for (const [fileName, chunk] of Object.entries(bundle)) {
        if (chunk.type !== 'chunk') continue;
        delete bundle[fileName];
        const source = gzipSync(chunk.code, { level: 9 });
        this.emitFile({ type: 'asset', fileName: `${fileName}.gz`, source });
      }
    },
  };
}

// `vite build --mode page` makes the script of the page, `--mode worker` that of its workers, `--mode follow` that of a
// page which is served, from the sources of all packages; src/live/bundles.ts reads them.
export default defineConfig(({ mode }) => ({
  resolve: {
    conditions: ['buildweek-source', 'browser', 'module', 'import', 'default'],
    // Of the whole library only what draws our charts.
    alias: [{ find: /^vega$/, replacement: place('src/live/worker/vega.ts') }],
  },
  build: {
    outDir: 'dist/bundle',
    emptyOutDir: mode === 'page',
    target: 'es2022',
    modulePreload: false,
    reportCompressedSize: false,
    rolldownOptions: {
      input: place(`src/live/${mode}/main.ts`),
      output: { format: 'iife', entryFileNames: `${mode}.js` },
      // Schemas of documents are made when a module is loaded; here nobody reads such documents.
      treeshake: { moduleSideEffects: (id) => !id.includes('/packages/') },
    },
  },
  plugins: mode === 'worker' ? [packed()] : [],
}));
