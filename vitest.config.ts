import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

/** A module that they mock must not be loaded before. */
const MOCKING = ['tests/store/embedded/data-folder-image.test.ts'];

/**
 * They compute for seconds on end and open nothing. Beside an open database they would keep the process from it for so
 * long that it takes the connection for lost.
 */
const COMPUTING = ['sprint', 'forecast', 'backtest', 'open-data', 'charts'].map(
  (room) => `tests/${room}/**/*.test.ts`,
);

export default defineConfig({
  test: {
    // Generous: whole bots, databases and a browser run here, on machines with two slow cores. No test waits for it.
    testTimeout: 90_000,
    hookTimeout: 120_000,
    maxWorkers: availableParallelism(),
    projects: [
      {
        extends: true,
        test: {
          name: 'shared',
          include: ['tests/**/*.test.ts'],
          exclude: [...MOCKING, ...COMPUTING, 'tests/**/*.long.test.ts'],
          globalSetup: ['tests/support/postgres-server.ts'],
          // The files of a process share what they import: to load it again for each takes a third of the time.
          isolate: false,
        },
      },
      {
        extends: true,
        test: { name: 'computing', include: COMPUTING, exclude: ['**/*.long.test.ts'], isolate: false },
      },
      { extends: true, test: { name: 'mocking', include: MOCKING } },
    ],
  },
});
