/**
 * A message: its blocks, and the text that replaces them wherever blocks are not shown or are not
 * read aloud. The text is made from the blocks, so that the two never say different things.
 */
import type { Block, KnownBlock } from '@slack/types';
import { mrkdwn } from '../../words/say.ts';
import { mrkdwnOf } from '../../words/typed-text.ts';

/** Longest `text` of a message, in characters. */
export const TEXT_MAX_LENGTH = 4_000;
const BLOCKS_MAX = 50;

export interface MessageView {
  /** Everything that the blocks say, in mrkdwn, for screen readers and notifications. */
  readonly text: string;
  readonly blocks: KnownBlock[];
}

/** @throws RangeError when there are more blocks than a message may have: the view must budget. */
export function messageView(blocks: KnownBlock[]): MessageView {
  if (blocks.length > BLOCKS_MAX) throw new RangeError(`${blocks.length} blocks are too many for a message`);
  return { text: fallbackText(blocks), blocks };
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
