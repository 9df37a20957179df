/** Files read in the test's own thread, by the code that reads them in a thread of their own. */
import { questionAnswerer } from '../../src/reading/answer-questions.ts';
import { fileReadingBy } from '../../src/reading/file-reading.ts';

export const readHere = fileReadingBy((use) => {
  const answer = questionAnswerer();
  return use({ ask: async <T>(question: Parameters<typeof answer>[0]) => answer(question) as T });
});
