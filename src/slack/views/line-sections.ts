/**
 * Packs lines into as few sections as hold them. Lines that do not fit are never lost silently: the last
 * line then says how many more there are and where.
 */
import type { SectionBlock } from '@slack/types';
import { shortenedMrkdwn } from '../../words/typed-text.ts';
import { SECTION_MAX_LENGTH, section } from './block-builders.ts';

/** Room for the line that says how many more there are. */
const MORE_LINE_MAX_LENGTH = 200;

/** Lines of a message, which gives each of its lists the room that it can spare. */
export interface LineList {
  readonly type: 'lines';
  /** Goes above the lines in the first section; may be empty. */
  readonly title: string;
  readonly lines: readonly string[];
  /** The sentence about the lines left out. @param count how many; @param firstLeftOut index of the first. */
  readonly more: (count: number, firstLeftOut: number) => string;
  /** Of which there are no lines, as they would be too many. */
  readonly unlisted: number;
}

export function lineList(
  title: string,
  lines: readonly string[],
  more: LineList['more'],
  unlisted = 0,
): LineList {
  return { type: 'lines', title, lines, more, unlisted };
}

interface Room {
  /** 1 or more. */
  readonly maxSections?: number;
  /** Of all sections together, in characters. Title and last line come in any case. */
  readonly maxLength?: number;
}

/** No lines give no section. */
export function lineSections(list: LineList, room: Room): SectionBlock[] {
  if (list.lines.length === 0) return [];
  const whole = pack(list, room, 0);
  const isWhole = whole.used === list.lines.length && list.unlisted === 0;
  const { texts, used } = isWhole ? whole : pack(list, room, MORE_LINE_MAX_LENGTH);
  const leftOut = list.lines.length - used + list.unlisted;
  if (leftOut > 0) texts.push(joined(texts.pop() ?? '', list.more(leftOut, used)));
  return texts.map(section);
}

function joined(text: string, line: string): string {
  return text === '' ? line : `${text}\n${line}`;
}

/** Takes lines until the room is full, but for the characters that are kept free. */
function pack(
  { title, lines }: LineList,
  { maxSections = Number.POSITIVE_INFINITY, maxLength = Number.POSITIVE_INFINITY }: Room,
  keptFree: number,
): { texts: string[]; used: number } {
  const texts = [title];
  let length = title.length;
  let used = 0;
  for (const rawLine of lines) {
    const line = shortenedMrkdwn(rawLine, SECTION_MAX_LENGTH - MORE_LINE_MAX_LENGTH);
    const longer = joined(texts.at(-1) ?? '', line);
    const fits = longer.length <= SECTION_MAX_LENGTH - keptFree;
    if (length + line.length + 1 > maxLength - keptFree || (!fits && texts.length === maxSections)) break;
    if (fits) texts[texts.length - 1] = longer;
    else texts.push(line);
    length += line.length + 1;
    used += 1;
  }
  return { texts, used };
}
