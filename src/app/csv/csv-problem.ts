/** What may be wrong with a CSV file, with one of its lines, or with a cell. */
import type { NumberProblem } from '../read-number.ts';
import type { CsvKind } from './csv-columns.ts';

/** A line that is no CSV. */
export type BrokenLine =
  | { readonly code: 'misplaced-quote' }
  | { readonly code: 'too-many-quotes' }
  | { readonly code: 'endless-line'; readonly most: number };

export type CsvProblem =
  | BrokenLine
  | {
      readonly code: 'too-many-cells';
      /** Undefined: too many to be counted. */
      readonly cells: number | undefined;
      readonly columns: number;
      readonly separator: 'tab' | 'semicolon' | 'comma';
    }
  | FileProblem
  | CellProblem;

/** Why a file as a whole can't be read. */
export type FileProblem =
  | { readonly code: 'no-csv' }
  | { readonly code: 'too-many-characters'; readonly count: number; readonly most: number }
  | { readonly code: 'empty' }
  | { readonly code: 'no-line'; readonly line: number; readonly problem: BrokenLine }
  | { readonly code: 'too-many-columns'; readonly count: number; readonly most: number }
  | { readonly code: 'too-many-lines'; readonly count: number; readonly most: number }
  | {
      readonly code: 'same-columns';
      readonly first: string;
      readonly second: string;
      readonly column: string;
    }
  | { readonly code: 'no-column-names'; readonly needed: readonly string[] }
  | {
      readonly code: 'missing-columns';
      readonly kind: CsvKind;
      readonly missing: readonly string[];
      readonly needed: readonly string[];
    };

interface OfCell {
  readonly typed: string;
  readonly column: string;
}

export type CellProblem =
  | ({ readonly code: 'no-day' } & OfCell)
  | ({ readonly code: 'no-such-day' } & OfCell)
  | ({ readonly code: 'no-count' } & OfCell)
  | ({ readonly code: 'no-share'; readonly most: number } & OfCell)
  | ({ readonly code: 'no-choice'; readonly choices: readonly string[] } & OfCell)
  | ({ readonly code: 'no-points' } & OfCell)
  | ({ readonly code: 'out-of-bounds'; readonly least: number; readonly most: number } & OfCell)
  | { readonly code: 'no-number'; readonly column: string; readonly problem: NumberProblem }
  | { readonly code: 'too-large'; readonly column: string }
  | { readonly code: 'too-long'; readonly column: string; readonly length: number; readonly most: number }
  | { readonly code: 'no-cell'; readonly column: string };
