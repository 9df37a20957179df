/** The address that a card may lead to, such as its page in a tracker. Pure. */

/** Longer ones would fill a message with what nobody reads. The database has the same limit. */
export const MAX_LINK_LENGTH = 500;

/** These have a meaning of their own in the platform's markup, though addresses may hold them. */
const MARKS = /[|`*<>"]/g;

/**
 * The address as it is kept.
 *
 * @returns undefined unless it is a web address without a user name or password, and not too long
 */
export function cardLink(typed: string): string | undefined {
  const text = typed.trim();
  if (!/^https?:\/\//i.test(text) || !URL.canParse(text)) return undefined;
  const url = new URL(text);
  if (url.username !== '' || url.password !== '') return undefined;
  const link = url.href.replace(MARKS, (mark) => `%${mark.charCodeAt(0).toString(16).toUpperCase()}`);
  return link.length <= MAX_LINK_LENGTH ? link : undefined;
}

/** As the platform writes one out (`<https://…|words>`), or bare. */
const WRITTEN_OUT = /<(https?:\/\/[^\s|<>]+)(?:\|([^<>]*))?>/i;
/** As Markdown has it: `[words](https://…)`. */
const MARKDOWN = /\[([^[\]]*)\]\((https?:\/\/[^\s()]+)\)/i;
const BARE = /https?:\/\/[^\s<>"]+/i;
/** What ends a sentence or brackets around the address isn't part of it. */
const AFTER_ADDRESS = new Set(".,;:!?)]}'’”");

/** A line with an address in it, parted. */
export interface FoundLink {
  /** As typed. */
  readonly address: string;
  /** The line without it; words that were shown in its place stay. */
  readonly rest: string;
}

/**
 * The ways in which the first address in a line may be read, likeliest first: one that isn't parted from what follows by a
 * space may end at a comma or semicolon. None where there is no address.
 */
export function linksIn(line: string): FoundLink[] {
  const written = WRITTEN_OUT.exec(line);
  if (written) {
    const [whole, address = '', words = ''] = written;
    return [{ address, rest: line.replace(whole, () => words) }];
  }
  const [link, shown = '', linked] = MARKDOWN.exec(line) ?? [];
  if (link !== undefined && linked !== undefined)
    return [{ address: linked, rest: line.replace(link, () => shown) }];
  const [whole] = BARE.exec(line) ?? [];
  if (whole === undefined) return [];
  const addresses = [whole, whole.split(/[,;]/)[0] ?? whole].map((one) =>
    withoutEnds(one, AFTER_ADDRESS, 'end'),
  );
  return [...new Set(addresses)].map((address) => ({
    address,
    rest: line.replace(address, () => '').replace(/\(\s*\)|\[\s*\]/, ''),
  }));
}

/** The text without these signs at its end, or at both; in one pass, where an expression would begin anew at each sign. */
export function withoutEnds(text: string, signs: ReadonlySet<string>, where: 'end' | 'both ends'): string {
  let [from, to] = [0, text.length];
  while (to > from && signs.has(text.charAt(to - 1))) to -= 1;
  while (where === 'both ends' && from < to && signs.has(text.charAt(from))) from += 1;
  return text.slice(from, to);
}

/** What a card is called that has nothing but a link. */
export function titleOfLink(link: string, mostCharacters: number): string {
  return link
    .replace(/^https?:\/\/(?:www\.)?/i, '')
    .replace(/\/$/, '')
    .slice(0, mostCharacters);
}
