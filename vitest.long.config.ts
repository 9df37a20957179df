/** `npm run test:long`: what takes minutes, and the searches of `npm test` once more, much wider. */
import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: [
      'tests/**/*.long.test.ts',
      'tests/fuzz/**/*.test.ts',
      'tests/rehearsal/play-against-reckoning.test.ts',
      'tests/app/privacy/**/*.test.ts',
      'tests/app/import/round-trip-properties.test.ts',
      'tests/charts/**/*.test.ts',
    ],
    env: { LOADLINE_SEARCH_TIMES: '4' },
    testTimeout: 600_000,
    hookTimeout: 120_000,
    globalSetup: ['tests/support/postgres-server.ts'],
    maxWorkers: availableParallelism(),
  },
});
