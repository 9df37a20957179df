/**
 * Text that a person typed, made safe to show: it can't ping, link, format or break the layout. All that
 * came from a form, a message or a profile passes through here before it goes into a block.
 */
import { INVISIBLE, visibleText } from '../app/visible-text.ts';

/** Controls, line ends, and the invisible marks that reverse or hide text: also in what was stored long ago. */
const UNSEEN = new RegExp(`[\\p{Cc}\\u2028\\u2029${INVISIBLE}]`, 'gu');

/** Printable ASCII with single spaces, which most text is: nothing in it is to be changed. */
const PLAIN_LINE = /^[!-~]+(?: [!-~]+)*$/;

/** One line of plain text, for labels, headers and options. Empty text becomes a dash. */
export function plainTyped(text: string): string {
  if (PLAIN_LINE.test(text)) return text;
  const line = visibleText(text.replace(UNSEEN, ' ')).replace(/\s+/g, ' ').trim();
  return line === '' ? '–' : line;
}

/**
 * The platform has no way to escape its formatting marks, so those that could begin or end a format give
 * way to signs that look alike. Marks inside a word (`tide_table`) format nothing and stay.
 */
const LOOKALIKES: Readonly<Record<string, string>> = { '*': '∗', _: 'ˍ', '~': '∼', '`': 'ˋ' };
const ANY_MARK = /[*_~`&<>]/;
const FORMAT_MARK = /`|(?<![\p{L}\p{N}])[*_~]|[*_~](?![\p{L}\p{N}])/gu;

/** Escapes plain text for mrkdwn; its line ends stay. */
export function mrkdwnOf(plain: string): string {
  if (!ANY_MARK.test(plain)) return plain;
  return escaped(plain.replace(FORMAT_MARK, (mark) => LOOKALIKES[mark] ?? mark));
}

/** Takes the meaning of mentions and links from plain text, and leaves its formatting marks. */
export function escaped(plain: string): string {
  return plain.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

/** One line of typed text for mrkdwn. */
export function typed(text: string): string {
  return mrkdwnOf(plainTyped(text));
}

/** Cuts plain text that is longer than `maxLength`, ending it with `…`; no sign is cut in half. */
export function shortened(plain: string, maxLength: number): string {
  if (plain.length <= maxLength) return plain;
  const head = plain.slice(0, maxLength - 1).replace(/[\uD800-\uDBFF]$/, '');
  return `${head.trimEnd()}…`;
}

/** The same for mrkdwn: no entity, mention or code is cut in half either. */
export function shortenedMrkdwn(mrkdwn: string, maxLength: number): string {
  if (mrkdwn.length <= maxLength) return mrkdwn;
  const head = mrkdwn.slice(0, maxLength - 1).replace(/&[a-z]{0,3}$|<[^>]*$|[\uD800-\uDBFF]$/, '');
  const openCode = (head.match(/`/g) ?? []).length % 2 === 1;
  const openBold = (head.match(/\*/g) ?? []).length % 2 === 1;
  const whole = openCode ? head.slice(0, head.lastIndexOf('`')) : head;
  return `${openBold ? whole.replace(/\*([^*]*)$/, '$1') : whole}…`;
}
