import { fileURLToPath } from 'node:url';
import { build } from 'vite';

/**
 * The sources of this folder's `demo-record.ts`, and of all packages that it uses, as one module that imports nothing.
 *
 * @returns the text of the module, which exports `recordOf`
 * @throws Error when something is left to import, as anything of Node would be
 */
export async function bundleDemoRecord(): Promise<string> {
  const outputs = await build({
    configFile: false,
    logLevel: 'silent',
    resolve: { conditions: ['buildweek-source', 'browser', 'module', 'import', 'default'] },
    build: {
      write: false,
      target: 'es2022',
      minify: false,
      lib: { entry: fileURLToPath(new URL('./demo-record.ts', import.meta.url)), formats: ['es'] },
    },
  });
  const chunks = [outputs].flat().flatMap((one) => ('output' in one ? one.output : []));
  const [chunk, ...others] = chunks;
  if (chunk?.type !== 'chunk' || others.length > 0) throw new Error('The bundle is not one module.');
  const imports = [...chunk.imports, ...chunk.dynamicImports];
  if (imports.length > 0) throw new Error(`The bundle leaves something to import: ${imports.join(', ')}`);
  return chunk.code;
}
