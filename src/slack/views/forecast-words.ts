/** When a body of work is finished, in sentences: three dates first, then which of them to promise. */
import type { ForecastAdvice } from '../../app/advice/advice.ts';
import type { ReleaseDate, ReleaseForecast } from '../../forecast/release-forecast.ts';
import { MOST_SPRINTS } from '../../forecast/release-forecast.ts';
import { formatPoints, formatPointsWithUnit } from '../../sprint/points.ts';
import type { UndefinedValue } from '../../sprint/undefined-value.ts';
import { noAnswer, reasonSentence } from '../../words/undefined.ts';
import type { AdviceWords } from './advice-words.ts';
import { bold } from './block-builders.ts';
import { chanceWords } from './chance-words.ts';
import { longDate, longDateBeside } from './date-words.ts';
import { marginWords } from './margin-words.ts';
import { importHint } from './no-answer-words.ts';
import { counted } from './sprint-words.ts';

type Told = ReleaseDate | UndefinedValue;

const UNKNOWN = [
  'How much of a sprint goes to other work: it takes all that your sprints finish for work on these points.',
  'Whether these points are the size of those in your past sprints.',
  'What is still to come: holidays, people who join or leave. Between the dates lies what such things have done to the pace of teams elsewhere.',
];

export function forecastWords(advice: ForecastAdvice): AdviceWords {
  const { forecast, margin, question } = advice;
  if ('undefined' in forecast) {
    return {
      lead: noAnswer('forecast', forecast.undefined),
      evidence: [importHint(), marginWords(margin)],
      unknown: [],
      isAnswered: false,
    };
  }
  return {
    lead: leadOf(advice, forecast),
    evidence: [
      datesWords(forecast),
      promiseWords(forecast),
      basisWords(advice, forecast),
      marginWords(margin),
    ],
    unknown: [...UNKNOWN, ...growthUnknown(question.growthPoints)],
    isAnswered: true,
  };
}

/** `120 points: likely by 12 March 2027 (optimistic 5 February, cautious 21 May).` */
function leadOf({ question }: ForecastAdvice, { dates }: ReleaseForecast): string {
  const work = formatPointsWithUnit(question.backlogPoints);
  const [optimistic, likely, cautious] = dates as readonly [Told, Told, Told];
  if ('undefined' in optimistic) return `${work}: no date within ${MOST_SPRINTS} sprints.`;
  if ('undefined' in likely) {
    return `${work}: by ${longDate(optimistic.on)} at best; no likely date within ${MOST_SPRINTS} sprints.`;
  }
  const early = `optimistic ${longDateBeside(optimistic.on, likely.on)}`;
  const late =
    'undefined' in cautious ? 'no cautious date' : `cautious ${longDateBeside(cautious.on, likely.on)}`;
  return `${work}: likely by ${longDate(likely.on)} (${early}, ${late}).`;
}

const READINGS = [
  { name: 'Optimistic', meaning: 'fine to hope for, not to plan with' },
  { name: 'Likely', meaning: 'later is as likely as sooner' },
  { name: 'Cautious', meaning: 'this is the one to promise' },
] as const;

function datesWords({ dates }: ReleaseForecast): string {
  const lines = READINGS.map(({ name, meaning }, i) => {
    const date = dates[i] as Told;
    if ('undefined' in date) return `• ${bold(`${name}: none.`)} ${reasonSentence(date.undefined)}`;
    const chance = `${chanceWords(date.chance)} likely`;
    return `• ${bold(`${name}: ${longDate(date.on)}`)}, in the ${ordinal(sprintOf(date))} sprint. ${chance}: ${meaning}.`;
  });
  return lines.join('\n');
}

function promiseWords({ dates }: ReleaseForecast): string {
  const cautious = dates[2] as Told;
  return 'undefined' in cautious
    ? `${bold('There is no date to promise.')} Talk about doing less of the work, or take a part of it that is worth having by itself and ask for that.`
    : `${bold('Promise the cautious date.')} If somebody needs an earlier one, talk about doing less of the work, not about doing it faster.`;
}

/** The sprint that holds the day, from 1. */
function sprintOf({ sprints }: ReleaseDate): number {
  return Math.max(1, Math.ceil(sprints));
}

/** `1st`, `2nd`, `3rd`, `11th` */
function ordinal(place: number): string {
  const rule = new Intl.PluralRules('en', { type: 'ordinal' }).select(place);
  const endings: Readonly<Record<string, string>> = { one: 'st', two: 'nd', few: 'rd' };
  return `${place}${endings[rule] ?? 'th'}`;
}

function basisWords(advice: ForecastAdvice, { sprintsUsed, meanVelocityPoints }: ReleaseForecast): string {
  const { question, startsOn, sprintLengthDays, sprints, importedSprints } = advice;
  const mean = formatPoints(Math.round(meanVelocityPoints * 10) / 10);
  const imported =
    importedSprints === 0
      ? ''
      : ` (of ${counted(sprints, 'closed sprint')} that are known, ${importedSprints} were imported)`;
  return `It rests on your latest ${counted(sprintsUsed, 'sprint')}, which finished ${mean} points on average${imported}. Work on it begins on ${longDate(startsOn)}, with a new sprint every ${counted(sprintLengthDays, 'day')}. ${growsWords(question.growthPoints, meanVelocityPoints)} A date in the middle of a sprint means that the work is in hand when that sprint ends.`;
}

function growsWords(growthPoints: number, meanVelocityPoints: number): string {
  if (growthPoints === 0) return 'The work is taken not to grow.';
  const grows = `The work is taken to grow by ${formatPointsWithUnit(growthPoints)} with each sprint`;
  if (growthPoints >= meanVelocityPoints) return `${grows}, faster than it gets finished.`;
  return 2 * growthPoints >= meanVelocityPoints
    ? `${grows}, so that half of the effort or more only keeps up with it.`
    : `${grows}.`;
}

function growthUnknown(growthPoints: number): string[] {
  return growthPoints > 0
    ? []
    : ['Whether the work grows while you do it. If it does, change the numbers and say by how much.'];
}
