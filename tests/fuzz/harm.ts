/** What text of the bot's own could do to those who read it. */
import { parseMrkdwn } from '../../src/rehearsal/page/mrkdwn.ts';
import { UNWANTED } from './hostile-text.ts';

/** Typed by nobody here but attackers. */
const EVIL = /U0EVIL|S0EVIL|C0EVIL|evil\.example/;

/** Every text in a value, at any depth. */
export function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(textsIn);
}

/**
 * What of some messages, forms and answers could ping, link, or hide: every text of every view is looked at, buttons'
 * values, `private_metadata` and fallback texts included.
 *
 * @param cardLinks addresses that may be links: those that people gave their cards
 */
export function harmIn(shown: unknown, cardLinks: readonly string[] = []): string[] {
  const found = textsIn(shown).filter((text) => UNWANTED.test(text));
  JSON.stringify(shown, (key, node: unknown) => {
    const { type, text } = (node ?? {}) as { type?: unknown; text?: unknown };
    const read = typeof node === 'object' && type === 'mrkdwn' ? text : key === 'text' ? node : undefined;
    // Plain text is shown as it is; everything else called `text` is read as formatted.
    if (typeof read === 'string') found.push(...harmfulNodes(read, cardLinks));
    return type === 'plain_text' ? { ...(node as object), text: '' } : node;
  });
  return found;
}

function harmfulNodes(text: string, cardLinks: readonly string[]): string[] {
  const found: string[] = [];
  JSON.stringify(parseMrkdwn(text), (_key, node: unknown) => {
    const { kind, url } = (node ?? {}) as { kind?: unknown; url?: unknown };
    if (kind === 'link' && cardLinks.some((link) => link === url)) return node;
    const isForeign =
      ['user', 'channel', 'link', 'date'].includes(String(kind)) && EVIL.test(JSON.stringify(node));
    if (kind === 'broadcast' || isForeign) found.push(text);
    return node;
  });
  return found;
}
