/**
 * Words to the bot where it is mentioned, in a channel or in a thread: the same as after the slash command, which
 * the platform doesn't let people type in threads. In direct messages the platform tells of messages only.
 */
import type { App } from '@slack/bolt';
import { isThanks } from '../../app/answering/what-is-told.ts';
import { parseCommand, withoutSlash } from '../commands/commands.ts';
import { isSaid, mentionEvent } from '../door/incoming.ts';
import { plainWords } from '../plain-words.ts';
import { thanksMessage } from '../views/answering/prompt-messages.ts';
import type { MessageView } from '../views/message-view.ts';
import { answerOnce } from './answer-once.ts';
import { placeOf, tellIn } from './asker.ts';
import { runCommand } from './commands.ts';
import { contextOf } from './listener-context.ts';

export function listenToMentions(app: App): void {
  app.event('app_mention', async ({ body, context: bolt }) => {
    const context = contextOf(bolt);
    const sent = mentionEvent.safeParse(body);
    if (!sent.success) return;
    const { channel, user, text, bot_id, subtype, edited, thread_ts } = sent.data.event;
    // Who changes a message has been answered already.
    if (user === undefined || text === undefined || bot_id !== undefined || edited) return;
    if (!isSaid(subtype)) return;
    const words = wordsTo(context.botUserId, text);
    if (words === undefined) return;
    const actor = { workspaceId: context.workspaceId, userId: user };
    // The mention itself is a reply in its thread, so the platform shows an answer there.
    const tell = (message: MessageView): Promise<void> =>
      tellIn(context.client, actor, channel, message, thread_ts);
    const caller = {
      actor,
      place: placeOf(channel),
      replyTo: channel,
      triggerId: undefined,
      tell,
      replace: tell,
    };
    const key = `event:${sent.data.event_id}`;
    if (isThanks(words)) return answerOnce(context, caller, 'thanks', key, () => tell(thanksMessage()));
    await runCommand(context, caller, words, key);
  });
}

/**
 * What somebody wants of the bot.
 *
 * @returns undefined when they only speak of it: it isn't mentioned first, and the rest is no word of the command
 */
function wordsTo(botUserId: string, text: string): string | undefined {
  const words = plainWords(text);
  const said = withoutLeadingMention(words, botUserId);
  if (said !== words) return withoutSlash(said);
  const rest = words.replaceAll(`<@${botUserId}>`, ' ').trim();
  return parseCommand(rest).command && rest;
}

/** `@loadline: status` is `status`. */
export function withoutLeadingMention(words: string, botUserId: string): string {
  const mention = `<@${botUserId}>`;
  if (!words.startsWith(mention)) return words;
  return withoutLeadingMention(words.slice(mention.length).replace(/^[\s,:;.!-]+/, ''), botUserId);
}
