/**
 * From the start of the process until it says that it runs, on the embedded database: with a new data folder and with one
 * that is there; against a bare Bolt app on the same kind of database.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BARE_EMBEDDED_APP, MAIN, startApp } from './app-process.ts';
import type { Bench, BenchRow } from './bench-row.ts';
import { benchRow } from './bench-row.ts';
import { percentile } from './percentile.ts';
import { startQuickPlatform } from './quick-platform.ts';

const ROUNDS = 5;

/** First on a new folder, then on the same one. */
async function twoStarts(script: string, platformUrl: string): Promise<{ firstMs: number; againMs: number }> {
  const folder = await mkdtemp(join(tmpdir(), 'loadline-bench-'));
  try {
    const started = async (): Promise<number> => {
      const app = await startApp(script, platformUrl, { LOADLINE_DATA_FOLDER: join(folder, 'data') });
      await app.stop();
      return app.startMs;
    };
    return { firstMs: await started(), againMs: await started() };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

export const startBench: Bench = {
  name: 'start',
  takesSeconds: 60,
  async run(): Promise<BenchRow[]> {
    const platform = await startQuickPlatform();
    try {
      const bot: { firstMs: number; againMs: number }[] = [];
      const bare: { firstMs: number; againMs: number }[] = [];
      // The first round reads the programs from the disk, which says nothing about them.
      for (let round = 0; round <= ROUNDS; round += 1) {
        const byBot = await twoStarts(MAIN, platform.url);
        const byBare = await twoStarts(BARE_EMBEDDED_APP, platform.url);
        if (round === 0) continue;
        bot.push(byBot);
        bare.push(byBare);
      }
      const row = (name: string, which: 'firstMs' | 'againMs', atMost: number): BenchRow =>
        benchRow({
          name,
          unit: 'ms',
          value: percentile(
            bot.map((times) => times[which]),
            0.5,
          ),
          baseline: 'bare Bolt app on an embedded database',
          baselineValue: percentile(
            bare.map((times) => times[which]),
            0.5,
          ),
          bound: { of: 'value', atMost },
        });
      return [
        row('start to ready, embedded database', 'againMs', 3_000),
        // Once for each data folder.
        row('start to ready, embedded database, first time', 'firstMs', 4_000),
      ];
    } finally {
      await platform.stop();
    }
  },
};
