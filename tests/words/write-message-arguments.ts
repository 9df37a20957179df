/** Writes `src/words/message-arguments.ts` from the English message files (`npm run messages`). */
import { writeFileSync } from 'node:fs';
import { messageFiles } from '../../src/words/language.ts';
import { messageArgumentsSource } from './message-arguments.ts';

const TARGET = new URL('../../src/words/message-arguments.ts', import.meta.url);
writeFileSync(TARGET, messageArgumentsSource(messageFiles('en-GB')));
