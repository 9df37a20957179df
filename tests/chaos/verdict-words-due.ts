/** What each verdict should say by the state of the database: rebuilt, to be compared with what was posted. */
import { postWords } from '../../src/app/posting/post-kinds.ts';
import { postMessage } from '../../src/slack/views/post-message.ts';
import { openDatabase } from '../../src/store/open-database.ts';
import type { ChaosClock } from './chaos-clock.ts';
import type { PostRow } from './evidence.ts';

/** Any file will do: the text of a message does not name it. */
const SOME_FILE = 'F0CHART';

export async function withWords(
  databaseUrl: string,
  posts: readonly Omit<PostRow, 'shouldSay'>[],
  clock: ChaosClock,
): Promise<PostRow[]> {
  const database = await openDatabase({ databaseUrl });
  try {
    return await Promise.all(
      posts.map(async (row) => {
        if (row.kind !== 'verdict') return { ...row, shouldSay: undefined };
        const content = await database.store.transaction(async (tx) => {
          const post = await tx.read.postById(row.id);
          return post && (await postWords(tx, post, clock.now()))?.content;
        });
        const message = content && postMessage(content, { fileId: SOME_FILE, altText: '' });
        return { ...row, shouldSay: message?.text };
      }),
    );
  } finally {
    await database.close();
  }
}
