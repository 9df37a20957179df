/** Asks everybody, in a process that has no more memory than the bot; see `ask-everybody.ts`. */
import { askEverybody } from './ask-everybody.ts';
import type { Filling } from './fill-teams.ts';

process.once('message', async ({ databaseUrl, filling }: { databaseUrl: string; filling: Filling }) => {
  process.send?.(await askEverybody(databaseUrl, filling));
  process.disconnect();
});
