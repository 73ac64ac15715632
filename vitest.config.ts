import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Tests of pure code: nothing that one file does can reach the next, so its modules need not be loaded anew. */
const PURE = ['tests/engine', 'tests/reference', 'tests/simulator'];

export default defineConfig({
  resolve: { alias: { '@': fileURLToPath(new URL('.', import.meta.url)) } },
  test: {
    testTimeout: 300_000,
    hookTimeout: 300_000,
    // By itself it leaves one processor free, which of two is half.
    maxWorkers: '100%',
    projects: [
      { extends: true, test: { name: 'pure', include: PURE.map((folder) => `${folder}/**/*.test.ts`), isolate: false } },
      {
        extends: true,
        test: {
          name: 'whole',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: [...PURE.map((folder) => `${folder}/**`), 'tests/e2e/**', 'node_modules/**'],
        },
      },
    ],
  },
});
