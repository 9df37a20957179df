/** A message becomes a card: what is chosen from its menu, before the form that pulls the card in. */
import { setTimeout as wait } from 'node:timers/promises';
import { cardLink } from '../../app/cards/card-link.ts';
import { MAX_TITLE_LENGTH } from '../../app/planning/card-paste.ts';
import { Refusal } from '../../app/refusal.ts';
import { visibleText } from '../../app/visible-text.ts';
import { shortened } from '../../words/typed-text.ts';
import type { MessageShortcut } from '../door/incoming.ts';
import { openForm } from '../listeners/asker.ts';
import type { ListenerContext } from '../listeners/listener-context.ts';
import { plainWords } from '../plain-words.ts';
import { type CardDraft, pullFormView, pullTeamFormView } from '../views/cards/card-forms.ts';
import type { Presser } from './command.ts';

/** The form must open within three seconds of the choice; the card is worth more than its link. */
const PLATFORM_WITHIN_MS = 1_000;

export async function chooseMessage(
  context: ListenerContext,
  presser: Presser,
  message: MessageShortcut | undefined,
): Promise<void> {
  if (!message) throw new TypeError('this shortcut is for messages');
  const { useCases, client } = context;
  const { actor, triggerId, replyTo } = presser;
  const [draft, where] = await Promise.all([draftOf(context, message), teamsFor(context, presser)]);
  const [only, ...others] = where;
  if (!only) throw new Refusal('no-team-of-yours', {});
  if (others.length > 0) return openForm(client, triggerId, pullTeamFormView(draft, where, replyTo));
  const form = await useCases.pullForm(actor, { channelId: only.channelId, isDirect: false });
  await openForm(client, triggerId, pullFormView(form, replyTo, draft));
}

/** The team of the channel; elsewhere those of the person, with a sprint that has begun if there are any. */
async function teamsFor({ useCases }: ListenerContext, { actor, place }: Presser) {
  const { teams } = await useCases.overview(actor, { channelId: 'direct', isDirect: true });
  const here = teams.find(({ team }) => !place?.isDirect && team.channelId === place?.channelId);
  if (here) return [here.team];
  const own = teams.filter(({ isMember }) => isMember);
  const running = own.filter(({ begun }) => begun);
  return (running.length > 0 ? running : own).map(({ team }) => team);
}

async function draftOf(context: ListenerContext, sent: MessageShortcut): Promise<CardDraft> {
  const late = wait(PLATFORM_WITHIN_MS, undefined, { ref: false });
  const [names, link] = await Promise.all([namesIn(context, sent, late), linkTo(context, sent, late)]);
  return { title: titleOf(sent.message, names, MAX_TITLE_LENGTH), link };
}

async function namesIn(
  { directory, workspaceId }: ListenerContext,
  { message }: MessageShortcut,
  late: Promise<undefined>,
): Promise<Map<string, string>> {
  const named = mentionedIn(message).map(async (userId): Promise<[string, string][]> => {
    const profile = await Promise.race([directory.profile(workspaceId, userId), late]).catch(() => undefined);
    return profile ? [[userId, profile.name]] : [];
  });
  return new Map((await Promise.all(named)).flat());
}

/** Undefined where the platform doesn't say, most often as the bot isn't in that channel. */
async function linkTo(
  { client, logger }: ListenerContext,
  { channel, message, message_ts }: MessageShortcut,
  late: Promise<undefined>,
): Promise<string | undefined> {
  const ts = message.ts ?? message_ts;
  if (ts === undefined) return undefined;
  try {
    const asked = client.chat.getPermalink({ channel: channel.id, message_ts: ts });
    const answer = await Promise.race([asked, late]);
    return cardLink(answer?.permalink ?? '');
  } catch (err) {
    logger.info({ err }, 'A message becomes a card without its link.');
    return undefined;
  }
}

/** They come from people, apps and files alike. */
type Message = MessageShortcut['message'];

const MENTION = /<@([UW][A-Z0-9]+)>/g;

/** Whom its first line mentions. */
function mentionedIn(message: Message): string[] {
  return [...new Set([...firstLine(message).matchAll(MENTION)].map(([, id = '']) => id))];
}

/**
 * The first line of the message, without formatting; empty when it has no words at all.
 *
 * @param names of those it mentions
 */
export function titleOf(
  message: Message,
  names: ReadonlyMap<string, string>,
  mostCharacters: number,
): string {
  const line = firstLine(message)
    .replace(MENTION, (_, id: string) => names.get(id) ?? '')
    .replace(/(?<![\p{L}\p{N}])[*_~`]+|[*_~`]+(?![\p{L}\p{N}])/gu, '')
    .replace(/\s+/g, ' ')
    .trim();
  return shortened(line, mostCharacters);
}

function firstLine({ text = '', blocks, attachments, files }: Message): string {
  const words = [text, ...textsIn(blocks), ...textsIn(attachments), ...textsIn(files)];
  const lines = words.flatMap((some) => visibleText(plainWords(some)).split('\n'));
  return lines.map((line) => line.replace(/^[\s>•◦-]+/, '')).find((line) => line.trim() !== '') ?? '';
}

/** Far more than a title needs. */
const MOST_DEPTH = 8;
const SAID: ReadonlySet<string> = new Set(['text', 'fallback', 'title', 'name']);

/** What can be read in parts of a message, whatever their kind; an object's texts come in its own order. */
function textsIn(part: unknown, depth = 0): string[] {
  if (typeof part !== 'object' || part === null || depth > MOST_DEPTH) return [];
  return Object.entries(part).flatMap(([name, value]) =>
    typeof value === 'string' ? (SAID.has(name) ? [value] : []) : textsIn(value, depth + 1),
  );
}
