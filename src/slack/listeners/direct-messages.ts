/**
 * What people write to the bot directly: an answer in words, or a word of the command. Messages in channels,
 * by bots, and changes to earlier messages are nothing that anybody asked for.
 */
import type { App } from '@slack/bolt';
import { isThanks } from '../../app/answering/understand-words.ts';
import { Refusal } from '../../app/refusal.ts';
import type { Place } from '../../app/team/place.ts';
import { outcomeMessage } from '../commands/answer.ts';
import { parseCommand, withoutSlash } from '../commands/commands.ts';
import { commandAmong, nearestCommandWord } from '../commands/nearest-command.ts';
import { isSaid, type MessageEvent, messageEvent } from '../door/incoming.ts';
import { plainWords } from '../plain-words.ts';
import { editUnreadMessage, thanksMessage } from '../views/answering/prompt-messages.ts';
import type { MessageView } from '../views/message-view.ts';
import { answerOnce } from './answer-once.ts';
import { type Asker, placeOf } from './asker.ts';
import { runCommand } from './commands.ts';
import { contextOf, type ListenerContext } from './listener-context.ts';
import { withNames } from './mentioned-names.ts';
import { withoutLeadingMention } from './mentions.ts';

export function listenToDirectMessages(app: App): void {
  app.event('message', async ({ body, context: bolt }) => {
    const context = contextOf(bolt);
    const sent = messageEvent.safeParse(body);
    if (!sent.success) return;
    const key = `event:${sent.data.event_id}`;
    const editor = whoEdited(sent.data, context.botUserId);
    if (editor !== undefined) {
      const { caller } = addressed(context, sent.data, { userId: editor, text: '' });
      return answerOnce(context, caller, 'edited words', key, () => caller.tell(editUnreadMessage()));
    }
    const said = whatWasSaid(sent.data, context.botUserId);
    if (!said) return;
    const { caller, text, threadTs } = addressed(context, sent.data, said);
    if (isThanks(text)) return answerOnce(context, caller, 'thanks', key, () => caller.tell(thanksMessage()));
    const command = withoutSlash(text);
    if (text === '' || command !== text || parseCommand(text).command !== undefined) {
      return runCommand(context, caller, command, key);
    }
    await answerOnce(context, caller, 'words', key, async () => {
      const words = await withNames(context, text);
      const input = { text: words, place: caller.place, ...(threadTs === undefined ? {} : { threadTs }) };
      const outcome = await context.useCases
        .answerInWords(caller.actor, input)
        .catch((refusal: unknown) => Promise.reject(asMistypedCommand(refusal, text)));
      // The day's prompt, brought up to date, is the confirmation.
      for (const one of [outcome, ...(outcome.others ?? [])]) {
        if (one.kind !== 'recorded' || !one.prompt.isInPrompt) await caller.tell(outcomeMessage(one));
      }
    });
  });
}

/** Most words that a mistyped command with what follows it has. */
const COMMAND_WORDS_MAX = 3;

/** The refusal that says which command is near, where the words are no answer but nearly one of a command. */
function asMistypedCommand(refusal: unknown, text: string): unknown {
  if (!(refusal instanceof Refusal)) return refusal;
  const words = text.split(/\s+/);
  const [word = ''] = words;
  const isShort = words.length <= COMMAND_WORDS_MAX && /^\p{L}+$/u.test(word);
  const { details } = refusal;
  if (refusal.code === 'not-about-cards' && !isShort) {
    const near = commandAmong(text);
    return near === undefined ? refusal : new Refusal('not-about-cards', { ...details, near });
  }
  const isNoAnswer = ['unclear-words', 'not-about-cards', 'no-cards-of-yours'].includes(refusal.code);
  const near = isShort && isNoAnswer ? nearestCommandWord(text) : undefined;
  return near === undefined ? refusal : new Refusal('unknown-command', { word, near });
}

/** The person who changed the words of a message to the bot. The platform also tells of changes that nobody made. */
function whoEdited({ event }: MessageEvent, botUserId: string): string | undefined {
  const { channel_type, subtype, message, previous_message: before } = event;
  if (channel_type !== 'im' || subtype !== 'message_changed' || !message?.edited) return undefined;
  const isPerson = message.bot_id === undefined && message.user !== botUserId;
  return isPerson && message.text !== before?.text ? message.user : undefined;
}

/** Who said what, when it was a person and meant for the bot. */
function whatWasSaid(
  { event }: MessageEvent,
  botUserId: string,
): { userId: string; text: string } | undefined {
  const { channel_type, subtype, bot_id, user, text } = event;
  if (channel_type !== 'im' || bot_id !== undefined || user === undefined || text === undefined)
    return undefined;
  if (!isSaid(subtype)) return undefined;
  const words = plainWords(text);
  return words === '' ? undefined : { userId: user, text: withoutLeadingMention(words, botUserId) };
}

function addressed(
  { client, workspaceId }: ListenerContext,
  { event }: MessageEvent,
  { userId, text }: { userId: string; text: string },
): { caller: Asker & { readonly place: Place }; text: string; threadTs: string | undefined } {
  const threadTs = event.thread_ts ?? event.message?.thread_ts;
  const tell = async (message: MessageView): Promise<void> => {
    await client.chat.postMessage({
      channel: event.channel,
      ...message,
      ...(threadTs === undefined ? {} : { thread_ts: threadTs }),
    });
  };
  const caller = {
    actor: { workspaceId, userId },
    place: placeOf(event.channel),
    replyTo: event.channel,
    triggerId: undefined,
    tell,
    replace: tell,
  };
  return { caller, text, threadTs };
}
