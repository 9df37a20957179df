/** The words of the history: above it, beside its lines, and in place of it. */
import type { HistoryAdvice } from '../../app/advice/advice.ts';
import {
  type HistoryWindow,
  historyWindow,
  type ShownRatio,
  type ShownSprint,
} from '../../app/advice/shown-in-chart.ts';
import { LEAST_CHART_VALUES, type OrdinaryLimits, ordinaryLimits } from '../../forecast/control-chart.ts';
import { isDefined, type Ratio } from '../../sprint/undefined-value.ts';
import { against, number, percent, shortDateNoYear, wholePercent } from '../amounts.ts';
import { say } from '../say.ts';
import { reasonSentence } from '../undefined.ts';
import { altTextOf, type ChartHeading, shortName } from './chart-text.ts';

/** Words beside a height of a panel. Shares: 1 means 100%. */
export interface HeightText {
  readonly value: number;
  readonly text: string;
  readonly bold?: boolean;
}

/** More sprints than these are counted instead of named. */
const MOST_NAMED = 4;

export function historyHeading(advice: HistoryAdvice): ChartHeading {
  const sentences = basisSentences(advice);
  return { title: say('history-chart-title'), name: advice.team.name, subtitle: sentences.join(' ') };
}

function basisSentences(advice: HistoryAdvice): string[] {
  const imported = importedOf(advice.past);
  return [
    sprintsSentence(advice),
    ...(imported === 0 ? [] : [say('chart-sprints-imported', { sprints: imported })]),
    ...windowSentences(advice),
  ];
}

function importedOf(past: readonly ShownSprint[]): number {
  return past.filter(({ importedAt }) => importedAt !== undefined).length;
}

function sprintsSentence({ past }: HistoryAdvice): string {
  const last = past.at(-1);
  return last === undefined
    ? say('history-chart-no-sprint')
    : say('history-chart-sprints', { sprints: past.length, endsOn: last.endsOn });
}

/** How many of the sprints are shown, and whether they are too few for more. */
function windowSentences(advice: HistoryAdvice): string[] {
  const { past, earlier } = historyWindow(advice);
  return [
    ...(earlier === 0 ? [] : [say('history-chart-latest-shown', { sprints: past.length })]),
    ...(past.length < LEAST_CHART_VALUES
      ? [say('history-chart-usual-from', { sprints: LEAST_CHART_VALUES })]
      : []),
  ];
}

/** As a percentage, or from 10,000% on as so many times: `150×`. Keeps the words beside an axis short. */
export function shortShare(share: number): string {
  return Math.abs(share) < 100
    ? wholePercent(share)
    : say('history-chart-times', { times: Math.round(share) });
}

/** A value that crosses a threshold never looks as if it lay on it. */
export function latestShare(
  latest: number,
  { floor, ceiling }: Pick<ShownRatio, 'floor' | 'ceiling'>,
): string {
  if (floor !== undefined && latest < floor) return against(latest, floor).value;
  if (ceiling !== undefined && latest > ceiling) return against(latest, ceiling).value;
  return percent(latest);
}

/** Where the line of growth for each member-day ends. */
export function perMemberDayText(growth: number): HeightText {
  return {
    text: say('history-chart-per-member-day', { share: shortShare(growth) }),
    value: growth,
    bold: true,
  };
}

export function thresholdTexts({ floor, ceiling, marks }: ShownRatio): HeightText[] {
  return [
    ...(floor === undefined ? [] : [{ text: say('history-chart-at-least', { share: floor }), value: floor }]),
    ...(ceiling === undefined
      ? []
      : [{ text: say('history-chart-at-most', { share: ceiling }), value: ceiling }]),
    ...marks.map((mark) => ({ text: say('history-chart-mark', { share: mark }), value: mark })),
  ];
}

export function limitTexts({ mean, low, high }: OrdinaryLimits): HeightText[] {
  const limit = (value: number | undefined): HeightText[] =>
    value === undefined ? [] : [{ text: say('history-chart-limit', { share: shortShare(value) }), value }];
  const meanText = { text: say('history-chart-mean', { share: shortShare(mean) }), value: mean };
  return [...limit(high), meanText, ...limit(low)];
}

/** What is said of each ratio in full, and how many of its latest values there are at most, are the details. */
export function historyAltText(advice: HistoryAdvice): string {
  const shown = historyWindow(advice);
  const { past } = shown;
  const subject = say('history-alt-subject', { team: shortName(advice.team.name) });
  const summary = [
    subject,
    sprintsSentence(advice),
    ...importedSentence(advice.past),
    ...windowSentences(advice),
  ];
  const ratios = shown.ratios.map((ratio) => ({
    short: ratioSentence(ratio, [latestFact(ratio)]),
    full: fullSentence(ratio, past),
    values: percentTexts(ratio.values),
  }));
  const growth = growthTexts(shown);
  // One value alone is the latest, which is said anyway.
  const mostValues = past.length < 2 ? 0 : past.length - 1;
  return altTextOf(ratios.length + mostValues, (details) => {
    const full = Math.min(details, ratios.length);
    const values = details > full ? details - full + 1 : 0;
    return [
      ...summary,
      ...ratios.flatMap((ratio, index) => [
        index < full ? ratio.full : ratio.short,
        ...valuesSentence(ratio.values, values),
      ]),
      ...growth.flatMap((line) => [line.sentence, ...valuesSentence(line.values, values)]),
      ...leftOutSentence({ ratios: ratios.length - full, values: past.length - Math.max(1, values) }),
    ];
  });
}

function leftOutSentence({ ratios, values }: { ratios: number; values: number }): string[] {
  if (ratios > 0) return [say('history-alt-ratios-left-out', { ratios })];
  return values > 0 ? [say('history-alt-values-left-out', { values })] : [];
}

/** How many were imported, and up to when where all of them came before the others. */
function importedSentence(past: readonly ShownSprint[]): string[] {
  const imported = importedOf(past);
  if (imported === 0) return [];
  const last = past[imported - 1];
  return last && importedOf(past.slice(0, imported)) === imported
    ? [say('history-alt-imported', { sprints: imported, to: last.endsOn })]
    : [say('chart-sprints-imported', { sprints: imported })];
}

function ratioSentence({ ratio }: ShownRatio, facts: readonly string[]): string {
  return say('history-alt-ratio', { ratio: say('ratio-title', { ratio }), facts });
}

function fullSentence(shown: ShownRatio, past: readonly ShownSprint[]): string {
  const { values, marks } = shown;
  const last = values.at(-1);
  if (!values.some(isDefined)) {
    const sentence = ratioSentence(shown, [latestFact(shown)]);
    return last === undefined || isDefined(last) ? sentence : `${sentence} ${reasonSentence(last.undefined)}`;
  }
  const ordinary = ordinaryLimits(shown.chart);
  return ratioSentence(shown, [
    latestFact(shown),
    ...(ordinary ? [say('history-alt-mean', { share: ordinary.mean }), ...usualFact(ordinary)] : []),
    ...thresholdTexts({ ...shown, marks: [] }).map(({ text }) => text),
    ...(marks.length === 0 ? [] : [say('history-alt-marks', { marks: marks.map(percent) })]),
    ...sprintsFact('crossed', shown.crossedAt, past),
    ...sprintsFact('signal', shown.signalsAt, past),
  ]);
}

function latestFact(ratio: ShownRatio): string {
  const perMemberDay = ratio.perMemberDay?.findLast((growth) => growth !== undefined);
  const latest = latestOf(ratio);
  return perMemberDay === undefined
    ? latest
    : say('history-alt-per-member-day', { latest, share: perMemberDay });
}

function latestOf(ratio: ShownRatio): string {
  const latest = ratio.values.at(-1);
  if (latest === undefined) return say('history-alt-no-sprint');
  return isDefined(latest)
    ? say('history-alt-latest', { share: latestShare(latest, ratio) })
    : say('history-alt-latest-none');
}

/** `ordinarily 74% or more`, `ordinarily up to 35%`, `ordinarily 60% to 96%`; nothing where no limit is shown. */
export function usualFact({ low, high }: OrdinaryLimits): string[] {
  if (low === undefined && high === undefined) return [];
  const limits = low === undefined ? 'high' : high === undefined ? 'low' : 'both';
  return [say('history-alt-usual', { limits, low: low ?? 0, high: high ?? 0 })];
}

/** `crossed in the sprints that ended 9 Jan and 6 Feb`, `signal in 12 of these sprints, last 6 Feb` */
function sprintsFact(
  what: 'crossed' | 'signal',
  places: ReadonlySet<number>,
  past: readonly ShownSprint[],
): string[] {
  const days = past.flatMap(({ endsOn }, place) => (places.has(place) ? [endsOn] : []));
  const [sprints, last] = [days.length, days.at(-1)];
  if (last === undefined) return [];
  return sprints <= MOST_NAMED
    ? [say(`history-alt-${what}`, { sprints, ends: days.map(shortDateNoYear) })]
    : [say(`history-alt-${what}-often`, { sprints, last })];
}

/** Percentages without their sign; none where no value is known. */
function percentTexts(values: readonly Ratio[]): string[] {
  if (!values.some(isDefined)) return [];
  return values.map((value) =>
    isDefined(value) ? number(Math.round(value * 100)) : say('history-alt-no-value'),
  );
}

/** So many of the latest values. */
function valuesSentence(percents: readonly string[], most: number): string[] {
  const values = most === 0 ? [] : percents.slice(-most);
  if (values.length < 2) return [];
  return values.length === percents.length
    ? [say('history-alt-all-values', { values })]
    : [say('history-alt-latest-values', { count: values.length, values })];
}

function growthTexts({ growth = [] }: HistoryWindow): { sentence: string; values: string[] }[] {
  if (growth.length === 0) return [];
  const lines = [
    { ratio: say('history-alt-value-growth'), shares: growth.map(({ valueGrowth }) => valueGrowth) },
    { ratio: say('history-alt-velocity-growth'), shares: growth.map(({ velocityGrowth }) => velocityGrowth) },
  ];
  return lines.map(({ ratio, shares }) => {
    const last = shares.findLast(isDefined);
    const fact =
      last === undefined ? say('history-alt-latest-none') : say('history-alt-last-known', { share: last });
    return { sentence: say('history-alt-ratio', { ratio, facts: [fact] }), values: percentTexts(shares) };
  });
}
