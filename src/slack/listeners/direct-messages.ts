/**
 * What people write to the bot directly: an answer in words, or a word of the command. Messages in channels,
 * by bots, and changes to earlier messages are nothing that anybody asked for.
 */
import type { App } from '@slack/bolt';
import type { AnswerInWords } from '../../app/answering/answer-in-words.ts';
import { isThanks, mayBeAnswer } from '../../app/answering/what-is-told.ts';
import { Refusal, type RefusalCode } from '../../app/refusal.ts';
import type { Place } from '../../app/team/place.ts';
import { outcomeMessage, tellLeftOut } from '../commands/answer.ts';
import { parseCommand, withoutSlash } from '../commands/commands.ts';
import { commandAmong, nearestCommandWord } from '../commands/nearest-command.ts';
import { isSaid, type MessageEvent, messageEvent } from '../door/incoming.ts';
import { plainWords } from '../plain-words.ts';
import { changeUnreadMessage, thanksMessage } from '../views/answering/prompt-messages.ts';
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
    const changed = whatWasChanged(sent.data, context.botUserId);
    if (changed) {
      const { caller } = addressed(context, sent.data, { userId: changed.userId, text: '' });
      const tell = () => caller.tell(changeUnreadMessage(changed.change));
      return answerOnce(context, caller, 'changed words', key, tell);
    }
    const said = whatWasSaid(sent.data, context.botUserId);
    if (!said) return;
    const { caller, text, threadTs } = addressed(context, sent.data, said);
    if (isThanks(text)) return answerOnce(context, caller, 'thanks', key, () => caller.tell(thanksMessage()));
    const command = withoutSlash(text);
    const isCommand = text === '' || command !== text || parseCommand(text).command !== undefined;
    const input = { text, place: caller.place, ...(threadTs === undefined ? {} : { threadTs }) };
    if (isCommand && !(await isAboutOwnCard(context, caller, input))) {
      return runCommand(context, caller, command, key);
    }
    await answerOnce(context, caller, 'words', key, async () => {
      const words = await withNames(context, text);
      const outcome = await context.useCases
        .answerInWords(caller.actor, { ...input, text: words })
        .catch((refusal: unknown) => Promise.reject(asMistypedCommand(refusal, text)));
      // The day's prompt, brought up to date, is the confirmation.
      for (const one of [outcome, ...(outcome.others ?? [])]) {
        if (one.kind !== 'recorded' || !one.prompt.isInPrompt) await caller.tell(outcomeMessage(one));
      }
      await tellLeftOut(caller, outcome, commandAmong);
    });
  });
}

/** `cancel 2`, by the owner of a card “Cancel a booking”, and `blocked by the harbour office`. */
async function isAboutOwnCard(
  { useCases }: ListenerContext,
  { actor }: Asker,
  input: AnswerInWords,
): Promise<boolean> {
  if (parseCommand(input.text).command === undefined || !mayBeAnswer(input.text)) return false;
  // Who can't answer for a card means the command, which also says when the database is away.
  return useCases.answersForCard(actor, input).catch(() => false);
}

/** Most words that a mistyped command with what follows it has. */
const COMMAND_WORDS_MAX = 3;

/** What is refused with these was found to be an answer, though not a clear one. */
const UNCLEAR: ReadonlySet<RefusalCode> = new Set(['unclear-words', 'no-cards-of-yours']);
/** With these it is refused before anybody looks at the words. */
const NOT_LOOKED_AT: ReadonlySet<RefusalCode> = new Set([
  'not-a-member',
  'no-sprint-running',
  'sprint-not-begun',
  'sprint-over',
]);

/** The refusal that says which command is near, where the words are no answer but nearly one of a command, or ask something. */
function asMistypedCommand(refusal: unknown, text: string): unknown {
  if (!(refusal instanceof Refusal)) return refusal;
  const isUnclear = UNCLEAR.has(refusal.code);
  const isNoAnswer =
    refusal.code === 'not-about-cards' || (NOT_LOOKED_AT.has(refusal.code) && !mayBeAnswer(text));
  if (!isUnclear && !isNoAnswer) return refusal;
  const words = text.split(/\s+/);
  const [word = ''] = words;
  if (words.length <= COMMAND_WORDS_MAX && /^\p{L}+$/u.test(word)) {
    const near = nearestCommandWord(isUnclear ? word : text);
    return near === undefined ? refusal : new Refusal('unknown-command', { word, near });
  }
  const among = commandAmong(text);
  const near =
    isUnclear && !text.endsWith('?') && !(among === 'off' && namesNoCard(refusal)) ? undefined : among;
  return near === undefined ? refusal : new Refusal('not-about-cards', { example: undefined, near });
}

/** `on holiday from 9 to 12 Nov` may be an answer for its numbers alone. */
function namesNoCard({ details }: Refusal): boolean {
  if (!('problems' in details)) return false;
  return details.problems.every(
    (one) => 'code' in one && one.code === 'not-an-answer' && !('position' in one),
  );
}

/** Who tidies up what is older than this knows that it was long ago. */
const DELETED_WITHIN_SECONDS = 24 * 3600;

/** Whose words to the bot were changed or deleted. The platform also tells of changes that nobody made. */
function whatWasChanged(
  { event }: MessageEvent,
  botUserId: string,
): { userId: string; change: 'edited' | 'deleted' } | undefined {
  const { channel_type, subtype, message, previous_message: before, ts, deleted_ts } = event;
  if (channel_type !== 'im') return undefined;
  const userId = (message ?? before)?.user;
  const isPerson = (message ?? before)?.bot_id === undefined && userId !== botUserId;
  if (userId === undefined || !isPerson) return undefined;
  if (subtype === 'message_changed')
    return message?.edited && message.text !== before?.text ? { userId, change: 'edited' } : undefined;
  const isRecent = Number(ts) - Number(deleted_ts) < DELETED_WITHIN_SECONDS;
  return subtype === 'message_deleted' && isRecent ? { userId, change: 'deleted' } : undefined;
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
