/** What a reading thread answers. Keeps the import that it has read, which is then asked for piece by piece. */
import { decoded, NoText, type UndecodedFile } from '../app/csv/given-file.ts';
import { type ImportQuestion, importPieces, readImportFiles } from '../app/import/import-reading.ts';
import { readValues, type ValuesQuestion } from '../app/import/values-reading.ts';
import { readCardRows } from '../app/planning/card-rows.ts';
import type { CardsQuestion } from '../app/ports/file-reading.ts';
import type { ImportPiece } from '../app/ports/imports.ts';

export type Question =
  | { readonly import: ImportQuestion }
  /** Of the import's pieces. */
  | { readonly piece: 'first' | 'next' }
  | { readonly cards: CardsQuestion }
  | { readonly values: ValuesQuestion };

/** An error would lose on its way which file it is about. */
export interface FileWithoutText {
  readonly noText: Pick<UndecodedFile, 'fileName' | 'field'>;
}

export function questionAnswerer(): (question: Question) => unknown {
  let begin = (): Iterator<ImportPiece, undefined> => [].values();
  let pieces = begin();
  const answer = (question: Question): unknown => {
    if ('import' in question) {
      const { reading, plan } = readImportFiles(question.import);
      begin = () => importPieces(plan, question.import.context);
      return reading;
    }
    if ('piece' in question) {
      if (question.piece === 'first') pieces = begin();
      return pieces.next().value;
    }
    if ('values' in question) return readValues(question.values);
    const { file, people, columns } = question.cards;
    return readCardRows(decoded(file), people, columns);
  };
  return (question) => {
    try {
      return answer(question);
    } catch (error) {
      if (error instanceof NoText) return { noText: error.file } satisfies FileWithoutText;
      throw error;
    }
  };
}
