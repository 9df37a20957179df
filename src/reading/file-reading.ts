/** The `FileReading` port: every form's files are read in a thread of their own, which ends with what it was asked for. */
import type { GivenFile } from '../app/csv/given-file.ts';
import type { ImportQuestion } from '../app/import/import-reading.ts';
import type { FileReading, OpenImport } from '../app/ports/file-reading.ts';
import type { ImportPiece } from '../app/ports/imports.ts';
import { Refusal } from '../app/refusal.ts';
import { type ThreadLimits, TooMuch, withThread } from '../threads/thread.ts';
import type { FileWithoutText, Question } from './answer-questions.ts';

const SCRIPT = new URL('./reading-worker.ts', import.meta.url);
/** The largest import within the limits takes 3 s of processor time, and keeps 35 MB alive. */
const LIMITS: ThreadLimits = { timeoutMs: 60_000, memoryMb: 128 };

/** Somebody who answers questions. */
interface Reader {
  ask<T>(question: Question, given: readonly ArrayBuffer[]): Promise<T>;
}

/** Lends a reader for as long as it is used. */
type WithReader = <T>(use: (reader: Reader) => Promise<T>) => Promise<T>;

export const fileReading: FileReading = fileReadingBy((use) => withThread(SCRIPT, LIMITS, use));

export function fileReadingBy(withReader: WithReader): FileReading {
  /** @param use what follows from the answer, while the reader is still there */
  function reading<Answer extends object | undefined, T>(
    question: Question,
    files: readonly GivenFile[],
    use: (answer: Answer, reader: Reader) => Promise<T>,
  ): Promise<T> {
    return withReader(async (reader) => {
      const answer = await reader
        .ask<Answer | FileWithoutText>(question, buffersOf(files))
        .catch((error: unknown) => {
          throw error instanceof TooMuch && files[0] ? unreadable(files[0], 'too long') : error;
        });
      if (answer && 'noText' in answer) throw unreadable(answer.noText, 'not text');
      return use(answer as Answer, reader);
    });
  }

  return {
    imports: <T>(question: ImportQuestion, use: (opened: OpenImport) => Promise<T>) =>
      reading<OpenImport['reading'], T>({ import: question }, question.files, (found, reader) =>
        use({ reading: found, pieces: () => piecesOf(reader) }),
      ),
    cards: (question) => reading({ cards: question }, [question.file], async (rows) => rows as never),
    values: (question) => reading({ values: question }, [question.file], async (values) => values as never),
  };
}

/** One after the other, so that none is made before the one before it is used. */
async function* piecesOf(reader: Reader): AsyncGenerator<ImportPiece> {
  const next = (piece: 'first' | 'next') => reader.ask<ImportPiece | undefined>({ piece }, []);
  for (let piece = await next('first'); piece; piece = await next('next')) yield piece;
}

/** They are handed over, not copied, where they are memory of the file's own. */
function buffersOf(files: readonly GivenFile[]): ArrayBuffer[] {
  return files.flatMap((file) => {
    if (!('bytes' in file)) return [];
    const { buffer, byteLength } = file.bytes;
    return buffer instanceof ArrayBuffer && buffer.byteLength === byteLength ? [buffer] : [];
  });
}

function unreadable(file: { fileName: string; field?: string }, why: 'too long' | 'not text'): Refusal {
  return new Refusal('file-unreadable', { field: file.field ?? 'files', fileName: file.fileName, why });
}
