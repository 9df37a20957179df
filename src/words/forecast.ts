/** When a body of work will be finished: three dates first, then which of them to promise; or how much will be by a day. */
import type { ForecastAdvice } from '../app/advice/advice.ts';
import type { AmountByDay, ReleaseByDay } from '../forecast/release-by-day.ts';
import {
  type ForecastBasis,
  holdingSprint,
  MOST_SPRINTS,
  type NamedDate,
  namedDates,
  RELEASE_CHANCES,
  type ReleaseDate,
  type ReleaseForecast,
} from '../forecast/release-forecast.ts';
import type { UndefinedValue } from '../sprint/undefined-value.ts';
import type { AdviceWords } from './advice.ts';
import { toTenths } from './amounts.ts';
import { marginWords } from './margin.ts';
import { mrkdwn, say } from './say.ts';
import { noAnswer, reasonSentence } from './undefined.ts';

type Dated = ReleaseDate | UndefinedValue;

export function forecastWords(advice: ForecastAdvice): AdviceWords {
  const { forecast, margin, question, byDay } = advice;
  if (question.backlogPoints === undefined && byDay && !('undefined' in byDay)) {
    return amountsWords(advice, byDay);
  }
  if ('undefined' in forecast) {
    return {
      lead: noAnswer('forecast', forecast.undefined),
      evidence: [mrkdwn('advice-import-hint'), marginWords(margin)],
      details: [],
      unknown: [],
      isAnswered: false,
    };
  }
  return {
    lead: byDayLead(advice) ?? datesSentence(say, advice, forecast),
    evidence: [
      ...(advice.byDay === undefined ? [] : [datesSentence(mrkdwn, advice, forecast)]),
      mrkdwn('undefined' in (forecast.dates[2] as Dated) ? 'forecast-promise-none' : 'forecast-promise'),
      `${sprintsWords(forecast)} ${shareWords(advice)}${growthWords(advice, forecast, true)}`,
    ],
    details: [
      namedDates(forecast)
        .map((named) => dateLine(named, advice))
        .join('\n'),
      basisWords(advice, forecast),
      marginWords(margin),
    ],
    unknown: unknownWords(advice),
    isAnswered: true,
  };
}

/** Where nobody said how much work it is. */
function amountsWords(advice: ForecastAdvice, byDay: ReleaseByDay): AdviceWords {
  const amounts = amountsOf(byDay);
  return {
    lead: say('forecast-amounts-lead', amounts),
    evidence: [
      mrkdwn('forecast-amounts-promise', { points: amounts.surePoints }),
      `${sprintsWords(byDay)} ${shareWords(advice)}${growthWords(advice, byDay, true)}`,
    ],
    details: [basisWords(advice, byDay), marginWords(advice.margin)],
    unknown: unknownWords(advice),
    isAnswered: true,
  };
}

function unknownWords({ question, growth }: ForecastAdvice): string[] {
  return [
    mrkdwn(question.sharePercent === undefined ? 'forecast-unknown-other-work' : 'forecast-unknown-share'),
    mrkdwn('forecast-unknown-size'),
    mrkdwn('forecast-unknown-future'),
    ...(growth.measuredSprints ? [mrkdwn('forecast-unknown-measured')] : []),
    ...(growth.points > 0 ? [] : [mrkdwn('forecast-unknown-growth')]),
  ];
}

/** `120 points: likely by 12 March 2027 (50%), optimistic 5 February (15%), pessimistic 21 May (85%).` */
function datesSentence(say: typeof mrkdwn, { question }: ForecastAdvice, { dates }: ReleaseForecast): string {
  const { backlogPoints: points = 0 } = question;
  const [optimistic, likely, pessimistic] = dates as readonly [Dated, Dated, Dated];
  const [optimisticChance, likelyChance, pessimisticChance] = RELEASE_CHANCES;
  if ('undefined' in optimistic) return say('forecast-lead-no-date', { points, sprints: MOST_SPRINTS });
  const early = { points, optimistic: optimistic.on, optimisticChance, likelyChance };
  if ('undefined' in likely) return say('forecast-lead-optimistic-only', { ...early, sprints: MOST_SPRINTS });
  const both = { ...early, likely: likely.on };
  return 'undefined' in pessimistic
    ? say('forecast-lead-without-pessimistic', both)
    : say('forecast-lead', { ...both, pessimistic: pessimistic.on, pessimisticChance });
}

/** `120 points by 31 March 2027: 62% chance. By then, 95 points are what to count on (85%) …` */
function byDayLead({ byDay, question }: ForecastAdvice): string | undefined {
  if (byDay === undefined || 'undefined' in byDay) return undefined;
  const { backlogPoints: points = 0 } = question;
  return say('forecast-by-day-lead', { points, chance: byDay.chance ?? 0, ...amountsOf(byDay) });
}

function amountsOf({ on, amounts }: ReleaseByDay) {
  const [sure, even] = amounts as readonly [AmountByDay, AmountByDay];
  return {
    on,
    surePoints: sure.points,
    sureChance: sure.chance,
    evenPoints: even.points,
    evenChance: even.chance,
  };
}

function dateLine({ name, date }: NamedDate, advice: ForecastAdvice): string {
  if ('undefined' in date)
    return `• ${mrkdwn('forecast-date-none', { name })} ${reasonSentence(date.undefined)}`;
  const { sprint } = holdingSprint(date, advice);
  return `• ${mrkdwn('forecast-date', { name, on: date.on, sprint, chance: date.chance })}`;
}

function sprintsWords({ sprintsUsed, pointsPerSprint }: ForecastBasis): string {
  return mrkdwn('forecast-basis', { sprints: sprintsUsed, pacePoints: toTenths(pointsPerSprint) });
}

function growthWords(
  { growth }: ForecastAdvice,
  { pointsPerSprint }: ForecastBasis,
  isBrief: boolean,
): string {
  const points = toTenths(growth.points);
  const pace = growthPace(growth.points, pointsPerSprint);
  const { span, measuredSprints } = growth;
  return [
    mrkdwn('forecast-growth', { points, pace }),
    ...(span === undefined || isBrief
      ? []
      : [mrkdwn('forecast-growth-span', { low: toTenths(span.low), high: toTenths(span.high) })]),
    ...(measuredSprints && !isBrief
      ? [mrkdwn('forecast-growth-measured', { sprints: measuredSprints })]
      : []),
    ...(measuredSprints ? [mrkdwn('forecast-growth-settled')] : []),
  ].join(' ');
}

function basisWords(advice: ForecastAdvice, basis: ForecastBasis): string {
  const { startsOn, sprintLengthDays: days, sprints, importedSprints: imported } = advice;
  const graded = basis.gradedForecasts;
  return [
    sprintsWords(basis),
    ...(imported === 0 ? [] : [mrkdwn('forecast-basis-imported', { sprints, imported })]),
    mrkdwn('forecast-rhythm', { startsOn, days }),
    `${shareWords(advice)}${growthWords(advice, basis, false)}`,
    ...(graded === 0 ? [] : [mrkdwn('forecast-graded', { forecasts: graded })]),
    ...('dates' in basis ? [mrkdwn('forecast-mid-sprint')] : []),
  ].join(' ');
}

/** With a blank after it, or nothing. */
function shareWords({ question: { sharePercent } }: ForecastAdvice): string {
  return sharePercent === undefined ? '' : `${mrkdwn('forecast-share', { share: sharePercent / 100 })} `;
}

/** How fast the work grows beside how fast it gets finished. */
function growthPace(growthPoints: number, pointsPerSprint: number) {
  if (growthPoints === 0) return 'none';
  if (growthPoints >= pointsPerSprint) return 'faster';
  return 2 * growthPoints >= pointsPerSprint ? 'half' : 'slow';
}
