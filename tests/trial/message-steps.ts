/** Posting, changing and reading messages. Behaviours by their number in docs/platform.md. */
import { needed, okOf, post, section, type TrialStep, type TrialWorld } from './trial-step.ts';

const METADATA = { event_type: 'loadline_trial', event_payload: { key: 'opaque' } };

/** One block holds 3,000 characters. */
function sectionsOf(text: string) {
  return (text.match(/[\s\S]{1,3000}/g) ?? []).map((part) => section(part));
}

export function messageSteps(world: TrialWorld): TrialStep[] {
  const { client, channelId } = world;
  let first: { channel: string; ts: string } | undefined;
  const earlier = () => needed(first, 'nothing could be posted');
  let largest: number | undefined;

  const isTaken = (text: string) =>
    post(world, { text: 'Trial of long blocks', blocks: sectionsOf(text) }).then(
      () => true,
      (error: { data?: { error?: unknown } }) => {
        if (error.data?.error !== 'msg_blocks_too_long') throw error;
        return false;
      },
    );
  const update = (content: Record<string, unknown>) =>
    client.apiCall('chat.update', { ...earlier(), ...content });
  const history = async (options: Record<string, unknown>) => {
    const { messages = [] } = await client.conversations.history({ channel: channelId, ...options });
    return messages;
  };
  const kept = async (options: Record<string, unknown> = {}) => {
    const { ts } = earlier();
    const [message] = await history({ oldest: ts, latest: ts, inclusive: true, ...options });
    return needed(message, 'the message is not in the history');
  };

  return [
    {
      what: 'chat.postMessage, a short text with metadata',
      expected: ['ok'],
      run: async () => {
        first = await post(world, {
          text: 'A trial of Loadline; this message goes away',
          metadata: METADATA,
        });
        return 'ok';
      },
    },
    {
      what: 'chat.postMessage without text and blocks',
      expected: ['no_text'],
      run: () => okOf(client.apiCall('chat.postMessage', { channel: channelId })),
    },
    {
      what: 'chat.postMessage, 4,001 characters of text (2)',
      expected: ['ok'],
      run: async () => {
        await post(world, { text: 'x'.repeat(4_001) });
        return 'ok';
      },
    },
    {
      what: 'chat.postMessage, 40,001 characters of text: how many stay (2)',
      expected: ['40000 characters'],
      run: async () => `${(await post(world, { text: 'x'.repeat(40_001) })).text.length} characters`,
    },
    {
      what: 'chat.update to 4,001 characters of text (2)',
      expected: ['msg_too_long'],
      run: () => okOf(update({ text: 'x'.repeat(4_001) })),
    },
    {
      what: 'chat.postMessage, 51 blocks (4)',
      expected: ['invalid_blocks'],
      run: () =>
        okOf(post(world, { text: 'x', blocks: Array(51).fill(section('x')) }).then(() => ({ ok: true }))),
    },
    {
      what: 'chat.postMessage, one block of 3,001 characters',
      expected: ['invalid_blocks'],
      run: () =>
        okOf(post(world, { text: 'x', blocks: [section('x'.repeat(3_001))] }).then(() => ({ ok: true }))),
    },
    {
      what: 'chat.postMessage, blocks of 10,000 characters together, the most that the bot posts (3)',
      expected: ['ok'],
      run: async () => ((await isTaken('x'.repeat(10_000))) ? 'ok' : 'msg_blocks_too_long'),
    },
    {
      what: 'chat.postMessage: the most characters that all blocks together may hold (3)',
      expected: [],
      run: async () => {
        const most = await largestTaken((length) => isTaken('x'.repeat(length)), 10_000, 40_000);
        if (most.isBounded) largest = most.length;
        return most.isBounded ? `${most.length} characters` : `${most.length} characters and more`;
      },
    },
    {
      what: 'chat.postMessage: as many letters of two bytes',
      expected: [],
      run: async () => {
        const length = needed(largest, 'no limit was found');
        return (await isTaken('é'.repeat(length))) ? 'ok, so it counts characters' : 'msg_blocks_too_long';
      },
    },
    {
      what: 'chat.postMessage: as many characters once escaped, a fifth of them as they are read',
      expected: [],
      run: async () => {
        const length = needed(largest, 'no limit was found');
        const longer = '&amp;'.repeat(Math.floor(length / 5) + 1);
        return (await isTaken(longer)) ? 'ok, so it counts what is read' : 'msg_blocks_too_long';
      },
    },
    {
      what: 'chat.update with blocks: what the update left of them, and of the metadata (7)',
      expected: ['1 block, metadata kept'],
      run: async () => {
        await update({ text: 'with a block', blocks: [section('a block')] });
        return described(await kept({ include_all_metadata: true }));
      },
    },
    {
      what: 'chat.update with text alone: what is left (6)',
      expected: ['no block, metadata kept'],
      run: async () => {
        await update({ text: 'without blocks' });
        return described(await kept({ include_all_metadata: true }), 'without blocks');
      },
    },
    {
      what: 'conversations.history without include_all_metadata: what it says of metadata (60)',
      expected: ['the type alone'],
      run: async () => {
        const { metadata } = (await kept()) as { metadata?: { event_payload?: object } };
        if (metadata === undefined) return 'nothing';
        return Object.keys(metadata.event_payload ?? {}).length > 0 ? 'the payload' : 'the type alone';
      },
    },
    {
      what: 'chat.update with empty metadata: what is left (7)',
      expected: ['no block, no metadata'],
      run: async () => {
        await update({ text: 'without metadata', metadata: {} });
        return described(await kept({ include_all_metadata: true }), 'without metadata');
      },
    },
    {
      what: 'conversations.history from the very moment of a message, not inclusive (59)',
      expected: ['without the message'],
      run: async () => {
        const { ts } = earlier();
        const found = await history({ oldest: ts });
        return found.some((message) => message.ts === ts) ? 'with the message' : 'without the message';
      },
    },
    {
      what: 'conversations.history with a cursor that nobody made (67)',
      expected: ['invalid_cursor'],
      run: () => okOf(client.conversations.history({ channel: channelId, cursor: 'bm9ib2R5OjE=' })),
    },
    {
      what: 'conversations.replies of a message that is not there (62)',
      expected: ['thread_not_found'],
      run: () => okOf(client.conversations.replies({ channel: channelId, ts: '1000000000.000001' })),
    },
    {
      what: 'chat.update of a message that is not there',
      expected: ['message_not_found'],
      run: () => okOf(client.chat.update({ channel: channelId, ts: '1000000000.000001', text: 'x' })),
    },
    {
      what: 'chat.update with a person in place of the channel (11)',
      expected: ['channel_not_found'],
      run: () => okOf(update({ channel: world.personId, text: 'x' })),
    },
    {
      what: 'chat.update of an ephemeral message (12)',
      expected: ['message_not_found'],
      run: async () => {
        const { message_ts: ts } = await client.chat.postEphemeral({
          channel: channelId,
          user: world.personId,
          text: 'A trial of Loadline; only you see this',
        });
        return okOf(client.chat.update({ channel: channelId, ts: needed(ts, 'no moment'), text: 'x' }));
      },
    },
  ];
}

/** @param text leaves out the block that the platform itself makes of it, as it does of some texts */
function described(message: { blocks?: unknown; metadata?: unknown }, text?: string): string {
  const blocks = ((message.blocks ?? []) as { type?: string }[]).filter(
    ({ type }) => text === undefined || type !== 'rich_text',
  );
  const metadata = message.metadata as { event_payload?: object } | undefined;
  const count =
    blocks.length === 0 ? 'no block' : blocks.length === 1 ? '1 block' : `${blocks.length} blocks`;
  return `${count}, ${metadata?.event_payload ? 'metadata kept' : 'no metadata'}`;
}

/**
 * The greatest length that is taken, by halving.
 *
 * @param from is taken
 * @returns `isBounded` false when `to` is taken as well
 */
export async function largestTaken(
  isTaken: (length: number) => Promise<boolean>,
  from: number,
  to: number,
): Promise<{ length: number; isBounded: boolean }> {
  if (await isTaken(to)) return { length: to, isBounded: false };
  let [taken, refused] = [from, to];
  while (refused - taken > 1) {
    const middle = Math.floor((taken + refused) / 2);
    if (await isTaken(middle)) taken = middle;
    else refused = middle;
  }
  return { length: taken, isBounded: true };
}
