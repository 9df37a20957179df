/** Shows in a sentence what somebody wrote: on one line, and not too much of it. */

const MOST_CHARACTERS_SHOWN = 40;

export function quoted(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  if (line.length <= MOST_CHARACTERS_SHOWN) return line;
  // No sign is cut in half.
  return `${line.slice(0, MOST_CHARACTERS_SHOWN - 1).replace(/[\uD800-\uDBFF]$/, '')}…`;
}
