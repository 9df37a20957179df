/**
 * The `posts` command: lists what is tried no more, sends it again once its cause is mended, or gives it up. With a data
 * folder the bot must be stopped, since only one process may have it open.
 */

import type { Database } from '../store/database.ts';
import { giveUp, type SetAsidePost, sendAgain, setAsidePosts } from '../store/queue/set-aside-posts.ts';
import { onDatabase, runCommand, showUsage } from './operator-command.ts';

const USAGE =
  'npm run posts -- list | retry ID… | drop ID…   (all in place of an ID: every one that is listed)';

function line({ id, kind, workspaceId, channelId, reason, lastError }: SetAsidePost): string {
  const place = channelId ?? 'a direct message';
  return `${id}  ${kind}, ${workspaceId}, ${place}: ${reason}${lastError === undefined ? '' : `, ${lastError}`}`;
}

async function run(database: Database, word: string, ids: readonly string[]): Promise<string> {
  if (word === 'list') {
    const posts = await setAsidePosts(database.session);
    return posts.length === 0 ? 'No post is set aside.' : posts.map(line).join('\n');
  }
  return word === 'retry'
    ? `Posts queued again: ${await sendAgain(database, ids)}.`
    : `Posts given up for good: ${await giveUp(database, ids)}.`;
}

const [word = '', ...ids] = process.argv.slice(2);
const isUsable = word === 'list' ? ids.length === 0 : ['retry', 'drop'].includes(word) && ids.length > 0;
if (isUsable) await runCommand((config) => onDatabase(config, (database) => run(database, word, ids)));
else showUsage(USAGE);
