/** Tells the subcommand from what follows it. */
import { COMMANDS, type CommandWord } from '../command-table.ts';

export interface ParsedCommand {
  /** Undefined when nothing was typed, or no known word. */
  readonly word: CommandWord | undefined;
  /** What follows the word; all of it when no word is known. */
  readonly rest: string;
}

/** Longest first, so that `setup measures` is not taken for `setup`. */
const WORDS = COMMANDS.map(({ word }) => word).sort((a, b) => b.length - a.length);

export function parseCommand(text: string): ParsedCommand {
  const typed = text.trim();
  const lower = typed.toLowerCase().replace(/\s+/g, ' ');
  const word = WORDS.find((one) => lower === one || lower.startsWith(`${one} `));
  if (word === undefined) return { word: undefined, rest: typed };
  // As many words are taken off the front as the command has, however they were parted.
  const wordCount = word.split(' ').length;
  return { word, rest: typed.replace(new RegExp(`^(?:\\S+\\s*){${wordCount}}`), '').trim() };
}
