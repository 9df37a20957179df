/** Why a file was not read, and what to do instead: the part of `refusal-words.ts` that is about files. */
import type { UnreadableFile } from './refusal.ts';

/** Longest name of a file, in characters, that is said in full: names can be as long as a sentence. */
const FILE_NAME_MAX = 80;
const PASTE = 'or paste its lines into the form instead';

export function unreadableFileWords(fileName: string, why: UnreadableFile): { what: string; mend: string } {
  const file = `“${shortName(fileName)}”`;
  switch (why) {
    case 'too large':
      return {
        what: `${file} is larger than 5 MB.`,
        mend: 'Split it into several files, or leave out what is not asked for.',
      };
    case 'not text':
      return {
        what: `${file} is not a text file.`,
        mend: `Save it from your spreadsheet as CSV (UTF-8) and choose that file, ${PASTE}.`,
      };
    case 'no answer':
      return {
        what: `The chat platform did not send ${file} in time.`,
        mend: `Send the form off again in a minute, ${PASTE}.`,
      };
    case 'not handed over':
      return {
        what: `The chat platform did not hand over ${file}.`,
        mend: `Choose the file again, ${PASTE}. If that does not help, ask whoever runs Loadline whether it may read files (\`files:read\`).`,
      };
  }
}

function shortName(fileName: string): string {
  const signs = [...fileName];
  return signs.length <= FILE_NAME_MAX ? fileName : `${signs.slice(0, FILE_NAME_MAX - 1).join('')}…`;
}
