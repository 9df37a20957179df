/** One ratio over the closed sprints, as one line: its latest value, what is usual, and how often a line was crossed. */
import type { RatioHistory } from '../../app/advice/advice.ts';
import { LATELY_SPRINTS } from '../../app/closing/note-history.ts';
import { formatPercent } from '../../sprint/percent.ts';
import { RATIO_NAMES } from '../../sprint/ratio-names.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { wholePercent, wholePercentSpan } from '../../sprint/whole-percent.ts';
import { reasonSentence } from '../../words/undefined.ts';
import { bold } from './block-builders.ts';

/** In how many of the latest sprints that have the number a floor or ceiling was crossed. */
export interface CrossedLately {
  readonly sprints: number;
  readonly of: number;
}

export function crossedLately({ values, crossedAt }: RatioHistory): CrossedLately {
  const latest = values.flatMap((value, i) => (isDefined(value) ? [i] : [])).slice(-LATELY_SPRINTS);
  return { sprints: latest.filter((i) => crossedAt.includes(i)).length, of: latest.length };
}

/** `• Kept share 92%; mean 84%, usually 62 to 100%: ordinary variation. Below its floor of 80% in 3 of the last 8 sprints.` */
export function ratioHistoryLine(history: RatioHistory): string {
  const { ratio, values } = history;
  const name = RATIO_NAMES[ratio];
  const heading = bold(`${name.charAt(0).toUpperCase()}${name.slice(1)}`);
  const latest = values.at(-1);
  if (latest === undefined || !values.some(isDefined)) return `• ${heading}: not known from these sprints.`;
  const start = isDefined(latest)
    ? `${formatPercent(latest)}; ${usualWords(history)}.`
    : `none; ${usualWords(history)}. ${reasonSentence(latest.undefined)}`;
  const sentences = [start, ...linesWords(history)];
  return `• ${heading} ${sentences.join(' ')}`;
}

function usualWords({ chart, values }: RatioHistory): string {
  if (!('undefined' in chart)) {
    const reading = chart.latest.reading === 'signal' ? 'a signal' : 'ordinary variation';
    return `mean ${wholePercent(chart.mean)}, usually ${wholePercentSpan(chart.limits)}: ${reading}`;
  }
  const known = values.filter(isDefined);
  const mean = known.reduce((sum, value) => sum + value, 0) / known.length;
  return known.length === 1
    ? 'the first sprint with this number'
    : `mean ${wholePercent(mean)} of ${known.length} sprints`;
}

function linesWords(history: RatioHistory): string[] {
  const { floor, ceiling, marks } = history;
  if (marks.length > 0) return [`Marks to reach: ${marks.map(formatPercent).join(' and ')}.`];
  const line = lineWords(floor, ceiling);
  if (line === undefined) return [];
  const { sprints, of } = crossedLately(history);
  if (of === 1) return sprints === 0 ? [] : [`It is ${line}.`];
  if (sprints === 0) return [`Never ${line} in the last ${of} sprints.`];
  const often = sprints === of ? `all of the last ${of}` : `${sprints} of the last ${of}`;
  return [`${line.charAt(0).toUpperCase()}${line.slice(1)} in ${often} sprints.`];
}

/** `below its floor of 80%` */
export function lineWords(floor: number | undefined, ceiling: number | undefined): string | undefined {
  if (floor !== undefined && ceiling !== undefined) {
    return `outside its ${formatPercent(floor)} to ${formatPercent(ceiling)}`;
  }
  if (floor !== undefined) return `below its floor of ${formatPercent(floor)}`;
  return ceiling === undefined ? undefined : `above its ceiling of ${formatPercent(ceiling)}`;
}
