/** What messages tell people to type after the command, to the letter; those that depend on an argument are left out. */
import { messageFiles } from '../../../src/words/language.ts';

export function namedCommands(): string[] {
  const texts = [...messageFiles('en-GB').values()];
  const named = texts.flatMap((text) => [...text.matchAll(/`\/loadline ([^`{]*)`/g)]);
  return [...new Set(named.map(([, words]) => words as string))];
}
