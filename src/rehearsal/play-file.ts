/** Plays a scenario file without a browser, for reading or as one JSON document of results. */
import type { Logger } from '../logger.ts';
import type { PlayResult } from './play-result.ts';
import { playResult } from './play-result.ts';
import { Player } from './player.ts';
import { startRehearsal } from './rehearsal.ts';
import type { Scenario } from './scenario.ts';

export interface PlayOptions {
  readonly scenario: Scenario;
  readonly logger: Logger;
  /** Hears of each step as it is played. */
  readonly onStep?: (did: string) => void;
  /** An image for the database to start from, as for `openDatabase`. */
  readonly memoryImage?: Blob | undefined;
}

export async function playScenario({
  scenario,
  logger,
  onStep,
  memoryImage,
}: PlayOptions): Promise<PlayResult> {
  const rehearsal = await startRehearsal({ scenario, logger, memoryImage });
  try {
    const player = new Player(rehearsal, scenario);
    for await (const { did } of player.steps()) onStep?.(did);
    return await playResult(rehearsal, player);
  } finally {
    await rehearsal.stop();
  }
}
