/**
 * What each picture shows, in sentences, for people who hear it instead of seeing it. Pure.
 * Every number in the picture is here too, as far as the platform's length for such a text allows: the state first,
 * then the details; of long ones less is said.
 */

import type { ForecastAdvice, HistoryAdvice, OddsAdvice, RangeAdvice } from '../app/advice/advice.ts';
import type { PastSprint } from '../app/history/past-sprint.ts';
import { visibleText } from '../app/visible-text.ts';
import { type AdvisedRange, advisedRange } from '../forecast/advised-range.ts';
import type { ReleaseForecast } from '../forecast/release-forecast.ts';
import { LITTLE_HISTORY_CARDS, type SurpriseOdds } from '../forecast/surprise-odds.ts';
import type { Burndown } from '../sprint/burndown.ts';
import { isDefined, type Ratio } from '../sprint/undefined-value.ts';
import { percent, percentSpan, wholePercent } from '../words/amounts.ts';
import { say } from '../words/say.ts';
import { reasonSentence } from '../words/undefined.ts';
import {
  countText,
  dateShort,
  dateWithYear,
  dayLong,
  dayShort,
  daySpan,
  listText,
  pointsNumber,
  pointsText,
} from './chart-formats.ts';
import { historyWords } from './chart-labels.ts';
import {
  type HistoryWindow,
  historyWindow,
  type OrdinaryLimits,
  ordinaryLimits,
  type ShownRatio,
} from './history-window.ts';
import {
  holdingSprint,
  leftEnd,
  type NamedDate,
  namedDates,
  pastVerdict,
  shownOdds,
  shownSprints,
  sprintEnd,
} from './shown-data.ts';

/** The platform's limit for the alternative text of an image. */
const altTextMaxLength = 2_000;
const nameMaxCharacters = 150;

/** The first version that the platform takes; they are given longest first. A last one too long is cut off. */
export function fittingText(versions: readonly string[]): string {
  const fitting = versions.find((text) => text.length <= altTextMaxLength);
  if (fitting !== undefined) return fitting;
  const cut = (versions.at(-1) ?? '').slice(0, altTextMaxLength - 1);
  // A sign of two halves must not be cut in the middle.
  return `${cut.isWellFormed() ? cut : cut.slice(0, -1)}…`;
}

/** A typed name on one line, of at most 150 characters; empty when nothing is left of it. */
export function spokenName(name: string): string {
  // By code point, so that no sign is cut in half.
  const characters = [...visibleText(name).replace(/\s+/g, ' ').trim()];
  const isLong = characters.length > nameMaxCharacters;
  return isLong ? `${characters.slice(0, nameMaxCharacters - 1).join('')}…` : characters.join('');
}

function ofTeam(what: string, { team }: Pick<OddsAdvice, 'team'>): string {
  const name = spokenName(team.name);
  return name === '' ? what : `${what} of the team “${name}”`;
}

/**
 * When a sprint is too long for all of it, the evenings go first and the days of additions second.
 * Throws a `RangeError` when a day is no ISO date.
 */
export function burndownAltText(burndown: Burndown): string {
  const { days } = burndown;
  const additions = (singly: boolean) => [
    additionsText(
      'Pulled-in work',
      days.map(({ day, pulledInPoints }) => [day, pulledInPoints]),
      singly,
    ),
    additionsText(
      'Surprise work',
      days.map(({ day, surprisePoints }) => [day, surprisePoints]),
      singly,
    ),
  ];
  const start = [burndownSubject(burndown), commitmentSentence(burndown), leftSentence(burndown)];
  return fittingText(
    [
      [...start, ...eveningsText(burndown), ...additions(true)],
      [...start, ...additions(true)],
      [...start, ...additions(false)],
    ].map((sentences) => sentences.join(' ')),
  );
}

function burndownSubject({ sprintName, days }: Burndown): string {
  const name = spokenName(sprintName);
  const of = name === '' ? 'Burndown of the sprint' : `Burndown of the sprint “${name}”`;
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return `${of}, which has no working days.`;
  return `${of}, ${daySpan(first.day, last.day)}, ${countText(days.length, 'working day')}.`;
}

function commitmentSentence({ commitmentPoints, days }: Burndown): string {
  if (commitmentPoints === 0) return 'There was no commitment, so there is no ideal line.';
  const end = pointsNumber(days.at(-1)?.idealPoints ?? 0);
  return `The commitment is ${pointsText(commitmentPoints)}, from which the ideal line falls to ${end}.`;
}

/** Where the line of points left ends, and how far that is from the ideal. */
function leftSentence(burndown: Burndown): string {
  const { commitmentPoints, today } = burndown;
  const { day, leftPoints, idealPoints } = leftEnd(burndown);
  const todayText = today === undefined ? '' : `Today is ${dayLong(today)}. `;
  if (day === undefined) return `${todayText}No day has numbers yet.`;
  const isNow = day === today;
  const when = isNow ? 'Now' : `On the evening of ${dayLong(day)},`;
  const isOne = pointsNumber(leftPoints) === '1';
  const verb = isNow ? (isOne ? 'is' : 'are') : isOne ? 'was' : 'were';
  const left = `${todayText}${when} ${pointsText(leftPoints)} ${verb} left`;
  return commitmentPoints === 0 ? `${left}.` : `${left}, ${besideIdealLine(leftPoints, idealPoints)}.`;
}

function besideIdealLine(leftPoints: number, idealPoints: number): string {
  const gap = pointsNumber(Math.abs(leftPoints - idealPoints));
  if (gap === '0') return 'as on the ideal line';
  const side = leftPoints > idealPoints ? 'more' : 'fewer';
  return `${gap} ${side} than the ${pointsNumber(idealPoints)} of the ideal line`;
}

function eveningsText({ days }: Burndown): string[] {
  const known = days.flatMap(({ day, leftPoints }) =>
    leftPoints === undefined ? [] : [`${dayShort(day)} ${pointsNumber(leftPoints)}`],
  );
  return known.length === 0 ? [] : [`Points left each evening: ${known.join(', ')}.`];
}

function additionsText(
  what: string,
  amounts: readonly (readonly [string, number])[],
  singly: boolean,
): string {
  const happened = amounts.filter(([, points]) => points !== 0);
  if (happened.length === 0) return `${what}: none.`;
  const sum = `${what}: ${pointsText(happened.reduce((total, [, points]) => total + points, 0))} in all`;
  if (!singly) return `${sum}, on ${happened.length} of the days.`;
  const single = happened.map(([day, points]) =>
    points > 0
      ? `${pointsNumber(points)} on ${dayShort(day)}`
      : `${pointsNumber(-points)} taken back on ${dayShort(day)}`,
  );
  return `${sum}: ${listText(single)}.`;
}

/** The range first, then each past sprint; long names go first when it is too much. */
export function rangeAltText(advice: RangeAdvice): string {
  const { coming, range, thresholds } = advice;
  const past = shownSprints(advice);
  const start = [
    `${ofTeam('Commitment range', advice)} for the sprint ${daySpan(coming.startsOn, coming.endsOn)}.`,
    advisedSentence(advisedRange(range)),
    ...('undefined' in range ? [] : [`Made from ${countText(range.sprints, 'sprint')} with a commitment.`]),
  ];
  const version = (named: boolean) =>
    [
      ...start,
      past.length === 0 ? 'No past sprint is shown.' : 'Past sprints, oldest first, in points:',
      ...past.map((sprint) => pastSprintText(sprint, pastVerdict(sprint, thresholds), named)),
    ].join(' ');
  return fittingText([version(true), version(false), start.join(' ')]);
}

function advisedSentence(advised: AdvisedRange): string {
  switch (advised.kind) {
    case 'range':
      return advised.lowPoints === advised.highPoints
        ? `Commit to ${pointsText(advised.highPoints)}.`
        : `Commit to ${pointsNumber(advised.lowPoints)} to ${pointsText(advised.highPoints)}.`;
    case 'at most':
      return `Commit to at most ${pointsText(advised.highPoints)}. The low end is not known. ${reasonSentence(advised.why)}`;
    case 'at least':
      return `Commit to at least ${pointsText(advised.lowPoints)}. The high end is not known. ${reasonSentence(advised.why)}`;
    case 'crossed':
      return `Commit to at most ${pointsText(advised.highPoints)}; the low end, ${pointsNumber(advised.lowPoints)}, lies above it. ${reasonSentence(advised.why)}`;
    case 'middle way':
      return (
        `Commit to about ${pointsText(advised.points)} as a compromise: the low end, ${pointsNumber(advised.lowPoints)}, lies above the high end, ` +
        `${pointsNumber(advised.highPoints)}, and at that size the chance to keep it and the chance not to pull in too much are ${wholePercent(advised.chance)} each. ${reasonSentence(advised.why)}`
      );
    case 'none':
      return `There is no range. ${reasonSentence(advised.why)}`;
  }
}

function pastSprintText(sprint: PastSprint, verdict: string, named: boolean): string {
  const { name, endsOn, importedAt, commitmentPoints, pulledInPoints, velocityPoints } = sprint;
  const amount = (points: number | undefined) => (points === undefined ? 'not known' : pointsNumber(points));
  const amounts = [
    `commitment ${pointsNumber(commitmentPoints)}`,
    `pulled in ${amount(pulledInPoints)}`,
    `velocity ${amount(velocityPoints)}`,
    verdict === 'not known' ? 'verdict not known' : verdict,
    ...(importedAt === undefined ? [] : ['imported']),
  ];
  return `${named ? `“${spokenName(name)}” ` : ''}to ${dateWithYear(endsOn)}: ${amounts.join(', ')}.`;
}

/** All sizes together, then each; of many sizes less is said. */
export function oddsAltText(advice: OddsAdvice): string {
  const subject = ofTeam('Surprise odds by size', advice);
  const { odds } = advice;
  if ('undefined' in odds) return fittingText([`${subject}: none. ${reasonSentence(odds.undefined)}`]);
  const shown = shownOdds(odds.sizes);
  const leftOut = odds.sizes.length - shown.length;
  const chance = 'The chance that a card holds surprise work';
  const start = [
    `${subject}.`,
    `${odds.withSurprise} of ${countText(odds.cards, 'card')} of ` +
      `${countText(advice.sprintsWithCards, 'closed sprint')} held surprise work ` +
      `(${wholePercent(odds.withSurprise / odds.cards)}).`,
    ...(leftOut === 0
      ? []
      : [`${countText(leftOut, 'size')} of fewer cards ${leftOut === 1 ? 'is' : 'are'} not shown.`]),
    ...(shown.some(({ borrows }) => borrows)
      ? [`Sizes of fewer than ${LITTLE_HISTORY_CARDS} cards borrow from the others.`]
      : []),
  ];
  const interval = `${chance}, and where the true chance lies 19 times in 20:`;
  return fittingText(
    [
      [...start, interval, ...shown.map((size) => `${sizeText(size)}${medianText(size)}.`)],
      [...start, interval, ...shown.map((size) => `${sizeText(size)}.`)],
      [...start, `${chance}:`, ...shown.map((size) => `${sizeChance(size)}.`)],
    ].map((sentences) => sentences.join(' ')),
  );
}

function sizeChance({ estimatePoints, likelyShare }: SurpriseOdds): string {
  return `${pointsText(estimatePoints)}: ${wholePercent(likelyShare)}`;
}

function sizeText(size: SurpriseOdds): string {
  const { cards, withSurprise, borrows, likelyInterval } = size;
  const held = cards === 0 ? 'no card yet' : `${withSurprise} of ${countText(cards, 'card')}`;
  return `${sizeChance(size)} (${percentSpan(likelyInterval)}), ${held}${borrows ? ', borrows' : ''}`;
}

function medianText({ medianSurprisePoints }: SurpriseOdds): string {
  return isDefined(medianSurprisePoints) ? `, median surprise ${pointsText(medianSurprisePoints)}` : '';
}

/** About as many sprints as the picture has room to name. */
const mostChances = 12;
const leastChance = 0.01;

/** The three dates first, then the chance at the end of some sprints. */
export function forecastAltText(advice: ForecastAdvice): string {
  const { forecast, question } = advice;
  const subject = `${ofTeam('Forecast', advice)} for ${pointsText(question.backlogPoints)} of work`;
  if ('undefined' in forecast)
    return fittingText([`${subject}: none. ${reasonSentence(forecast.undefined)}`]);
  const start = [
    `${subject}.`,
    ...namedDates(forecast).map((named) => dateText(named, advice)),
    basisText(advice, forecast),
  ].join(' ');
  return fittingText([`${start} ${chancesText(advice, forecast)}`, start]);
}

function dateText({ name, chance, date }: NamedDate, advice: ForecastAdvice): string {
  const heading = `${name.charAt(0).toUpperCase()}${name.slice(1)}, with a chance of ${wholePercent(chance)}:`;
  if ('undefined' in date) return `${heading} no date. ${reasonSentence(date.undefined)}`;
  const { sprint, endsOn } = holdingSprint(date, advice);
  return `${heading} by ${dateWithYear(date.on)}, in sprint ${sprint}, which runs to ${dateWithYear(endsOn)}.`;
}

function basisText({ question, startsOn }: ForecastAdvice, forecast: ReleaseForecast): string {
  const grows =
    question.growthPoints === 0
      ? 'the work is taken not to grow'
      : `the work grows by ${pointsText(question.growthPoints)} a sprint`;
  const from = `Made from the latest ${countText(forecast.sprintsUsed, 'sprint')}, ${pointsNumber(forecast.meanVelocityPoints)} points each on average`;
  return `${from}; work starts on ${dateWithYear(startsOn)}; ${grows}.`;
}

/** The last sprint always, before it every n-th from where the chance is 1% on. */
function chancesText(advice: ForecastAdvice, { chanceBySprint }: ReleaseForecast): string {
  const last = chanceBySprint.length - 1;
  const each = [1, 2, 5, 10, 20].find((step) => last / step <= mostChances) ?? last;
  const chances = chanceBySprint.flatMap((chance, sprint) =>
    sprint !== last && (chance < leastChance || sprint % each !== 0)
      ? []
      : [`${sprint} (${dateWithYear(sprintEnd(advice, sprint))}) ${wholePercent(chance)}`],
  );
  return `Chance to be finished by the end of sprint ${listText(chances)}.`;
}

/** How many of the latest values of each ratio are given; a long history falls back to the next one. */
const latestGiven = [Number.POSITIVE_INFINITY, 12, 8, 5, 3, 0] as const;
/** More sprints than these are counted instead of named. */
const mostNamed = 4;

/** Each ratio's latest value, what is ordinary, crossings and signals, and its values. */
export function historyAltText(advice: HistoryAdvice): string {
  const shown = historyWindow(advice);
  const start = [
    `${ofTeam('History', advice)}: ${historyWords.heading(advice).subtitle.replaceAll(' · ', ', ')}.`,
    ...importedText(shown.past),
  ].join(' ');
  const versions = latestGiven.map((most) =>
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
  const last = values.at(-1);
  if (!values.some(isDefined)) {
    return `${latestOf(ratio)}. ${last === undefined || isDefined(last) ? '' : reasonSentence(last.undefined)}`.trim();
  }
  const ordinary = ordinaryLimits(ratio.chart);
  const variation = ordinary && ordinaryText(ordinary);
  const parts = [
    latestOf(ratio),
    ordinary && `mean ${wholePercent(ordinary.mean)}`,
    variation && `ordinarily ${variation}`,
    floor === undefined ? undefined : `at least ${percent(floor)}`,
    ceiling === undefined ? undefined : `at most ${percent(ceiling)}`,
    marks.length === 0 ? undefined : `marks at ${listText(marks.map(percent))}`,
    sprintsText('crossed', ratio.crossedAt, past),
    sprintsText('signal', ratio.signalsAt, past),
  ];
  return `${parts.filter((part) => part !== undefined).join('; ')}.${valuesText(values, most)}`;
}

function latestOf(ratio: ShownRatio): string {
  const latest = ratio.values.at(-1);
  const name = say('ratio-title', { ratio: ratio.ratio });
  if (latest === undefined) return `${name}: no sprint yet`;
  return `${name}: latest ${isDefined(latest) ? historyWords.latest(latest, ratio) : 'none'}`;
}

/** `74% or more`, `up to 35%`, `60% to 96%`; undefined where no limit is shown. */
export function ordinaryText({ low, high }: OrdinaryLimits): string | undefined {
  if (low !== undefined && high !== undefined) return percentSpan({ low, high });
  if (low !== undefined) return `${wholePercent(low)} or more`;
  return high === undefined ? undefined : `up to ${wholePercent(high)}`;
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
  const given = most === 0 ? [] : values.slice(-most);
  if (given.length < 2) return '';
  const start = given.length === values.length ? 'Oldest first' : `The latest ${given.length}`;
  const percents = given.map((value) => (isDefined(value) ? wholePercent(value).slice(0, -1) : 'none'));
  return ` ${start}: ${percents.join(', ')}%.`;
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
