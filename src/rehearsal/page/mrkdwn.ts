/**
 * Reads the platform's message markup into a tree. Pure: no DOM, no names, no dates worked out here.
 * It must never produce markup itself; the page builds nodes from the tree, so that hostile text
 * stays text. A link is only a link when its scheme is harmless; anything else in angle brackets stays text.
 */
type MrkdwnBlock =
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

export type Inline =
  | { kind: 'text'; text: string }
  | { kind: 'bold' | 'italic' | 'strike'; children: Inline[] }
  | { kind: 'code'; text: string }
  | { kind: 'link'; url: string; label: string }
  | { kind: 'user' | 'channel'; id: string; label?: string }
  | { kind: 'broadcast'; label: string }
  | { kind: 'date'; epochSeconds: number; format: string; url?: string; fallback: string };

type Found = { node: Inline; end: number };

const EMPHASIS: Record<string, 'bold' | 'italic' | 'strike'> = { '*': 'bold', _: 'italic', '~': 'strike' };
const WORD = /[\p{L}\p{N}]/u;
const SAFE_LINK = /^(?:https?:\/\/|mailto:|tel:)/i;

/** True when a link to this address may be made clickable. */
export function isSafeLink(url: string): boolean {
  return SAFE_LINK.test(url);
}

/** Parses one line. Adjacent characters come back as one text node. */
export function parseInline(line: string): Inline[] {
  const nodes: Inline[] = [];
  let plain = '';
  let at = 0;
  const flush = () => {
    if (plain !== '') nodes.push({ kind: 'text', text: unescapeEntities(plain) });
    plain = '';
  };
  while (at < line.length) {
    const found = readCode(line, at) ?? readAngle(line, at) ?? readEmphasis(line, at);
    if (found) {
      flush();
      nodes.push(found.node);
      at = found.end;
    } else {
      plain += line[at];
      at += 1;
    }
  }
  flush();
  return nodes;
}

/** Turns the three entities that the platform escapes back into characters, once. */
function unescapeEntities(text: string): string {
  return text.replace(/&(lt|gt|amp);/g, (_, name) => (name === 'lt' ? '<' : name === 'gt' ? '>' : '&'));
}

function readCode(line: string, at: number): Found | undefined {
  if (line[at] !== '`') return undefined;
  const close = line.indexOf('`', at + 1);
  if (close <= at + 1) return undefined;
  return { node: { kind: 'code', text: unescapeEntities(line.slice(at + 1, close)) }, end: close + 1 };
}

function readEmphasis(line: string, at: number): Found | undefined {
  const mark = line[at] ?? '';
  const kind = EMPHASIS[mark];
  if (!kind || isWord(line[at - 1]) || isBlank(line[at + 1]) || line[at + 1] === mark) return undefined;
  for (let close = at + 2; close < line.length; close += 1) {
    const skipped = readCode(line, close)?.end ?? angleEnd(line, close);
    if (skipped) close = skipped - 1;
    else if (line[close] === mark && !isBlank(line[close - 1]) && !isWord(line[close + 1])) {
      return { node: { kind, children: parseInline(line.slice(at + 1, close)) }, end: close + 1 };
    }
  }
  return undefined;
}

function readAngle(line: string, at: number): Found | undefined {
  const end = angleEnd(line, at);
  if (end === undefined) return undefined;
  const node = angleNode(line.slice(at + 1, end - 1));
  return node && { node, end };
}

function angleEnd(line: string, at: number): number | undefined {
  if (line[at] !== '<') return undefined;
  const close = line.indexOf('>', at);
  const nextOpen = line.indexOf('<', at + 1);
  return close < 0 || (nextOpen >= 0 && nextOpen < close) ? undefined : close + 1;
}

function angleNode(inside: string): Inline | undefined {
  const bar = inside.indexOf('|');
  const target = unescapeEntities(bar < 0 ? inside : inside.slice(0, bar));
  const label = bar < 0 ? undefined : unescapeEntities(inside.slice(bar + 1));
  const mention = /^([@#])([A-Z0-9]+)$/.exec(target);
  if (mention?.[2]) {
    const kind = mention[1] === '@' ? 'user' : 'channel';
    return { kind, id: mention[2], ...(label ? { label } : {}) };
  }
  if (target.startsWith('!date^')) return dateNode(target, label ?? '');
  const broadcast = /^!(here|channel|everyone|subteam\^[A-Z0-9]+)$/.exec(target)?.[1];
  if (broadcast) return { kind: 'broadcast', label: label ?? `@${broadcast.replace(/\^.*/, '')}` };
  if (isSafeLink(target)) return { kind: 'link', url: target, label: label || target };
  return undefined;
}

function dateNode(target: string, fallback: string): Inline | undefined {
  const [, epoch = '', format = '', url] = target.split('^');
  const epochSeconds = Number(epoch);
  if (!/^\d+$/.test(epoch) || !Number.isSafeInteger(epochSeconds)) return undefined;
  return { kind: 'date', epochSeconds, format, fallback, ...(url && isSafeLink(url) ? { url } : {}) };
}

function isWord(character: string | undefined): boolean {
  return character !== undefined && WORD.test(character);
}

function isBlank(character: string | undefined): boolean {
  return character === undefined || /\s/.test(character);
}
