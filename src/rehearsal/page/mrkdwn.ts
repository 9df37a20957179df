/**
 * Reads the platform's message markup into a tree. Pure: no DOM, no names, no dates worked out here.
 * It must never produce markup itself; the page builds nodes from the tree, so that hostile text
 * stays text.
 */
import { type Inline, parseInline, unescapeEntities } from './mrkdwn-inline.ts';

export type MrkdwnBlock =
  | { kind: 'paragraph'; lines: Inline[][] }
  | { kind: 'quote'; lines: Inline[][] }
  | { kind: 'list'; items: { marker: string; content: Inline[] }[] }
  | { kind: 'codeBlock'; text: string };

const FENCE = /```([\s\S]*?)```/g;
const QUOTE_REST = /^(?:>|&gt;){3} ?/;
const QUOTE_LINE = /^(?:>|&gt;) ?/;
const BULLET_LINE = /^\s*([•◦-]) +(?=\S)/;

/** Parses a whole text; an empty text gives an empty list. Unclosed marks stay as typed. */
export function parseMrkdwn(text: string): MrkdwnBlock[] {
  const blocks: MrkdwnBlock[] = [];
  let from = 0;
  for (const fence of text.matchAll(FENCE)) {
    appendLines(blocks, text.slice(from, fence.index).replace(/\n$/, ''));
    blocks.push({ kind: 'codeBlock', text: unescapeEntities((fence[1] ?? '').replace(/^\n|\n$/g, '')) });
    from = fence.index + fence[0].length;
    if (text[from] === '\n') from += 1;
  }
  appendLines(blocks, text.slice(from));
  return blocks;
}

function appendLines(blocks: MrkdwnBlock[], text: string): void {
  if (text === '') return;
  let quoting = false;
  for (const line of text.split('\n')) {
    if (!quoting && QUOTE_REST.test(line)) {
      quoting = true;
      addLine(blocks, 'quote', line.replace(QUOTE_REST, ''));
    } else if (quoting) addLine(blocks, 'quote', line);
    else if (QUOTE_LINE.test(line)) addLine(blocks, 'quote', line.replace(QUOTE_LINE, ''));
    else if (BULLET_LINE.test(line)) addItem(blocks, line);
    else addLine(blocks, 'paragraph', line);
  }
}

function addLine(blocks: MrkdwnBlock[], kind: 'paragraph' | 'quote', line: string): void {
  const last = blocks.at(-1);
  if (last?.kind === kind) last.lines.push(parseInline(line));
  else blocks.push({ kind, lines: [parseInline(line)] });
}

function addItem(blocks: MrkdwnBlock[], line: string): void {
  const marker = BULLET_LINE.exec(line)?.[1] ?? '•';
  const item = { marker, content: parseInline(line.replace(BULLET_LINE, '')) };
  const last = blocks.at(-1);
  if (last?.kind === 'list') last.items.push(item);
  else blocks.push({ kind: 'list', items: [item] });
}
