import { defineConfig } from 'vitest/config';

// Every workspace runs its tests with this file. Sources of other packages are taken through the
// condition "buildweek-source", so that a test never runs against a stale build.
export default defineConfig({
  resolve: { conditions: ['buildweek-source'] },
  ssr: { resolve: { conditions: ['buildweek-source', 'node', 'import', 'default'] } },
  test: {
    include: ['src/**/*.test.ts', 'src/**/*.test.tsx'],
    exclude: ['dist/**', 'node_modules/**'],
    testTimeout: 60_000,
    passWithNoTests: false,
    onConsoleLog(log) {
      throw new Error(`A test printed to the console: ${log}`);
    },
  },
});
