/**
 * The `posts` command: lists posts that are no longer tried, sends them again once the cause is fixed, or drops them. With a data
 * folder the bot must be stopped, since only one process may have it open.
 */
import { undeliveredByCause } from '../doctor/undelivered.ts';
import type { Database } from '../store/database.ts';
import { giveUp, type SetAsidePost, sendAgain, setAsidePosts } from '../store/queue/set-aside-posts.ts';
import { say } from '../words/say.ts';
import { type CommandResult, type Environment, onDatabase, runCommand } from './operator-command.ts';

function line({ id, kind, workspaceId, channelId, reason, lastError }: SetAsidePost): string {
  const channel = channelId ?? say('operator-post-direct');
  const post = { id, kind, workspace: workspaceId, channel, reason };
  return lastError === undefined
    ? say('operator-post', post)
    : say('operator-post-error', { ...post, error: lastError });
}

async function run(database: Database, word: string, ids: readonly string[]): Promise<string> {
  if (word === 'list') {
    const listed = await setAsidePosts(database.session);
    if (listed.length === 0) return say('operator-posts-none');
    const why = undeliveredByCause(listed).map((group) => say('operator-undelivered', group));
    return [...listed.map(line), '', ...why].join('\n');
  }
  return word === 'retry'
    ? say('operator-posts-retried', { count: await sendAgain(database, ids) })
    : say('operator-posts-dropped', { count: await giveUp(database, ids) });
}

export async function posts(
  [word = '', ...ids]: readonly string[],
  environment: Environment,
): Promise<CommandResult> {
  const isUsable = word === 'list' ? ids.length === 0 : ['retry', 'drop'].includes(word) && ids.length > 0;
  if (!isUsable) return { code: 2, stderr: say('operator-posts-usage') };
  return runCommand(environment, (config) => onDatabase(config, (database) => run(database, word, ids)));
}
