/** The words in the pictures: headings, names of lines and columns, values beside them. Pure. */

import type { ForecastAdvice, HistoryAdvice, OddsAdvice, RangeAdvice } from '../app/advice/advice.ts';
import { type AdvisedRange, advisedRange } from '../forecast/advised-range.ts';
import { LEAST_CHART_VALUES } from '../forecast/control-chart.ts';
import { MOST_SPRINTS } from '../forecast/release-forecast.ts';
import { LITTLE_HISTORY_CARDS, type SurpriseOdds } from '../forecast/surprise-odds.ts';
import type { Burndown } from '../sprint/burndown.ts';
import type { RatioId } from '../sprint/sprint-ratios.ts';
import { isDefined } from '../sprint/undefined-value.ts';
import { against, percent, wholePercent } from '../words/amounts.ts';
import { say } from '../words/say.ts';
import { reasonSentence } from '../words/undefined.ts';
import {
  countText,
  dateShort,
  dateWithYear,
  dayShort,
  daySpan,
  pointsNumber,
  pointsText,
} from './chart-formats.ts';
import { drawableText } from './drawable-text.ts';
import { historyWindow, type OrdinaryLimits, type ShownRatio } from './history-window.ts';
import {
  holdingSprint,
  leftEnd,
  type NamedDate,
  type RangeEnd,
  shownOdds,
  shownSprints,
} from './shown-data.ts';

/** The two lines above a picture; the second may wrap. */
export interface Heading {
  readonly title: string;
  readonly subtitle: string;
}

/** `History: Harbour team`; without the name when the font can't draw it. */
function heading(title: string, typedName: string, parts: readonly (string | undefined | false)[]): Heading {
  const name = drawableText(typedName);
  return {
    title: name === undefined ? title : `${title}: ${name}`,
    subtitle: parts.filter((part) => part !== undefined && part !== false).join(' · '),
  };
}

export const burndownWords = {
  pointsLeft: 'points left',
  ideal: 'ideal',
  pulledIn: 'pulled-in\nwork',
  surprise: 'surprise\nwork',
  today: 'today',
  start: 'start',
  heading(burndown: Burndown): Heading {
    const { sprintName, commitmentPoints, days } = burndown;
    const [first, last] = [days[0], days.at(-1)];
    const { day, leftPoints, idealPoints } = leftEnd(burndown);
    const left = day === undefined ? undefined : `${burndownWords.left(leftPoints)} on ${dayShort(day)}`;
    return heading('Burndown', sprintName, [
      first && last && daySpan(first.day, last.day),
      commitmentPoints === 0 ? 'no commitment' : `commitment ${pointsText(commitmentPoints)}`,
      left && (commitmentPoints === 0 ? left : `${left}, ${besideIdeal(leftPoints, idealPoints)}`),
    ]);
  },
  /** `24.5 left` */
  left: (points: number): string => `${pointsNumber(points)} left`,
  /** `+2`, `-1` */
  added: (points: number): string => `${points > 0 ? '+' : ''}${pointsNumber(points)}`,
  /** `none`, `5 in all`; also `0 in all`, of additions that cancel out. */
  addedInAll(amounts: readonly number[]): string {
    if (amounts.every((points) => points === 0)) return 'none';
    return `${pointsNumber(amounts.reduce((total, points) => total + points, 0))} in all`;
  },
};

function besideIdeal(leftPoints: number, idealPoints: number): string {
  const gap = pointsNumber(Math.abs(leftPoints - idealPoints));
  if (gap === '0') return 'right on the ideal';
  return leftPoints > idealPoints ? `${gap} more than the ideal` : `${gap} fewer than the ideal`;
}

export const rangeWords = {
  points: 'points',
  commitment: 'commitment',
  pulledIn: 'pulled in',
  velocity: 'velocity',
  verdict: 'verdict',
  coming: 'coming sprint',
  verdicts: { kept: 'kept', missed: 'missed', 'no plan': 'no plan' },
  heading(advice: RangeAdvice): Heading {
    const { range, team } = advice;
    const advised = advisedRange(range);
    const compromise = advised.kind === 'middle way' ? ', a compromise' : '';
    const imported = shownSprints(advice).filter(({ importedAt }) => importedAt !== undefined).length;
    return heading('Commitment range', team.name, [
      advised.kind === 'none'
        ? `no range yet: ${reasonSentence(advised.why).replace(/\.$/, '')}`
        : `commit to ${rangeWords.advised(advised)} points${compromise}`,
      !('undefined' in range) && `made from ${countText(range.sprints, 'sprint')} with a commitment`,
      imported > 0 && `${imported} of those shown imported`,
    ]);
  },
  /** `18 to 26`, `at most 24`, `about 24`, `no range` */
  advised(advised: AdvisedRange): string {
    if (advised.kind === 'none') return 'no range';
    if (advised.kind === 'middle way') return `about ${pointsNumber(advised.points)}`;
    if (advised.kind === 'at least') return `at least ${pointsNumber(advised.lowPoints)}`;
    if (advised.kind !== 'range') return `at most ${pointsNumber(advised.highPoints)}`;
    const { lowPoints, highPoints } = advised;
    return lowPoints === highPoints
      ? pointsNumber(highPoints)
      : `${pointsNumber(lowPoints)} to ${pointsNumber(highPoints)}`;
  },
  /** `at least 18`, `24 points`, `low end: 27`, `low end unknown` */
  end({ kind, points }: RangeEnd): string {
    if (kind === 'exactly') return pointsText(points);
    if (kind === 'no low end' || kind === 'no high end') return `${kind.slice(3)} unknown`;
    return `${kind}${kind.endsWith('end') ? ':' : ''} ${pointsNumber(points)}`;
  },
  /** In the table: a dash for what nobody recorded, whole points from 100 on. */
  cell(points: number | undefined): string {
    return points === undefined ? '–' : pointsNumber(points < 100 ? points : Math.round(points));
  },
  /** `11 May to 22 May` */
  comingDays: ({ coming }: RangeAdvice): string =>
    `${dateShort(coming.startsOn)} to ${dateShort(coming.endsOn)}`,
  keptChance: (chance: number): string => `kept: ${wholePercent(chance)}`,
};

export const oddsWords = {
  estimate: 'estimate',
  chance: 'chance of\nsurprise work',
  cards: 'cards that\nheld some',
  median: 'median\nsurprise',
  own: 'from its own cards',
  borrows: `fewer than ${LITTLE_HISTORY_CARDS} cards: borrows from the other sizes`,
  interval: 'the true chance lies within the line 19 times in 20',
  heading({ odds, sprintsWithCards, team }: OddsAdvice): Heading {
    const title = 'Surprise odds by size';
    if ('undefined' in odds)
      return heading(title, team.name, ['no odds yet', reasonSentence(odds.undefined)]);
    const { cards, withSurprise, sizes } = odds;
    const shown = shownOdds(sizes).length;
    return heading(title, team.name, [
      `${withSurprise} of ${countText(cards, 'card')} of ${countText(sprintsWithCards, 'closed sprint')} held surprise work`,
      shown < sizes.length && `the ${shown} sizes of most cards, of ${sizes.length}`,
    ]);
  },
  allSizes: (share: number): string => `all sizes ${wholePercent(share)}`,
  /** `4 of 10, borrows`, `none yet, borrows` */
  held: ({ cards, withSurprise, borrows }: SurpriseOdds): string =>
    `${cards === 0 ? 'none yet' : `${withSurprise} of ${cards}`}${borrows ? ', borrows' : ''}`,
  medianOf: ({ medianSurprisePoints }: SurpriseOdds): string =>
    isDefined(medianSurprisePoints) ? pointsText(medianSurprisePoints) : '–',
};

export const forecastWords = {
  chance: 'chance to be finished',
  sprintEnds: 'sprint\nends',
  heading({ forecast, question, startsOn, team }: ForecastAdvice): Heading {
    const title = `When ${pointsText(question.backlogPoints)} will be finished`;
    if ('undefined' in forecast)
      return heading(title, team.name, ['no forecast yet', reasonSentence(forecast.undefined)]);
    const { sprintsUsed, meanVelocityPoints } = forecast;
    return heading(title, team.name, [
      `from the latest ${countText(sprintsUsed, 'sprint')}: ${pointsNumber(meanVelocityPoints)} points each on average`,
      `work starts ${dateWithYear(startsOn)}`,
      question.growthPoints > 0 && `the work grows by ${pointsText(question.growthPoints)} a sprint`,
    ]);
  },
  /** Three lines: how sure it is, the date, and the sprint that holds it. */
  date({ name, chance, date }: NamedDate, advice: ForecastAdvice): [string, string, string] {
    const sure = `${name}: ${wholePercent(chance)} by`;
    if ('undefined' in date) return [sure, 'no date', `not within ${MOST_SPRINTS} sprints`];
    const { sprint, endsOn } = holdingSprint(date, advice);
    return [sure, dateWithYear(date.on), `in sprint ${sprint}, to ${dateWithYear(endsOn)}`];
  },
};

/** Words beside a height of a panel. Shares: 1 means 100%. */
export interface HeightText {
  readonly value: number;
  readonly text: string;
  readonly bold?: boolean;
}

export const historyWords = {
  ratio: (ratio: RatioId): string => say('ratio-title', { ratio }),
  valueAndVelocity: 'Value and velocity',
  noSprint: 'There is no closed sprint yet.',
  noValue: 'No value was recorded.',
  sprint: 'a sprint',
  imported: 'an imported sprint',
  ordinary: 'mean, and ordinary variation',
  threshold: 'threshold or mark',
  crossed: 'threshold crossed',
  signal: 'signal: more than ordinary',
  /** `12 closed sprints, to 13 Nov 2026 · 4 imported · the latest 26 shown` */
  heading(advice: HistoryAdvice): Heading {
    const { past, earlier } = historyWindow(advice);
    const last = advice.past.at(-1);
    const imported = advice.past.filter(({ importedAt }) => importedAt !== undefined).length;
    return heading('History', advice.team.name, [
      last === undefined
        ? 'no closed sprint yet'
        : `${countText(advice.past.length, 'closed sprint')}, to ${dateWithYear(last.endsOn)}`,
      imported > 0 && `${imported} imported`,
      earlier > 0 && `the latest ${past.length} shown`,
      past.length < LEAST_CHART_VALUES && `what is ordinary shows from ${LEAST_CHART_VALUES} on`,
    ]);
  },
  /** Which sprint counts as 100%. */
  measuredBy: (endsOn: string): string => `100% = sprint to ${dateWithYear(endsOn)}`,
  /** As a percentage, or from 10,000% on as so many times: `150×`. Keeps the words beside an axis short. */
  share(share: number): string {
    if (Math.abs(share) < 100) return wholePercent(share);
    return `${share < 0 ? '-' : ''}${Math.round(Math.abs(share))}×`;
  },
  /** A value that crosses a threshold never looks as if it lay on it. */
  latest(latest: number, { floor, ceiling }: Pick<ShownRatio, 'floor' | 'ceiling'>): string {
    if (floor !== undefined && latest < floor) return against(latest, floor).value;
    if (ceiling !== undefined && latest > ceiling) return against(latest, ceiling).value;
    return percent(latest);
  },
  thresholds: ({ floor, ceiling, marks }: ShownRatio): HeightText[] => [
    ...(floor === undefined ? [] : [{ text: `at least ${percent(floor)}`, value: floor }]),
    ...(ceiling === undefined ? [] : [{ text: `at most ${percent(ceiling)}`, value: ceiling }]),
    ...marks.map((mark) => ({ text: `mark ${percent(mark)}`, value: mark })),
  ],
  /** Of a line that lies above the panel. */
  above: ({ text }: HeightText): string => `${text} above`,
  limits: ({ mean, low, high }: OrdinaryLimits): HeightText[] => [
    ...(high === undefined ? [] : [{ text: `limit ${historyWords.share(high)}`, value: high }]),
    { text: `mean ${historyWords.share(mean)}`, value: mean },
    ...(low === undefined ? [] : [{ text: `limit ${historyWords.share(low)}`, value: low }]),
  ],
  /** `velocity 91%`, `value 219%` */
  growth: (what: 'velocity' | 'value', share: number): string => `${what} ${historyWords.share(share)}`,
};
