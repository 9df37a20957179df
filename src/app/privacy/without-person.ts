/** Takes one person out of a text that others typed. Pure. */

interface NamedPerson {
  readonly userId: string;
  /** What their teams know them by. */
  readonly names: readonly string[];
}

/** A single word may be a word of any kind; only behind an `@` is it surely a name. */
function isTelling(name: string): boolean {
  return /\S\s+\S/.test(name.trim());
}

/** A text about the person holds at least one of these; in lower case. */
export function mayTell({ userId, names }: NamedPerson): string[] {
  const called = names.flatMap((name) => (isTelling(name) ? [name, firstAt(name)] : [`@${name.trim()}`]));
  return [userId, ...called.filter((words) => words.trim() !== '' && words.trim() !== '@')].map((words) =>
    words.trim().toLowerCase(),
  );
}

function firstAt(name: string): string {
  return `@${name.trim().split(/\s+/)[0]}`;
}

function literally(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|/-]/g, '\\$&');
}

/**
 * Mentions, the id anywhere, and the name: of two words or more anywhere, of one word behind an `@`;
 * so is the first word of a name. Whole words only, in upper or lower case.
 */
export function withoutPerson(text: string, person: NamedPerson): string {
  const { userId, names } = person;
  const id = literally(userId);
  let left = text
    .replace(new RegExp(`<@${id}(?:\\|[^>]*)?>`, 'giu'), SOMEBODY)
    .replace(new RegExp(`@?(?<![\\p{L}\\p{N}])${id}(?![\\p{L}\\p{N}])`, 'giu'), SOMEBODY);
  for (const name of names.map((given) => given.trim()).filter((given) => given !== '')) {
    const whole = literally(name).replace(/\s+/g, '\\s+');
    const found = isTelling(name) ? `@?(?<![\\p{L}\\p{N}])${whole}` : `@${whole}`;
    left = left
      .replace(new RegExp(`${found}(?![\\p{L}\\p{N}])`, 'giu'), SOMEBODY)
      .replace(new RegExp(`${literally(firstAt(name))}(?![\\p{L}\\p{N}])`, 'giu'), SOMEBODY);
  }
  return left;
}

/**
 * What takes the place of an erased person's id. A random mark keeps answers on one card and day apart, which the
 * ledger needs; everywhere else the same plain mark is used for all, so that nothing links them. The platform's ids are upper-case letters and digits.
 */
export const ERASED = 'erased';

/** What takes the place of a name or a mention in text. */
export const SOMEBODY = 'somebody';

export function isErased(userId: string): boolean {
  return userId === ERASED || userId.startsWith(`${ERASED}-`);
}
