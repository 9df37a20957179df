/** Chooses which dates are written under an axis of sprints, and how. Pure. */
import { dateShort, dayParts } from './day-text.ts';
import { spacedPositions } from './spaced-positions.ts';

/** About as wide as "30 Sep" and a space. */
const labelWidthPx = 48;

/**
 * One text for each date: `3 Nov`, with the year below it where it differs from the one before, or nothing where
 * there is no room. The last comes first, then every n-th before it.
 */
export function dateTickLabels(dates: readonly string[], bandPx: number): string[] {
  const each = Math.max(1, Math.ceil(labelWidthPx / bandPx));
  const fromLast = dates.map((_, index) => dates.length - 1 - index);
  const shown = spacedPositions(fromLast, each);
  let lastYear = 0;
  return dates.map((date, index) => {
    if (!shown.has(index)) return '';
    const { year } = dayParts(date);
    const label = year === lastYear ? dateShort(date) : `${dateShort(date)}\n${year}`;
    lastYear = year;
    return label;
  });
}
