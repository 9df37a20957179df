import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // Generous: whole bots, databases and a browser run here, on machines with two slow cores. No test waits for it.
    testTimeout: 90_000,
    hookTimeout: 120_000,
    globalSetup: ['tests/support/postgres-server.ts'],
    // The files of a process share what they import: to load it again for each of them would take a third of the time.
    isolate: false,
    maxWorkers: availableParallelism(),
  },
});
