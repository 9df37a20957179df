/**
 * Reads the cells of one line as what they should be, and keeps what is wrong with each that can't be read. An empty
 * cell is undefined. Nothing is guessed: what can be read in two ways is asked about.
 */

import { type Day, isDay } from '../../sprint/calendar.ts';
import { MAX_POINTS } from '../../sprint/points.ts';
import { readDay } from '../read-day.ts';
import { readNumber } from '../read-number.ts';
import { visibleText } from '../visible-text.ts';
import type { ColumnName, CsvKind } from './csv-columns.ts';
import type { CellProblem } from './csv-problem.ts';
import type { TableLine } from './read-table.ts';
import { unescapeFormula } from './write-csv.ts';

/** The largest sum of points that is kept. */
const MOST_SUM_POINTS = 99_999_999.5;

/** Not more than two decimals: with three, the mark may as well separate thousands. */
const HALVES = /^([-−+]?)(\d{1,8})(?:[.,]([05])0?)?$/;
const COUNT = /^\d{1,6}$/;

/** @template More what else the reader of the line may find wrong with it */
export class LineReader<Kind extends CsvKind, More = never> {
  readonly problems: (CellProblem | More)[] = [];
  readonly #line: TableLine<Kind>;

  constructor(line: TableLine<Kind>) {
    this.#line = line;
  }

  get lineNumber(): number {
    return this.#line.lineNumber;
  }

  get fileName(): string {
    return this.#line.fileName;
  }

  tell(problem: CellProblem | More): void {
    this.problems.push(problem);
  }

  /** One line of text, `''` when it is empty. */
  text(column: ColumnName<Kind>, mostCharacters: number): string {
    return this.#shortEnough(
      column,
      visibleText(this.#plain(column)).replace(/\s+/g, ' ').trim(),
      mostCharacters,
    );
  }

  /** Text that may have several lines. */
  longText(column: ColumnName<Kind>, mostCharacters: number): string {
    const text = visibleText(this.#plain(column)).trim();
    return this.#shortEnough(column, text, mostCharacters);
  }

  requiredText(column: ColumnName<Kind>, mostCharacters: number): string {
    const text = this.text(column, mostCharacters);
    if (text === '') this.#tellMissing(column);
    return text;
  }

  day(column: ColumnName<Kind>): Day | undefined {
    const cell = this.#line.cell(column);
    if (cell === '') return undefined;
    const day = writtenDay(cell);
    if (day !== undefined && isDay(day)) return day;
    this.tell({ code: day === undefined ? 'no-day' : 'no-such-day', typed: cell, column });
    return undefined;
  }

  requiredDay(column: ColumnName<Kind>): Day | undefined {
    if (this.#line.cell(column) === '') this.#tellMissing(column);
    return this.day(column);
  }

  /** A sum of points, 0 or more. */
  sumOfPoints(column: ColumnName<Kind>): number | undefined {
    return this.#halves(column, 0, MOST_SUM_POINTS);
  }

  requiredSumOfPoints(column: ColumnName<Kind>): number | undefined {
    if (this.#line.cell(column) === '') this.#tellMissing(column);
    return this.sumOfPoints(column);
  }

  /** A sum of points that may be below 0. */
  changeOfPoints(column: ColumnName<Kind>): number | undefined {
    return this.#halves(column, -MOST_SUM_POINTS, MOST_SUM_POINTS);
  }

  /** What a member may say: 0 to 999.5. */
  points(column: ColumnName<Kind>): number | undefined {
    return this.#halves(column, 0, MAX_POINTS);
  }

  requiredPoints(column: ColumnName<Kind>): number | undefined {
    if (this.#line.cell(column) === '') this.#tellMissing(column);
    return this.points(column);
  }

  /** A whole number from 0 on. */
  count(column: ColumnName<Kind>): number | undefined {
    const cell = this.#line.cell(column);
    if (cell === '') return undefined;
    if (COUNT.test(cell)) return Number(cell);
    this.tell({ code: 'no-count', typed: cell, column });
    return undefined;
  }

  /** A share or ratio within the bounds, 1 means 100%; `85%` is read as well. */
  share(column: ColumnName<Kind>, least: number, most: number): number | undefined {
    const cell = this.#line.cell(column);
    if (cell === '') return undefined;
    const [, sign, number, percent] = /^([-−]?)(\d+(?:[.,]\d+)?)\s*(%?)$/.exec(cell) ?? [];
    const size = Number((number ?? '').replace(',', '.')) / (percent ? 100 : 1);
    const share = sign ? -size : size;
    if (number !== undefined && share >= least && share <= most) return share;
    this.tell({ code: 'no-share', typed: cell, column, most });
    return undefined;
  }

  /** Any number. A point is the decimal mark where commas separate the cells, a comma where semicolons do. */
  number(column: ColumnName<Kind>): number | undefined {
    const cell = this.#line.cell(column);
    if (cell === '') return undefined;
    const { separator } = this.#line;
    if (separator === ',' && /^-?\d+(?:\.\d+)?$/.test(cell)) return this.#finite(column, Number(cell));
    if (separator === ';' && /^-?\d+,\d+$/.test(cell)) {
      return this.#finite(column, Number(cell.replace(',', '.')));
    }
    const read = readNumber(cell);
    if ('value' in read) return this.#finite(column, read.value);
    this.tell({ code: 'no-number', column, problem: read.problem });
    return undefined;
  }

  /** One of some words, each with other words for the same. */
  choice<Word extends string>(
    column: ColumnName<Kind>,
    words: { readonly [Each in Word]: readonly string[] },
  ): Word | undefined {
    const cell = this.#line.cell(column);
    if (cell === '') return undefined;
    const wanted = cell.toLowerCase().replace(/[\s_-]+/g, ' ');
    const all = Object.keys(words) as Word[];
    const found = all.find((word) => word === wanted || words[word].includes(wanted));
    if (found !== undefined) return found;
    this.tell({ code: 'no-choice', typed: cell, column, choices: all });
    return undefined;
  }

  #plain(column: ColumnName<Kind>): string {
    return unescapeFormula(this.#line.cell(column));
  }

  #shortEnough(column: ColumnName<Kind>, text: string, mostCharacters: number): string {
    if (text.length <= mostCharacters) return text;
    this.tell({ code: 'too-long', column, length: text.length, most: mostCharacters });
    return text.slice(0, mostCharacters);
  }

  #tellMissing(column: ColumnName<Kind>): void {
    this.tell({ code: 'no-cell', column });
  }

  #halves(column: ColumnName<Kind>, least: number, most: number): number | undefined {
    const cell = this.#line.cell(column);
    if (cell === '') return undefined;
    const [, sign, whole, half] = HALVES.exec(cell) ?? [];
    const size = Number(whole) + (half === '5' ? 0.5 : 0);
    const points = (sign === '-' || sign === '−') && size > 0 ? -size : size;
    if (whole !== undefined && points >= least && points <= most) return points;
    const of = { typed: cell, column };
    if (whole === undefined) this.tell({ code: 'no-points', ...of });
    else this.tell({ code: 'out-of-bounds', ...of, least, most });
    return undefined;
  }

  #finite(column: ColumnName<Kind>, value: number): number | undefined {
    if (Number.isFinite(value)) return value === 0 ? 0 : value;
    this.tell({ code: 'too-large', column });
    return undefined;
  }
}

/** As year-month-day; undefined when which is which isn't clear. Dots mean that the day comes first. */
function writtenDay(cell: string): string | undefined {
  const [, year, month, date] = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ].*)?$/.exec(cell) ?? [];
  if (year && month && date) return isoOf(year, month, date);
  const [, dottedDate, dottedMonth, dottedYear] = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(cell) ?? [];
  if (dottedDate && dottedMonth && dottedYear) return isoOf(dottedYear, dottedMonth, dottedDate);
  const withMonthsName = cell.replaceAll(/[-,\s]+/g, ' ');
  return / \d{4}$/.test(withMonthsName) ? readDay(withMonthsName, ANY_DAY) : undefined;
}

/** Where the year is written, today doesn't matter. */
const ANY_DAY = '2000-01-01';

function isoOf(year: string, month: string, date: string): string {
  return `${year}-${month.padStart(2, '0')}-${date.padStart(2, '0')}`;
}
