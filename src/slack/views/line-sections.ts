/**
 * Packs lines into as few sections as hold them. Lines that do not fit are never lost silently: the last
 * line then says how many more there are and where.
 */
import type { SectionBlock } from '@slack/types';
import { shortenedMrkdwn } from '../../words/typed-text.ts';
import { SECTION_MAX_LENGTH, section } from './block-builders.ts';

/** Room for the line that says how many more there are. */
const MORE_LINE_MAX_LENGTH = 200;

export interface LineLimits {
  /** How many sections may be used, 1 or more. */
  readonly maxSections: number;
  /** The sentence about the lines left out. @param count how many; @param firstLeftOut index of the first. */
  readonly more: (count: number, firstLeftOut: number) => string;
}

/**
 * No lines give no section.
 *
 * @param title goes above the lines in the first section; may be empty.
 */
export function lineSections(title: string, lines: readonly string[], limits: LineLimits): SectionBlock[] {
  if (lines.length === 0) return [];
  const texts: string[] = [];
  let text = title;
  let used = 0;
  for (const rawLine of lines) {
    const line = shortenedMrkdwn(rawLine, SECTION_MAX_LENGTH - MORE_LINE_MAX_LENGTH);
    const isLast = texts.length === limits.maxSections - 1;
    const isEnd = used === lines.length - 1;
    const room = SECTION_MAX_LENGTH - (isLast && !isEnd ? MORE_LINE_MAX_LENGTH : 0);
    if (text !== '' && text.length + 1 + line.length > room) {
      if (isLast) break;
      texts.push(text);
      text = line;
    } else {
      text = text === '' ? line : `${text}\n${line}`;
    }
    used += 1;
  }
  if (used < lines.length) text = `${text}\n${limits.more(lines.length - used, used)}`;
  return [...texts, text].map(section);
}
