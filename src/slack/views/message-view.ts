/**
 * A message: its blocks, and the text that replaces them wherever blocks are not shown or are not
 * read aloud. The text is made from the blocks, so that the two never say different things.
 */
import type { Block, KnownBlock } from '@slack/types';
import { mrkdwn } from '../../words/say.ts';
import { mrkdwnOf } from '../../words/typed-text.ts';
import { type LineList, lineSections } from './line-sections.ts';

/** Longest `text` of a message, in characters. */
const TEXT_MAX_LENGTH = 4_000;
const BLOCKS_MAX = 50;
/**
 * The platform refuses more than some 11,000 to 13,000 characters in the blocks of one message (`msg_blocks_too_long`)
 * and names no number: two reports, slackapi/bolt-js#2509 and #2867. Ours is well below.
 */
export const BLOCKS_TEXT_MAX_LENGTH = 10_000;

export type MessagePart = KnownBlock | LineList;

export interface MessageView {
  /** Everything that the blocks say, in mrkdwn, for screen readers and notifications. */
  readonly text: string;
  readonly blocks: KnownBlock[];
}

/**
 * @param parts blocks, and lists of lines that share the room that the blocks leave
 * @throws RangeError when there are more blocks than a message may have: the view must budget.
 */
export function messageView(parts: readonly MessagePart[]): MessageView {
  const blocks = withLines(parts);
  if (blocks.length > BLOCKS_MAX) throw new RangeError(`${blocks.length} blocks are too many for a message`);
  return { text: fallbackText(blocks), blocks };
}

function withLines(parts: readonly MessagePart[]): KnownBlock[] {
  const lists = parts.filter((part) => part.type === 'lines');
  const blocks = parts.filter((part) => part.type !== 'lines');
  const room = BLOCKS_TEXT_MAX_LENGTH - lengthOfTexts(blocks);
  const shares = fairShares(lists.map(wholeLength), Math.max(0, room));
  return parts.flatMap((part) =>
    part.type === 'lines' ? lineSections(part, { maxLength: shares[lists.indexOf(part)] ?? 0 }) : [part],
  );
}

function wholeLength({ title, lines }: LineList): number {
  return lines.reduce((sum, line) => sum + line.length + 1, title.length);
}

/** Who needs little gets it all; the others share evenly what is left. */
function fairShares(needs: readonly number[], room: number): number[] {
  const shares: number[] = needs.map(() => 0);
  let left = room;
  const smallestFirst = [...needs.entries()].sort(([, a], [, b]) => a - b);
  for (const [rank, [place, need]] of smallestFirst.entries()) {
    const share = Math.min(need, Math.floor(left / (needs.length - rank)));
    shares[place] = share;
    left -= share;
  }
  return shares;
}

/** Characters of everything that is shown or read aloud. */
export function lengthOfTexts(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 0;
  return Object.entries(value).reduce((sum, [name, part]) => {
    const isText = typeof part === 'string' && (name === 'text' || name === 'alt_text');
    return sum + (isText ? part.length : lengthOfTexts(part));
  }, 0);
}

/** The words of the blocks, a line each. What does not fit is counted in the last line. */
function fallbackText(blocks: readonly KnownBlock[]): string {
  const lines = [
    ...blocks.filter((block) => block.type !== 'image').flatMap(wordsOf),
    // A chart repeats numbers of the message, so its words go last, where they may have to give way.
    ...blocks.filter((block) => block.type === 'image').flatMap(wordsOf),
  ].flatMap((words) => words.split('\n'));
  const whole = lines.join('\n');
  if (whole.length <= TEXT_MAX_LENGTH) return whole;
  let kept = lines.length;
  const cut = (): string =>
    [...lines.slice(0, kept), mrkdwn('message-more-lines', { lines: lines.length - kept })].join('\n');
  while (kept > 0 && cut().length > TEXT_MAX_LENGTH) kept -= 1;
  return cut();
}

function wordsOf(block: KnownBlock | Block): string[] {
  const known = block as KnownBlock;
  switch (known.type) {
    case 'header':
      return [mrkdwnOf(known.text.text)];
    case 'section':
      return [...(known.text ? [known.text] : []), ...(known.fields ?? [])].map(textWords);
    case 'context':
      return known.elements.flatMap((element) => ('text' in element ? [textWords(element)] : []));
    case 'image':
      return [mrkdwn('message-chart', { words: known.alt_text })];
    case 'actions': {
      const labels = known.elements.flatMap((element) =>
        element.type === 'button' ? [element.text.text] : [],
      );
      return labels.length > 0 ? [mrkdwn('message-buttons', { labels })] : [];
    }
    default:
      return [];
  }
}

/**
 * Takes our own formatting away: bold, and dates, of which the words stay. What one types to the letter comes
 * in quotes, unless it is a command, which its slash tells apart.
 */
function textWords(text: { readonly type: string; readonly text: string }): string {
  if (text.type !== 'mrkdwn') return mrkdwnOf(text.text);
  return text.text
    .replace(/<!date\^[^<>|]*\|([^<>]*)>/g, '$1')
    .replace(/`(\/[^`\n]*)`/g, '$1')
    .replace(/`([^`\n]*)`/g, '“$1”')
    .replace(/(?<![\p{L}\p{N}])\*([^*\n]+)\*(?![\p{L}\p{N}])/gu, '$1');
}
