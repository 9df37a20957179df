/** Parts a card's own short name from its title, as in `berth-7: Fog horn`. */

interface KeyAndTitle {
  readonly key: string | undefined;
  readonly title: string;
}

/**
 * With a space or a dash in place of the colon, and no brackets around it, only capitals count as a key, since words such as `Phase-2` begin a
 * title as well.
 */
const KEY_AND_TITLE =
  /^(?:([A-Za-z][A-Za-z0-9]{0,9}-\d{1,7})(?::|\s*[,;])\s*|\[([A-Za-z][A-Za-z0-9]{0,9}-\d{1,7})\]:?\s+|([A-Z][A-Z0-9]{0,9}-\d{1,7})\s+(?:[–—-]\s+)?)(\S.*)$/;
/** `: quay-55, the crane` has no key: a card that is carried over keeps the title that it has. */
const NO_KEY = /^:\s+(\S.*)$/;
const KEY = /^[A-Za-z][A-Za-z0-9]{0,9}-\d{1,7}$/;

/** Whether it may be a card's own short name, as in `berth-7`. */
export function isCardKey(typed: string): boolean {
  return KEY.test(typed);
}

/** @example keyAndTitle('berth-7: Fog horn') → { key: 'berth-7', title: 'Fog horn' } */
export function keyAndTitle(typed: string): KeyAndTitle {
  const keyless = NO_KEY.exec(typed)?.[1];
  if (keyless !== undefined) return { key: undefined, title: keyless };
  const [, beforeColon, inBrackets, inCapitals, title = typed] = KEY_AND_TITLE.exec(typed) ?? [];
  return { key: beforeColon ?? inBrackets ?? inCapitals, title };
}
