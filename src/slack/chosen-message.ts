/** What of a message goes on a card: a title in plain words. Messages come from people, apps and files alike. */
import { visibleText } from '../app/visible-text.ts';
import { shortened } from '../words/typed-text.ts';
import type { MessageShortcut } from './door/incoming.ts';
import { plainWords } from './plain-words.ts';

type Message = MessageShortcut['message'];

const MENTION = /<@([UW][A-Z0-9]+)>/g;

/** Whom its first line mentions. */
export function mentionedIn(message: Message): string[] {
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
