/** Finds title, estimate and owners in a line or a field that nothing parts into columns. */
import { parsePoints } from '../../sprint/points.ts';
import { withoutEnds } from '../cards/card-link.ts';
import { headingOf } from './card-headings.ts';

export interface Columns {
  readonly title: string;
  readonly estimatePoints: number;
  readonly owners: readonly string[];
}

/** Whether the words name members, and nobody else. */
export type AreOwners = (words: string) => boolean;

const BRACKETS = /^[([{]([^()[\]{}]*)[)\]}]$/;
export const UNIT = / ?(?:(?:story )?points?|pts?\.?|sp|p)$/i;
/** `SP: 3` and `est. 3`, where the words name a column of estimates. */
const LABELLED =
  /(?<![\p{L}\d])((?:story )?\p{L}{2,12}\.?) ?[:=] ?(\d{1,3}(?:[.,]\d{1,2})?|\d{0,3}½)(?![\p{L}\d.,])/giu;
const BRACKETED_ESTIMATE = /[([{][^()[\]{}]{1,24}[)\]}]/g;
const ESTIMATE_WITH_UNIT =
  /(?<![\d.,½])(?:\d{1,3}(?:[.,]\d{1,2})?|\d{0,3}½) ?(?:(?:story )?points?|pts?\.?|sp)(?![\p{L}\d])/giu;
/** Brackets may follow the estimate, as part of an owner's name. */
const LAST_ESTIMATES = 3;
/** In place of an estimate that has yet to be found. */
const UNKNOWN = '?';
/** Words by which people before a title are called. */
const NAME_WORDS_MAX = 6;
/** Hardly any card is estimated at more (common practice, no published source). */
const LARGEST_USUAL = 21;
/** Somebody named behind one of these belongs to the title's sentence: `Review the plan with @ana`. */
const BEFORE_PERSON = /(?:^| )(?:about|and|as|at|by|for|from|of|to|with)$/i;
/** What parts a title, an estimate behind it and owners. */
export const BETWEEN = new Set(' \t|,;:–—-=→');

/** `5`, and where that is wanted `(5)`, `[5]`, `5 pts`, `SP: 5` as well. */
export function estimateOf(field: string): number | undefined {
  const typed = (BRACKETS.exec(field.trim())?.[1] ?? field).trim();
  const [, label, amount] = /^(\D{1,15}?)[:=\s]\s*(\S{1,6})$/.exec(typed) ?? [];
  const isLabelled = label !== undefined && headingOf(label)?.field === 'estimate';
  return parsePoints(isLabelled ? (amount ?? '') : typed.replace(UNIT, ''));
}

/** `Title (5) @owner`, `Title @owner 5`, `Title 5 @owner` */
export function withoutColumns(line: string, areOwners: AreOwners): Columns | undefined {
  return (
    withEstimateBeside(line, areOwners) ??
    withEstimateLast(line, areOwners) ??
    withEstimateBeforeOwners(line, areOwners)
  );
}

/** `@owner Title` */
export function withOwnersFirst(columns: Columns, areOwners: AreOwners): Columns {
  const words = /^<?@/.test(columns.title) ? columns.title.split(' ') : [];
  for (let count = Math.min(words.length - 1, NAME_WORDS_MAX); count > 0; count -= 1) {
    const owner = withoutEnds(words.slice(0, count).join(' '), BETWEEN, 'end');
    if (areOwners(owner))
      return { ...columns, title: words.slice(count).join(' '), owners: [owner, ...columns.owners] };
  }
  return columns;
}

/** `Title (5) @owner`, `Title: 5 pts`, `[5] Title @owner` */
function withEstimateBeside(line: string, areOwners: AreOwners): Columns | undefined {
  const found = [BRACKETED_ESTIMATE, ESTIMATE_WITH_UNIT, LABELLED]
    .flatMap((form) => [...line.matchAll(form)])
    .sort((a, b) => b.index - a.index);
  // It is at the end, before the owners, or at the beginning.
  const likely = found.filter(({ index }, i) => i < LAST_ESTIMATES || index === 0);
  for (const { 0: typed, index } of likely) {
    const estimatePoints = estimateOf(typed);
    if (estimatePoints === undefined) continue;
    const before = withoutEnds(line.slice(0, index), BETWEEN, 'both ends');
    const after = withoutEnds(line.slice(index + typed.length), BETWEEN, 'both ends');
    if (before === '' || after === '')
      return { ...titleAndOwners(before || after, areOwners), estimatePoints };
    if (/^<?@/.test(after) || (after !== UNKNOWN && areOwners(after)))
      return { title: before, estimatePoints, owners: [after] };
  }
  return undefined;
}

/** `Title @owner 5`: behind an owner, a number is no part of the title. */
function withEstimateLast(line: string, areOwners: AreOwners): Columns | undefined {
  const at = line.lastIndexOf(' ');
  const estimatePoints = parsePoints(line.slice(at + 1));
  const named = titleAndOwners(line.slice(0, at), areOwners);
  if (estimatePoints === undefined || named.owners.length === 0) return undefined;
  return { ...named, estimatePoints };
}

/** `Title 5 @owner`; in `Upgrade to version 24 @owner` the number is more likely the title's. */
function withEstimateBeforeOwners(line: string, areOwners: AreOwners): Columns | undefined {
  const { title, owners } = titleAndOwners(line, areOwners);
  const at = title.lastIndexOf(' ');
  const estimatePoints = parsePoints(title.slice(at + 1));
  if (at < 0 || owners.length === 0) return undefined;
  if (estimatePoints === undefined || estimatePoints > LARGEST_USUAL) return undefined;
  return { title: withoutEnds(title.slice(0, at), BETWEEN, 'end'), estimatePoints, owners };
}

/** Members at the end of a title, each with an `@`, are the owners. */
export function titleAndOwners(text: string, areOwners: AreOwners): { title: string; owners: string[] } {
  const at = / <?@/.exec(text)?.index ?? -1;
  const owners = text.slice(at + 1);
  const title = withoutEnds(text.slice(0, at), BETWEEN, 'end');
  const isApart = at >= 0 && areOwners(owners) && !BEFORE_PERSON.test(title);
  return isApart ? { title, owners: [owners] } : { title: text, owners: [] };
}
