/** What the history picture shows, in sentences. Pure. */
import type { HistoryAdvice } from '../app/advice/advice.ts';
import type { PastSprint } from '../app/history/past-sprint.ts';
import { formatPercent } from '../sprint/percent.ts';
import { ratioTitle } from '../sprint/ratio-names.ts';
import { isDefined, type Ratio } from '../sprint/undefined-value.ts';
import { wholePercent } from '../sprint/whole-percent.ts';
import { reasonSentence } from '../words/undefined.ts';
import { fittingText, listText, spokenName } from './alt-text.ts';
import { dateShort } from './day-text.ts';
import { historySubtitle } from './history-option.ts';
import { type HistoryWindow, historyWindow, type ShownRatio } from './history-window.ts';
import { ordinaryLimits, ordinaryText } from './ordinary-limits.ts';
import { latestText } from './ratio-panel.ts';

/** How many of the latest values of each ratio are told; a long history falls back to the next one. */
const latestTold = [Number.POSITIVE_INFINITY, 12, 8, 5, 3, 0] as const;
/** More sprints than these are counted instead of named. */
const mostNamed = 4;

/** At most 2,000 characters: each ratio's latest value, what is ordinary, crossings and signals, and its values. */
export function historyAltText(advice: HistoryAdvice): string {
  const shown = historyWindow(advice);
  const name = spokenName(advice.team.name);
  const subject = name === '' ? 'History' : `History of the team “${name}”`;
  const start = [
    `${subject}: ${historySubtitle(advice).replaceAll(' · ', ', ')}.`,
    ...importedText(shown.past),
  ].join(' ');
  const versions = latestTold.map((most) =>
    [
      start,
      ...shown.ratios.map((ratio) => ratioText(ratio, shown.past, most)),
      ...growthText(shown, most),
    ].join(' '),
  );
  return fittingText([...versions, [start, ...shown.ratios.map((ratio) => `${latestOf(ratio)}.`)].join(' ')]);
}

/** Which of those shown were imported, where that can be said shortly. */
function importedText(past: readonly PastSprint[]): string[] {
  const isOwn = ({ importedAt }: PastSprint): boolean => importedAt === undefined;
  const own = past.findIndex(isOwn);
  const lastImported = past[own - 1];
  if (lastImported === undefined || !past.slice(own).every(isOwn)) return [];
  return [`Those up to ${dateShort(lastImported.endsOn)} were imported.`];
}

function ratioText(ratio: ShownRatio, past: readonly PastSprint[], most: number): string {
  const { values, floor, ceiling, marks } = ratio;
  if (!values.some(isDefined)) return `${latestOf(ratio)}. ${whyNone(values)}`.trim();
  const ordinary = ordinaryLimits(ratio.chart);
  const variation = ordinary && ordinaryText(ordinary);
  const parts = [
    latestOf(ratio),
    ...(ordinary === undefined ? [] : [`mean ${wholePercent(ordinary.mean)}`]),
    ...(variation === undefined ? [] : [`ordinarily ${variation}`]),
    ...(floor === undefined ? [] : [`at least ${formatPercent(floor)}`]),
    ...(ceiling === undefined ? [] : [`at most ${formatPercent(ceiling)}`]),
    ...(marks.length === 0 ? [] : [`marks at ${listText(marks.map(formatPercent))}`]),
    sprintsText('crossed', ratio.crossedAt, past),
    sprintsText('signal', ratio.signalsAt, past),
  ];
  return `${parts.filter((part) => part !== undefined).join('; ')}.${valuesText(values, most)}`;
}

function whyNone(values: readonly Ratio[]): string {
  const last = values.at(-1);
  return last === undefined || isDefined(last) ? '' : reasonSentence(last.undefined);
}

function latestOf(ratio: ShownRatio): string {
  const latest = ratio.values.at(-1);
  const name = ratioTitle(ratio.ratio);
  if (latest === undefined) return `${name}: no sprint yet`;
  return `${name}: latest ${isDefined(latest) ? latestText(latest, ratio) : 'none'}`;
}

/** `crossed in sprints that ended 9 Jan and 6 Feb`, `signal in 12 of these sprints, last 6 Feb`. */
function sprintsText(
  what: string,
  places: ReadonlySet<number>,
  past: readonly PastSprint[],
): string | undefined {
  const ends = [...places]
    .sort((a, b) => a - b)
    .flatMap((place) => past[place]?.endsOn ?? [])
    .map(dateShort);
  if (ends.length === 0) return undefined;
  return ends.length <= mostNamed
    ? `${what} in ${ends.length === 1 ? 'the sprint' : 'sprints'} that ended ${listText(ends)}`
    : `${what} in ${ends.length} of these sprints, last ${ends.at(-1)}`;
}

function valuesText(values: readonly Ratio[], most: number): string {
  const told = most === 0 ? [] : values.slice(-most);
  if (told.length < 2) return '';
  const start = told.length === values.length ? 'Oldest first' : `The latest ${told.length}`;
  return ` ${start}: ${told.map((value) => (isDefined(value) ? wholePercent(value).slice(0, -1) : 'none')).join(', ')}%.`;
}

function growthText({ growth }: HistoryWindow, most: number): string[] {
  if (growth === undefined) return [];
  const lines = [
    { name: 'Growth of the recorded value', values: growth.map(({ valueGrowth }) => valueGrowth) },
    { name: 'Growth of the velocity beside it', values: growth.map(({ velocityGrowth }) => velocityGrowth) },
  ];
  return lines.map(({ name, values }) => {
    const last = values.findLast(isDefined);
    return last === undefined
      ? `${name}: none.`
      : `${name}: last known ${wholePercent(last)}.${valuesText(values, most)}`;
  });
}
