/**
 * Parts a pasted line into title, estimate and owners: columns of a sheet or a table, or a list with marks. Nothing is
 * guessed: a bare number at a title's end is part of it.
 */
import { MAX_POINTS, parsePoints } from '../../sprint/points.ts';
import { withoutEnds } from '../cards/card-link.ts';
import {
  type AreOwners,
  BETWEEN,
  type Columns,
  estimateOf,
  titleAndOwners,
  UNIT,
  withOwnersFirst,
  withoutColumns,
} from './title-and-estimate.ts';

export type ColumnProblem =
  | { readonly code: 'no-estimate' }
  /** A number at the end, which may be of the title. */
  | { readonly code: 'estimate-in-title'; readonly typed: string; readonly title: string }
  | { readonly code: 'not-an-estimate'; readonly typed: string; readonly most: number }
  | { readonly code: 'two-estimates'; readonly first: string; readonly second: string }
  | { readonly code: 'open-quote' };

export type Separator = '\t' | '|' | ';' | ',';

/** A line is parted by the first of these that makes sense of it, so a title may hold the later ones. */
export const SEPARATORS: readonly Separator[] = ['\t', '|', ';', ','];
/** `- `, `1. `, `1.2. `, `a) `, `[ ] ` before the text of a list's entry; a bullet may have no space after it. */
const LIST_MARK =
  /^(?:(?:[-*+·–—>]|\d{1,3}(?:\.\d{1,3}){0,3}[.)]|[a-z]\)|\[[ xX]?\])\s+|[•◦▪‣☐☑☒✓✔⬜✅]\s*)/u;
/** `(3) ` may be a list's number or the estimate. */
const BRACKETED_MARK = /^[([]\d{1,3}[)\]]\s*/;
const TABLE_RULE = /^[\s|:+=_-]{3,}$/;
const ROW_NUMBER = /^#?\d{1,4}[.)]?$/;

/** Whether the line is a table's rule or a line between parts, such as `|---|---|`, and holds nothing. */
export function isRule(line: string): boolean {
  return isTableRule(line) || (TABLE_RULE.test(line) && /[-=_]{3}/.test(line.replace(/[\s:]+/g, '')));
}

/** `|--|:-:|`: the line above it names the columns. */
export function isTableRule(line: string): boolean {
  return TABLE_RULE.test(line) && line.includes('|') && line.includes('-');
}

/** The cells of a row; undefined when a quote in it is never closed. */
export function cellsOf(line: string, separator: Separator): string[] | undefined {
  return splitFields(separator === '|' ? withoutFrame(line.trim()) : line, separator);
}

/** Whether a title would lose its beginning, were it not in quotes. */
export function needsQuotes(title: string): boolean {
  return (
    title.startsWith('"') ||
    title.startsWith('|') ||
    LIST_MARK.test(`${title} `) ||
    BRACKETED_MARK.test(title)
  );
}

export function readLine(typed: string, areOwners: AreOwners): Columns | ColumnProblem {
  const line = withoutListMarks(typed);
  const inColumns = readColumns(line.replace(BRACKETED_MARK, ''), areOwners);
  const isRead = !('code' in inColumns) && inColumns.title !== '';
  const columns = isRead ? inColumns : (withoutColumns(line, areOwners) ?? inColumns);
  return 'code' in columns ? columns : withOwnersFirst(columns, areOwners);
}

/** A list's entry may have several marks: `- 1. [ ] Title`. */
function withoutListMarks(line: string): string {
  let [rest, marks] = [line, 0];
  while (marks < 3 && LIST_MARK.test(rest)) {
    rest = rest.replace(LIST_MARK, '');
    marks += 1;
  }
  return rest;
}

/** The line in columns, or what is wrong with it as its first separator would have it. */
function readColumns(line: string, areOwners: AreOwners): Columns | ColumnProblem {
  let firstProblem: ColumnProblem | undefined;
  for (const separator of SEPARATORS) {
    if (separator === '|' && !isTableRow(line)) continue;
    const fields = cellsOf(line, separator);
    if (fields === undefined) return { code: 'open-quote' };
    if (fields.length === 1) continue;
    const apart = fields.flatMap((field, i) => (i === 0 ? [field] : ownersApart(field, areOwners)));
    const columns = findColumns(separator === ',' ? joinDecimalCommas(apart) : apart, separator, areOwners);
    if (!('code' in columns)) return columns;
    firstProblem ??= columns;
  }
  return firstProblem ?? estimateProblem([line]);
}

function isTableRow(line: string): boolean {
  return line.startsWith('|') || line.endsWith('|') || line.includes(' | ');
}

function withoutFrame(line: string): string {
  return line.replace(/^\|/, '').replace(/\|$/, '');
}

/**
 * Splits at the separator outside of double quotes. Quotes count when they hold a whole field; a doubled
 * quote in them is a quote. Others, as in `5" screen` or `"Big" button`, are part of the text.
 */
function splitFields(line: string, separator: Separator): string[] | undefined {
  const fields: string[] = [];
  let from = 0;
  while (from <= line.length) {
    const quoted = quotedField(line, from);
    if (quoted === 'unclosed') return undefined;
    const next = line.indexOf(separator, quoted?.end ?? from);
    const end = next < 0 ? line.length : next;
    fields.push(quoted?.end === end ? quoted.text : line.slice(from, end));
    from = end + 1;
  }
  return fields;
}

/** The quoted field that begins here, with the place where it ends: at a separator or the line's end. */
function quotedField(line: string, from: number): { text: string; end: number } | 'unclosed' | undefined {
  const open = endOfSpaces(line, from);
  if (line[open] !== '"') return undefined;
  let close = line.indexOf('"', open + 1);
  while (close >= 0 && line[close + 1] === '"') close = line.indexOf('"', close + 2);
  if (close < 0) return 'unclosed';
  const end = endOfSpaces(line, close + 1);
  if (end < line.length && !isSeparator(line[end])) return undefined;
  return { text: line.slice(open + 1, close).replaceAll('""', '"'), end };
}

function isSeparator(char: string | undefined): boolean {
  return SEPARATORS.some((separator) => separator === char);
}

/** The next place that holds a separator or anything but white space. */
function endOfSpaces(line: string, from: number): number {
  let place = from;
  while (place < line.length && !isSeparator(line[place]) && /\s/.test(line[place] as string)) place += 1;
  return place;
}

/** With commas as separators `, 0,5` arrives as two fields, without a space between; puts them together. */
function joinDecimalCommas(fields: readonly string[]): string[] {
  const joined: string[] = [];
  for (const field of fields) {
    const before = joined.at(-1);
    const plain = field.trimEnd().replace(UNIT, '');
    const isAfterNumber = joined.length > 1 && before !== undefined && /^\s*\d{1,3}$/.test(before);
    // In `Title: 1,5 pts` the comma parts no columns.
    const isInTitle = plain !== field.trimEnd() && before !== undefined && /\d$/.test(before);
    const isHalf = plain === '5' && (isAfterNumber || isInTitle);
    if (isHalf) joined[joined.length - 1] = `${before},${field}`;
    else joined.push(field);
  }
  return joined;
}

/** `5 @ana`, `5 Ana` and `5 (Ana)` are an estimate and an owner. */
function ownersApart(field: string, areOwners: AreOwners): string[] {
  const words = field.replace(/\s+/g, ' ').trim();
  const [, estimate = '', owners = ''] =
    /^(\S{1,8}(?: [^\s@<]\S{0,5})?) (<?@.*)$/.exec(words) ??
    /^([\d.,½]{1,6}) [-–—(]? ?([^ ()][^()]{0,199})\)?$/.exec(words) ??
    [];
  const isOwner = /^<?@/.test(owners) || (owners !== '' && areOwners(owners));
  return isOwner && estimateOf(estimate) !== undefined ? [estimate, owners] : [field];
}

/**
 * The estimate is the last field that is an amount of points; what comes before it is the title (so an unquoted comma in a
 * title does no harm), what comes after it the owners. The field before it may name them as well; in sheets and tables any
 * field may, and a row's number come before the title.
 */
function findColumns(
  rawFields: readonly string[],
  separator: Separator,
  areOwners: AreOwners,
): Columns | ColumnProblem {
  const isTable = separator === '\t' || separator === '|';
  const all = rawFields.map((field) => field.trim());
  const hasRowNumber =
    isTable && all.length > 2 && ROW_NUMBER.test(all[0] ?? '') && parsePoints(all[1] ?? '') === undefined;
  const fields = hasRowNumber ? all.slice(1) : all;
  const bare = fields.findLastIndex((field, i) => i > 0 && parsePoints(field) !== undefined);
  const last = bare > 0 ? bare : fields.findLastIndex((field, i) => i > 0 && estimateOf(field) !== undefined);
  const estimatePoints = estimateOf(fields[last] ?? '');
  if (estimatePoints === undefined) return estimateProblem(fields);
  const [first, second] = fields.filter((field, i) => i > 0 && parsePoints(field) !== undefined);
  if (isTable && first !== undefined && second !== undefined) return { code: 'two-estimates', first, second };
  const isOwner = (field: string, i: number): boolean =>
    i > 0 && field !== '' && (isTable || i === last - 1 || /^<?@/.test(field)) && areOwners(field);
  const before = fields.slice(0, last);
  const named = before.filter((field, i) => !isOwner(field, i) && !(isTable && field === ''));
  // The owners may come first, when another field holds a title.
  const isFirst = (field: string, i: number): boolean =>
    named.length > i + 1 && field === before[i] && areOwners(field);
  const titleAt = named.findIndex((field, i) => !(isFirst(field, i) && (i === 0 || !isTable)));
  const title = named.slice(titleAt).join(isTable ? ' ' : `${separator} `);
  // A cell of a table is one field.
  const apart = isTable ? { title, owners: [] } : titleAndOwners(title, areOwners);
  return {
    title: apart.title,
    estimatePoints,
    owners: [
      ...named.slice(0, titleAt),
      ...apart.owners,
      ...before.filter(isOwner),
      ...fields.slice(last + 1),
    ],
  };
}

function estimateProblem(fields: readonly string[]): ColumnProblem {
  const candidate = fields
    .slice(1)
    .find((field) => field !== '' && !field.startsWith('@') && !field.startsWith('<@'));
  if (candidate === undefined) {
    const words = (fields[0] ?? '').split(' <@')[0]?.split(' @')[0]?.split(' ') ?? [];
    const typed = words.at(-1) ?? '';
    const title = withoutEnds(words.slice(0, -1).join(' '), BETWEEN, 'end');
    const isNumber = title !== '' && parsePoints(typed) !== undefined;
    return isNumber ? { code: 'estimate-in-title', typed, title } : { code: 'no-estimate' };
  }
  return { code: 'not-an-estimate', typed: candidate, most: MAX_POINTS };
}
