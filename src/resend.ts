/**
 * The `resend` command: queues again what was given up, once its cause is mended. A post that may stand
 * already is looked for before it is sent, as after any uncertain attempt. With a data folder the bot must be
 * stopped, since only one process may have it open.
 */
import { ConfigError, readConfig } from './config.ts';
import { readSecretFiles } from './secret-files.ts';
import { openQueue } from './store/delivery-queue.ts';
import { openDatabase } from './store/open-database.ts';
import { StoreError } from './store/store-error.ts';

async function resend(): Promise<string> {
  const { databaseUrl, dataFolder } = readConfig(readSecretFiles(process.env));
  const database = await openDatabase({ databaseUrl, dataFolder });
  try {
    const queue = await openQueue(database);
    const count = await queue.queueGivenUpAgain();
    await queue.stop({ graceful: true });
    return count === 0 ? 'No post was given up.' : `Posts queued again: ${count}.`;
  } finally {
    await database.close();
  }
}

try {
  console.log(await resend());
} catch (error) {
  if (error instanceof ConfigError) console.error(error.message);
  else if (error instanceof StoreError) console.error(`${error.message} ${error.mend}`);
  else throw error;
  process.exitCode = 1;
}
