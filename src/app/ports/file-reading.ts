/** What the use cases need to have read out of files. Large ones take seconds, in which nobody may be held up. */
import type { FileProblem } from '../csv/csv-problem.ts';
import type { GivenFile } from '../csv/given-file.ts';
import type { ImportQuestion, ImportReading } from '../import/import-reading.ts';
import type { ValuesQuestion, ValuesReading } from '../import/values-reading.ts';
import type { KnownPerson } from '../planning/card-owners.ts';
import type { CardRows } from '../planning/card-rows.ts';
import type { CardColumns } from '../planning/named-columns.ts';
import type { ImportPiece } from './imports.ts';

export interface CardsQuestion {
  readonly file: GivenFile;
  readonly people: readonly KnownPerson[];
  /** Undefined: as the names of the columns tell. */
  readonly columns: CardColumns | undefined;
}

/** An import while it is being read. */
export interface OpenImport {
  /** Undefined: every file is blank. */
  readonly reading: ImportReading | undefined;
  /** What is to be written, from the beginning and each time under new ids; nothing unless it may be imported. */
  pieces(): AsyncIterable<ImportPiece>;
}

/**
 * All of them throw a Refusal `file-unreadable` when a file is no text, or takes longer or more memory than it may.
 */
export interface FileReading {
  /** What it gives holds while `use` runs. */
  imports<T>(question: ImportQuestion, use: (opened: OpenImport) => Promise<T>): Promise<T>;
  cards(question: CardsQuestion): Promise<CardRows | FileProblem>;
  values(question: ValuesQuestion): Promise<ValuesReading>;
}
