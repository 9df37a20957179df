/** Guesses which command was meant by words that are none. */
import { COMMANDS } from './commands.ts';

/** Longer words may hold more slips. */
const LETTERS_PER_SLIP = 3;
/** Fewer letters begin many a word: `hi` is no `history`. */
const SHORTEST_BEGINNING = 3;
/** No command is nearly as long. */
const LONGEST_GUESSED = 40;
/** The longest beginning of what was typed that is looked at. */
const LOOKED_AT_LETTERS = 200;

/** Other words for what a command does. */
const OTHER_WORDS: ReadonlyMap<string, string> = new Map([
  ['away', 'off'],
  ['holiday', 'off'],
  ['holidays', 'off'],
  ['vacation', 'off'],
  ['out', 'off'],
  ['sick', 'off'],
  ['ill', 'off'],
  ['wont-be', 'off'],
  ['not-in', 'off'],
  ['not-working', 'off'],
  ['half-day', 'off'],
  ['pto', 'off'],
  // The command of that word ends a membership.
  ['on-leave', 'off'],
  ['sick-leave', 'off'],
  ['annual-leave', 'off'],
  ['parental-leave', 'off'],
  ['part-time', 'works'],
  ['parttime', 'works'],
  ['remind', 'ask'],
  ['asking', 'ask'],
  ['unblock', 'moving'],
  ['unblocked', 'moving'],
  ['settings', 'setup'],
  ['team', 'setup'],
  ['commit', 'range'],
  ['commitment', 'range'],
  ['risk', 'odds'],
  ['trend', 'history'],
  ['velocity', 'history'],
  ['burndown', 'status'],
  ['chance', 'status'],
  ['chances', 'status'],
  ['progress', 'status'],
  ['missing', 'status'],
  ['we-take', 'range'],
  ['should-take', 'range'],
  ['can-take', 'range'],
  ['how-are', 'status'],
  ['many-days', 'status'],
  ['on-track', 'status'],
  ['make-it', 'status'],
  ['last-sprint', 'history'],
  ['my-card', 'cards'],
  ['is-left', 'status'],
  ['are-left', 'status'],
  ['next', 'range'],
  ['capacity', 'range'],
  ['deadline', 'forecast'],
  ['finish', 'forecast'],
  ['what-if', 'status'],
  ['who', 'status'],
  ['answered', 'status'],
  ['going', 'status'],
  ['undo', 'answer'],
  ['members', 'setup'],
  ['facilitators', 'setup'],
  ['join', 'setup'],
  ['add', 'pull'],
  ['remove', 'drop'],
  ['delete', 'drop'],
  ['rename', 'edit'],
  ['estimate', 'edit'],
  ['extend', 'edit'],
  ['stuck', 'blocked'],
  ['retrospective', 'retro'],
  ['finish-sprint', 'close'],
  ['stop-sprint', 'close'],
  ['start-sprint', 'plan'],
  ['new-sprint', 'plan'],
  ['create-sprint', 'plan'],
  ['planning', 'plan'],
  ['claim', 'take'],
  ['grab', 'take'],
  ['unassign', 'release'],
  ['hand', 'give'],
  ['handover', 'give'],
  ['transfer', 'give'],
  ['reassign', 'give'],
  ['board', 'cards'],
  ['download', 'export'],
  ['csv', 'export'],
  ['gdpr', 'privacy'],
  ['my-data', 'privacy'],
  ['see-this', 'privacy'],
  ['see-my', 'privacy'],
  ['sees-my', 'privacy'],
  ['store', 'privacy'],
  ['stored', 'privacy'],
  ['anonymous', 'privacy'],
  ['my-answer', 'answer'],
  ['remove-me', 'leave'],
  ['leaving-the', 'leave'],
  ['stop-this', 'leave'],
  ['unsubscribe', 'leave'],
  ['quit', 'leave'],
  ['exit', 'leave'],
  ['config', 'setup'],
  ['configure', 'setup'],
  ['timezone', 'setup'],
  ['commands', 'help'],
]);

/** Words that ask how the sprint is going where both are among those typed, though one of them is a command's. */
const ASK_FOR_STATUS = [
  ['end', 'sprint'],
  ['who', 'answer'],
];

/** What is done with cards. */
const CARD_COMMANDS: ReadonlySet<string> = new Set(['pull', 'drop', 'take', 'give', 'release', 'moving']);

/** The subcommand that is nearest to what was typed, or among its words; undefined when there is none. */
export function nearestCommandWord(typed: string): string | undefined {
  const words = typed.slice(0, LOOKED_AT_LETTERS).trim().toLowerCase().split(/\s+/);
  const [first = ''] = words;
  const found =
    pairAmong(words.map(lettersOf)) ??
    OTHER_WORDS.get(first) ??
    nearestTo(words.join(' ')) ??
    nearestTo(first);
  return found ?? commandAmong(typed);
}

/** The first command among the words, or what is another word for one; undefined when there is none. */
export function commandAmong(typed: string): string | undefined {
  const words = typed.slice(0, LOOKED_AT_LETTERS).toLowerCase().split(/\s+/).map(lettersOf);
  const pair = pairAmong(words);
  if (pair !== undefined) return pair;
  // A sprint ends by itself, the command ends a team; and who asks after others doesn't want to answer.
  if (ASK_FOR_STATUS.some((both) => both.every((word) => words.includes(word)))) return 'status';
  const other = OTHER_WORDS.get(words.find((word) => OTHER_WORDS.has(word)) ?? '');
  const command = words.find(isCommandWord);
  // `hand over my cards` isn't about the list of them.
  const isDoneWithCards = command === 'cards' && other !== undefined && CARD_COMMANDS.has(other);
  return isDoneWithCards ? other : (command ?? other);
}

/** Two words together say more than a command's word somewhere: `how much can we take`. */
function pairAmong(words: readonly string[]): string | undefined {
  const together = words.slice(1).map((word, i) => `${words[i]}-${word}`);
  return OTHER_WORDS.get(together.find((two) => OTHER_WORDS.has(two)) ?? '');
}

function lettersOf(word: string): string {
  return word.replaceAll(/[^\p{L}]/gu, '');
}

function isCommandWord(typed: string): boolean {
  return COMMANDS.some(({ word }) => word === typed);
}

/** @param wanted in small letters */
function nearestTo(wanted: string): string | undefined {
  if (wanted === '' || wanted.length > LONGEST_GUESSED) return undefined;
  const byDistance = COMMANDS.map(({ word }) => ({ word, slips: slipsBetween(wanted, word) })).sort(
    (a, b) => a.slips - b.slips,
  );
  const nearest = byDistance[0];
  if (!nearest) return undefined;
  const isBeginning = wanted.length >= SHORTEST_BEGINNING && nearest.word.startsWith(wanted);
  const mostSlips = Math.max(1, Math.floor(nearest.word.length / LETTERS_PER_SLIP));
  if (nearest.slips <= mostSlips || isBeginning) return nearest.word;
  return wanted.length < SHORTEST_BEGINNING
    ? undefined
    : COMMANDS.find(({ word }) => word.startsWith(wanted))?.word;
}

/**
 * How many letters must be put in, left out, replaced, or swapped with their neighbour to make one word of
 * the other (optimal string alignment distance).
 */
function slipsBetween(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  const at = (i: number, j: number): number => rows[i]?.[j] ?? Number.POSITIVE_INFINITY;
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    rows.push(row);
    for (let j = 1; j <= b.length; j += 1) {
      const replaced = at(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const isSwapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swapped = isSwapped ? at(i - 2, j - 2) + 1 : Number.POSITIVE_INFINITY;
      row.push(Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, replaced, swapped));
    }
  }
  return at(a.length, b.length);
}
