/** The team's own trend in sentences: a signal first if there is one. It tells of the team's work and of nobody in it. */
import type { HistoryAdvice, RatioHistory } from '../../app/advice/advice.ts';
import type { ControlChart, SignalKind } from '../../forecast/control-chart.ts';
import { LEAST_CHART_VALUES, RUN_LENGTH } from '../../forecast/control-chart.ts';
import { formatPercent } from '../../sprint/percent.ts';
import { RATIO_NAMES } from '../../sprint/ratio-names.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { wholePercent, wholePercentSpan } from '../../sprint/whole-percent.ts';
import { mrkdwnOf, typed } from '../../words/typed-text.ts';
import { COMMAND } from '../ids.ts';
import type { AdviceWords } from './advice-words.ts';
import { code } from './block-builders.ts';
import { datedDay } from './closed-sprint-words.ts';
import { marginWords } from './margin-words.ts';
import { importHint } from './no-answer-words.ts';
import { crossedLately, lineWords, ratioHistoryLine } from './ratio-history-line.ts';
import { counted, listed } from './sprint-words.ts';

interface Charted extends RatioHistory {
  readonly chart: ControlChart;
}

const UNKNOWN = [
  'What changed. A signal says that something did, not what or why: only the team can tell.',
  'Whether ordinary variation is good enough. That is what floors and ceilings are for.',
];
const VALUE_UNKNOWN =
  'Whether the one growth made the other. Value often comes sprints after the work, and from much besides it.';

export function historyWords(advice: HistoryAdvice): AdviceWords {
  const { ratios, past, margin, growth } = advice;
  if (past.length === 0) {
    return {
      lead: 'No history yet: no sprint has closed.',
      evidence: [importHint()],
      unknown: [],
      isAnswered: false,
    };
  }
  const charted = ratios.filter((ratio): ratio is Charted => !('undefined' in ratio.chart));
  const signals = charted.filter(({ chart }) => chart.latest.reading === 'signal');
  return {
    lead: leadOf(past.length, charted, signals),
    evidence: [
      ...signalWords(signals),
      ...oftenCrossedWords(charted, signals),
      { title: 'Latest sprint, and what is usual', lines: ratios.map(ratioHistoryLine) },
      readingWords(charted.length, ratios.length),
      growthWords(advice),
      marginWords(margin),
      basisWords(advice),
    ],
    unknown: [...UNKNOWN, ...(growth ? [VALUE_UNKNOWN] : [])],
    isAnswered: true,
  };
}

/** How to read the lines above. */
function readingWords(charted: number, ratios: number): string {
  const usually = `“Usually” is how far a number goes up and down without any special cause. Outside of that, or ${RUN_LENGTH} sprints in a row on one side of the mean, is a signal.`;
  const few = `What is usual for a number can be told from ${LEAST_CHART_VALUES} sprints on.`;
  if (charted === 0) return few;
  return charted === ratios ? usually : `${usually} ${few}`;
}

function leadOf(sprints: number, charted: readonly Charted[], signals: readonly Charted[]): string {
  const [first] = signals;
  if (first && signals.length === 1) return `A signal: your ${signalSentence(first)}.`;
  if (first)
    return `Signals in ${signals.length} numbers: ${listed(signals.map(({ ratio }) => RATIO_NAMES[ratio]))}.`;
  const longest = Math.max(0, ...charted.map(({ chart }) => chart.values));
  if (longest > 0) {
    return `No signal: the ups and downs of your ${longest} sprints are ordinary variation.`;
  }
  const there =
    sprints < LEAST_CHART_VALUES
      ? `there ${sprints === 1 ? 'is 1' : `are ${sprints}`}`
      : 'none of the numbers is known of so many';
  return `Too early to tell a signal from ordinary variation: that takes ${LEAST_CHART_VALUES} sprints, and ${there}.`;
}

/** `kept share of 45% lies below what is usual for you (60 to 100%)` */
function signalSentence({ ratio, chart }: Charted): string {
  const says = chart.latest.kinds.map((kind) => kindWords(kind, chart));
  return `${RATIO_NAMES[ratio]} of ${formatPercent(chart.latest.value)} ${says.join(', and ')}`;
}

function kindWords(kind: SignalKind, { limits, mean }: ControlChart): string {
  const usual = `what is usual for you (${wholePercentSpan(limits)})`;
  const run = `for ${RUN_LENGTH} sprints or more now`;
  switch (kind) {
    case 'above the limits':
      return `lies above ${usual}`;
    case 'below the limits':
      return `lies below ${usual}`;
    case 'run above the mean':
      return `has been above its mean of ${wholePercent(mean)} ${run}`;
    case 'run below the mean':
      return `has been below its mean of ${wholePercent(mean)} ${run}`;
  }
}

/** The sentences of several signals, and what to do with one. */
function signalWords(signals: readonly Charted[]): string[] {
  if (signals.length === 0) return [];
  const sentences = signals.length === 1 ? [] : signals.map((signal) => `• Your ${signalSentence(signal)}.`);
  const ask =
    'Something has changed, for better or worse. Ask the team what was different: keep what helped, mend what did not.';
  return [[...sentences, ask].join('\n')];
}

/** Ordinary does not mean on target: lines that are crossed in half of the latest sprints or more. */
function oftenCrossedWords(charted: readonly Charted[], signals: readonly Charted[]): string[] {
  const often = charted.filter((ratio) => {
    const { sprints, of } = crossedLately(ratio);
    return !signals.includes(ratio) && sprints > 0 && 2 * sprints >= of;
  });
  if (often.length === 0) return [];
  const lines = often.map((ratio) => {
    const { sprints, of } = crossedLately(ratio);
    return `${RATIO_NAMES[ratio.ratio]} (${lineWords(ratio.floor, ratio.ceiling)} in ${sprints} of ${of})`;
  });
  return [
    `Ordinary does not mean on target. Across its line in half of the latest sprints or more: ${listed(lines)}. No single sprint accounts for that; it takes a change in how the team plans or works.`,
  ];
}

/** How velocity and recorded value grew, and by which sprint that is measured. */
function growthWords({ past, growth, baselineSprintId }: HistoryAdvice): string {
  const baseline = past.find(({ sprintId }) => sprintId === baselineSprintId);
  const measured = baseline
    ? `Velocity growth is measured by ${typed(baseline.name)}: 100% is what that sprint finished.`
    : 'Velocity growth can be told once a sprint in which something was finished has closed.';
  return `${measured} ${valueWords(past, growth)}`;
}

function valueWords(past: HistoryAdvice['past'], growth: HistoryAdvice['growth']): string {
  if (!growth) {
    return `What the sprints were worth is not recorded. The product owner or a facilitator can do that with ${code(`${COMMAND} value`)}, and then see whether value grows with velocity.`;
  }
  const latest = growth.findLastIndex(({ valueGrowth }) => isDefined(valueGrowth));
  const first = growth.findIndex(({ valueGrowth }) => isDefined(valueGrowth));
  const told = growth[latest];
  if (!told || !isDefined(told.valueGrowth)) {
    return 'Growth of value can be told once a sprint in which something was finished has a value above 0.';
  }
  const by = typed(past[first]?.name ?? '');
  if (latest === first) {
    return `Growth of value is measured by ${by}; record the value of later sprints to see it.`;
  }
  const both = `In ${typed(past[latest]?.name ?? '')} the recorded value stood at ${formatPercent(told.valueGrowth)} of that in ${by}`;
  if (!isDefined(told.velocityGrowth)) return `${both}.`;
  const perPoint =
    isDefined(told.valuePerPointGrowth) && told.valuePerPointGrowth > 0
      ? `: a point brought ${formatPercent(told.valuePerPointGrowth)} of what it brought then`
      : '';
  return `${both}, and velocity at ${formatPercent(told.velocityGrowth)}${perPoint}.`;
}

function basisWords({ past, importedSprints }: HistoryAdvice): string {
  const from = past[0];
  const to = past.at(-1);
  const imported = importedSprints === 0 ? '' : `, ${importedSprints} of them imported`;
  const span = from && to ? `, from ${datedDay(from.startsOn)} to ${datedDay(to.endsOn)}` : '';
  return mrkdwnOf(
    `It covers ${counted(past.length, 'closed sprint')}${imported}${span}. Cancelled sprints are left out.`,
  );
}
