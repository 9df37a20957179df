/** `npm run test:long`: what takes minutes. */
import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.long.test.ts'],
    testTimeout: 600_000,
    hookTimeout: 120_000,
    globalSetup: ['tests/support/postgres-server.ts'],
    maxWorkers: availableParallelism(),
  },
});
