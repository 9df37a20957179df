/** Parts of the sentences for who hears a chart instead of seeing it. Pure. */
import { visibleText } from '../app/visible-text.ts';

/** The platform's limit for the alternative text of an image. */
export const altTextMaxLength = 2_000;

const nameMaxCharacters = 150;

/** The first version that the platform takes; they are given longest first. A last one too long is cut off. */
export function fittingText(versions: readonly string[]): string {
  const fitting = versions.find((text) => text.length <= altTextMaxLength);
  if (fitting !== undefined) return fitting;
  const cut = (versions.at(-1) ?? '').slice(0, altTextMaxLength - 1);
  // A sign of two halves must not be cut in the middle.
  return `${cut.isWellFormed() ? cut : cut.slice(0, -1)}…`;
}

/** A typed name on one line, of at most 150 characters; empty when nothing is left of it. */
export function spokenName(name: string): string {
  // By code point, so that no sign is cut in half.
  const characters = [...visibleText(name).replace(/\s+/g, ' ').trim()];
  const isLong = characters.length > nameMaxCharacters;
  return isLong ? `${characters.slice(0, nameMaxCharacters - 1).join('')}…` : characters.join('');
}

/** `a`, `a and b`, `a, b and c`. */
export function listText(items: readonly string[]): string {
  const head = items.slice(0, -1).join(', ');
  const last = items.at(-1) ?? '';
  return head === '' ? last : `${head} and ${last}`;
}

/** `1 closed sprint`, `3 closed sprints`. */
export function countText(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
