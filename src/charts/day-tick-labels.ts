/** Chooses which days are written under an axis of days, and how. Pure. */
import { dayParts, dayTick, monthShort } from './day-text.ts';
import { spacedPositions } from './spaced-positions.ts';

/** About as wide as "Wed 30" and a space. */
const labelWidthPx = 50;

/**
 * One text for each position: `start` first, then `Tue 3` for each day, or nothing where there is no room.
 * The ends come before the first days of weeks, and these before all others. The month stands below a label
 * when it differs from the one before.
 */
export function dayTickLabels(days: readonly string[], bandPx: number): string[] {
  const positions = days.map((_, index) => index + 1);
  const weekStarts = positions.filter((position) => startsWeek(days, position - 1));
  // When there is no room for every day, a label on each week reads better than on each third day.
  const fitsAll = bandPx >= labelWidthPx;
  const wanted = [0, days.length, ...(fitsAll || weekStarts.length === 0 ? positions : weekStarts)];
  const shown = spacedPositions(wanted, labelWidthPx / bandPx);

  let lastMonth = '';
  const dayLabels = days.map((day, index) => {
    if (!shown.has(index + 1)) return '';
    const month = monthShort(day);
    const label = month === lastMonth ? dayTick(day) : `${dayTick(day)}\n${month}`;
    lastMonth = month;
    return label;
  });
  return ['start', ...dayLabels];
}

/** Whether a new ISO week (Monday to Sunday) began since the day before this one in the list. */
function startsWeek(days: readonly string[], index: number): boolean {
  const day = days[index];
  const previous = days[index - 1];
  if (day === undefined || previous === undefined) return false;
  const isSevenOrMoreLater = Date.parse(day) - Date.parse(previous) >= 7 * 86_400_000;
  return isSevenOrMoreLater || daysSinceMonday(day) < daysSinceMonday(previous);
}

function daysSinceMonday(day: string): number {
  return (dayParts(day).weekdayNumber + 6) % 7;
}
