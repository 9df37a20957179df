/** What `file-reading.ts` starts: reads the files of one form in a thread of its own. */
import { answering } from '../threads/answering.ts';
import { questionAnswerer } from './answer-questions.ts';

answering(questionAnswerer());
