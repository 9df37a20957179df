/** A file that somebody gave: as text, or as the bytes from which its text is read where that holds nobody up. */
import type { CsvFile } from './csv-rows.ts';
import { decodeText } from './decode-text.ts';

export interface UndecodedFile {
  readonly fileName: string;
  /** Of the form, so that a refusal can be shown there. */
  readonly field: string;
  readonly bytes: Uint8Array;
}

export type GivenFile = CsvFile | UndecodedFile;

/** Its bytes are no text. */
export class NoText extends Error {
  override readonly name = 'NoText';
  readonly file: Pick<UndecodedFile, 'fileName' | 'field'>;

  constructor({ fileName, field }: UndecodedFile) {
    super('a file holds no text');
    this.file = { fileName, field };
  }
}

/** @throws NoText */
export function decoded(file: GivenFile): CsvFile {
  if ('text' in file) return file;
  const text = decodeText(file.bytes);
  if (text === undefined) throw new NoText(file);
  return { fileName: file.fileName, text };
}
