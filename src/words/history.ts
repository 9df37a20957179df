/** The team's own trend: a signal first if there is one. It is about the team's work and about nobody in it. */
import type { HistoryAdvice, RatioHistory } from '../app/advice/advice.ts';
import { LATELY_SPRINTS } from '../app/closing/note-history.ts';
import { CHANGE_SPRINTS, type ControlChart, LEAST_CHART_VALUES } from '../forecast/control-chart.ts';
import { growthPerMemberDay, workingTime } from '../sprint/baseline.ts';
import type { RatioId } from '../sprint/sprint-ratios.ts';
import { isDefined, type Ratio } from '../sprint/undefined-value.ts';
import type { AdviceWords } from './advice.ts';
import { percent } from './amounts.ts';
import { marginWords } from './margin.ts';
import { mrkdwn, say } from './say.ts';
import { mrkdwnOf } from './typed-text.ts';
import { reasonSentence } from './undefined.ts';

/** What the short answer shows; all of it is in the details. */
const AT_A_GLANCE: readonly RatioId[] = ['keptShare', 'surpriseRatio', 'pullInRatio', 'velocityGrowth'];
const OFTEN_AT_A_GLANCE = 2;

interface Charted extends RatioHistory {
  readonly chart: ControlChart;
}

export function historyWords(advice: HistoryAdvice): AdviceWords {
  const { ratios, past, margin, growth, goals } = advice;
  if (past.length === 0) {
    return {
      lead: say('history-none'),
      evidence: [mrkdwn('advice-import-hint')],
      details: [],
      unknown: [],
      isAnswered: false,
    };
  }
  const charted = ratios.filter((ratio): ratio is Charted => !('undefined' in ratio.chart));
  const signals = charted.filter(({ chart }) => chart.latest.reading === 'signal');
  const often = oftenCrossed(charted, signals);
  return {
    lead: leadOf(past.length, charted, signals),
    evidence: [
      ...signals.slice(0, 1).map((first) => signalWords(first, signals.length)),
      ...(signals.length > 0 ? [] : oftenCrossedWords(often.slice(0, OFTEN_AT_A_GLANCE))),
      { title: mrkdwn('history-glance-title'), lines: ratios.flatMap(glanceLine) },
      ...(goals ? [mrkdwn('history-goals', { ...goals })] : []),
    ],
    details: [
      ...(signals.length > 1 ? [signals.map(signalLine).join('\n')] : []),
      ...(signals.length > 0 || often.length > OFTEN_AT_A_GLANCE ? oftenCrossedWords(often) : []),
      { title: mrkdwn('history-lines-title'), lines: ratios.map(ratioLine) },
      readingWords(charted.length, ratios.length),
      `${velocityWords(advice)} ${valueWords(past, growth)}`,
      marginWords(margin),
      basisWords(advice),
    ],
    unknown: [
      mrkdwn('history-unknown-cause'),
      mrkdwn('history-unknown-target'),
      ...(growth ? [mrkdwn('history-unknown-value')] : []),
    ],
    isAnswered: true,
  };
}

function leadOf(sprints: number, charted: readonly Charted[], signals: readonly Charted[]): string {
  const [first] = signals;
  if (first && signals.length === 1) return `${say('history-one-signal')} ${signalSentence(first)}`;
  if (first) {
    const names = signals.map(({ ratio }) => say('ratio-name', { ratio }));
    return say('history-signals', { count: signals.length, ratios: names });
  }
  const changed = charted.filter(
    ({ ratio, chart }) => AT_A_GLANCE.includes(ratio) && chart.meanBefore !== undefined,
  );
  if (changed.length > 0) {
    return say('history-changed-before', {
      ratios: changed.map(({ ratio }) => say('ratio-name', { ratio })),
    });
  }
  const longest = Math.max(0, ...charted.map(({ chart }) => chart.values));
  if (longest > 0) return say('history-ordinary', { sprints: longest });
  return sprints < LEAST_CHART_VALUES
    ? say('history-too-early', { needed: LEAST_CHART_VALUES, sprints })
    : say('history-too-early-each', { needed: LEAST_CHART_VALUES });
}

/** `Your kept share of 45% is far below what is usual for you (60% to 100%).`, as plain text. */
function signalSentence({ ratio, chart }: Charted): string {
  return say('history-signal', { ratio, value: chart.latest.value, ...signalArguments(chart) });
}

/** Of a chart whose latest value is a signal. */
export function signalArguments({ latest, limits, mean, meanBefore }: ControlChart) {
  const change = latest.kinds.find((kind) => kind === 'rise' || kind === 'fall');
  const kind: 'rise' | 'fall' | 'above' | 'below' =
    change ?? (latest.kinds.includes('above the limits') ? 'above' : 'below');
  return { kind, ...limits, mean, before: meanBefore ?? mean, sprints: CHANGE_SPRINTS };
}

/** The first of several signals, and what to do with one; the sentence of the only one leads the answer. */
function signalWords(first: Charted, signals: number): string {
  return [...(signals > 1 ? [signalLine(first)] : []), mrkdwn('history-ask')].join('\n');
}

function signalLine(signal: Charted): string {
  return `• ${mrkdwnOf(signalSentence(signal))}`;
}

/** Ordinary doesn't mean on target: lines that are crossed in half of the latest sprints or more. */
function oftenCrossed(charted: readonly Charted[], signals: readonly Charted[]): Charted[] {
  return charted.filter((ratio) => {
    const { sprints, of } = crossedLately(ratio);
    return !signals.includes(ratio) && sprints > 0 && 2 * sprints >= of;
  });
}

function oftenCrossedWords(often: readonly Charted[]): string[] {
  const ratios = often.flatMap((ratio) => {
    const lines = linesOf(ratio);
    return lines ? [say('history-often', { ratio: ratio.ratio, ...lines, ...crossedLately(ratio) })] : [];
  });
  return ratios.length === 0 ? [] : [mrkdwn('history-often-crossed', { ratios })];
}

/** `• Kept share: 92%, mean 84%`, of the ratios that the verdict shows. */
function glanceLine({ ratio, values }: RatioHistory): string[] {
  const latest = values.at(-1);
  if (!AT_A_GLANCE.includes(ratio) || latest === undefined || !isDefined(latest)) return [];
  const known = values.filter(isDefined);
  const said = { ratio, value: latest, mean: meanOf(known), sprints: known.length };
  return [`• ${mrkdwn('history-glance', said)}`];
}

/** `• Kept share: 92%. Mean 84%, usually 62% to 100%: ordinary variation. Below its floor of 80% in 3 of …` */
function ratioLine(history: RatioHistory): string {
  const { ratio, values } = history;
  const latest = values.at(-1);
  if (latest === undefined || !values.some(isDefined)) return `• ${mrkdwn('history-unknown', { ratio })}`;
  const value = isDefined(latest)
    ? mrkdwn('history-latest', { ratio, value: latest })
    : `${mrkdwn('history-latest-none', { ratio })} ${reasonSentence(latest.undefined)}`;
  return `• ${[value, usualSentence(history), ...linesSentence(history)].join(' ')}`;
}

function usualSentence({ chart, values }: RatioHistory): string {
  if (!('undefined' in chart)) {
    const { latest, mean, meanBefore: before, values: sprints, limits } = chart;
    const usual = mrkdwn('history-usual', { reading: readingCode(latest.reading), mean, ...limits });
    return before === undefined ? usual : `${usual} ${mrkdwn('history-changed', { sprints, before })}`;
  }
  const known = values.filter(isDefined);
  return known.length === 1
    ? mrkdwn('history-first')
    : mrkdwn('history-mean', { mean: meanOf(known), sprints: known.length });
}

/** Codes of messages have no blanks. */
function readingCode(reading: ControlChart['latest']['reading']): 'signal' | 'unusual' | 'ordinary' {
  return reading === 'ordinary variation' ? 'ordinary' : reading;
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Which lines there are, and how often they were crossed lately. */
function linesSentence(history: RatioHistory): string[] {
  if (history.marks.length > 0) return [mrkdwn('history-marks', { marks: history.marks.map(percent) })];
  const lines = linesOf(history);
  const { sprints, of } = crossedLately(history);
  if (!lines || (of === 1 && sprints === 0)) return [];
  const often = of === 1 ? 'once' : sprints === 0 ? 'never' : sprints === of ? 'always' : 'sometimes';
  return [mrkdwn(`history-${lines.line}`, { ...lines, often, sprints, of })];
}

/** The floor and the ceiling; a line that there is none of is 0 and not spoken of. */
function linesOf({ floor, ceiling }: RatioHistory) {
  if (floor === undefined && ceiling === undefined) return undefined;
  const line: 'floor' | 'ceiling' | 'band' =
    ceiling === undefined ? 'floor' : floor === undefined ? 'ceiling' : 'band';
  return { line, floor: floor ?? 0, ceiling: ceiling ?? 0 };
}

/** In how many of the latest sprints that have the number a floor or ceiling was crossed. */
function crossedLately({ values, crossedAt }: RatioHistory): { sprints: number; of: number } {
  const latest: number[] = [];
  for (let i = values.length - 1; i >= 0 && latest.length < LATELY_SPRINTS; i -= 1) {
    if (isDefined(values[i] as Ratio)) latest.push(i);
  }
  return { sprints: latest.filter((i) => crossedAt.includes(i)).length, of: latest.length };
}

/** How to read the lines of the ratios. */
function readingWords(charted: number, ratios: number): string {
  return [
    ...(charted > 0 ? [mrkdwn('history-reading', { sprints: CHANGE_SPRINTS })] : []),
    ...(charted < ratios ? [mrkdwn('history-reading-from', { needed: LEAST_CHART_VALUES })] : []),
  ].join(' ');
}

function velocityWords({ past, velocityBaseline: found }: HistoryAdvice): string {
  if (!found) return mrkdwn('history-velocity-growth-none');
  const { name, ...baseline } = found.baseline;
  const compared =
    name === undefined
      ? mrkdwn('history-velocity-growth-median')
      : mrkdwn('history-velocity-growth', { sprint: name });
  const latest = past.at(-1);
  const growth =
    latest?.velocityPoints === undefined
      ? undefined
      : growthPerMemberDay(latest.velocityPoints, workingTime(latest), baseline);
  return growth === undefined
    ? compared
    : `${compared} ${mrkdwn('history-growth-per-member-day', { growth })}`;
}

function valueWords(past: HistoryAdvice['past'], growth: HistoryAdvice['growth']): string {
  if (!growth) return mrkdwn('history-value-none');
  const place = growth.findLastIndex(({ valueGrowth }) => isDefined(valueGrowth));
  const firstPlace = growth.findIndex(({ valueGrowth }) => isDefined(valueGrowth));
  const known = growth[place];
  if (!known || !isDefined(known.valueGrowth)) return mrkdwn('history-value-unknown');
  const first = past[firstPlace]?.name ?? '';
  if (place === firstPlace) return mrkdwn('history-value-first', { sprint: first });
  const value = { latest: past[place]?.name ?? '', first, value: known.valueGrowth };
  if (!isDefined(known.velocityGrowth)) return mrkdwn('history-value', value);
  const both = { ...value, velocity: known.velocityGrowth };
  const point = known.valuePerPointGrowth;
  return isDefined(point) && point > 0
    ? mrkdwn('history-value-point', { ...both, point })
    : mrkdwn('history-value-velocity', both);
}

function basisWords({ past, importedSprints: imported }: HistoryAdvice): string {
  const [from, to] = [past[0], past.at(-1)];
  if (!from || !to) return '';
  return [
    mrkdwn('history-basis', { sprints: past.length, startsOn: from.startsOn, endsOn: to.endsOn }),
    ...(imported === 0 ? [] : [mrkdwn('history-basis-imported', { imported })]),
    mrkdwn('history-cancelled'),
  ].join(' ');
}
