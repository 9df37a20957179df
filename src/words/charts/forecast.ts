/** The words of the forecast: above it, beside its dates, and in place of it. */
import type { ForecastAdvice } from '../../app/advice/advice.ts';
import {
  holdingSprint,
  MOST_SPRINTS,
  type NamedDate,
  namedDates,
  type ReleaseForecast,
  sprintEnd,
} from '../../forecast/release-forecast.ts';
import { shortDate, toTenths } from '../amounts.ts';
import { say } from '../say.ts';
import { noAnswer, reasonSentence } from '../undefined.ts';
import { altTextOf, type ChartHeading, shortName } from './chart-text.ts';

/** About as many sprints as the picture has room to name. */
const MOST_CHANCES = 12;
const LEAST_CHANCE = 0.01;
/** Of every how many sprints the chance is said. */
const STEPS = [1, 2, 5, 10, 20, 50, 100];

export function forecastHeading(advice: ForecastAdvice): ChartHeading {
  const { forecast, question, team } = advice;
  const sentences =
    'undefined' in forecast ? [noAnswer('forecast', forecast.undefined)] : basisSentences(advice, forecast);
  return {
    title: say('forecast-chart-title', { points: question.backlogPoints ?? 0 }),
    name: team.name,
    subtitle: sentences.join(' '),
  };
}

/** Three lines at most, below the picture's title. */
function basisSentences({ growth, startsOn, byDay }: ForecastAdvice, forecast: ReleaseForecast): string[] {
  return [
    say('forecast-chart-basis', { sprints: forecast.sprintsUsed }),
    say('forecast-chart-work', { startsOn, growth: toTenths(growth.points) }),
    ...(byDay === undefined || 'undefined' in byDay
      ? []
      : [say('forecast-chart-by-day', { on: byDay.on, chance: byDay.chance ?? 0 })]),
  ];
}

/** Three lines: how sure it is, the date, and the sprint that holds it. */
export function dateLines({ name, chance, date }: NamedDate, advice: ForecastAdvice): string[] {
  const sure = say('forecast-chart-date-chance', { name, chance });
  return 'undefined' in date
    ? [sure, say('forecast-chart-no-date'), say('forecast-chart-not-within', { sprints: MOST_SPRINTS })]
    : [sure, shortDate(date.on), say('forecast-chart-date-sprint', holdingSprint(date, advice))];
}

/** The three dates first, then the chance at the end of some sprints. */
export function forecastAltText(advice: ForecastAdvice): string {
  const { forecast, question, team } = advice;
  const subject = say('forecast-alt-subject', {
    team: shortName(team.name),
    points: question.backlogPoints ?? 0,
  });
  if ('undefined' in forecast) return `${subject} ${noAnswer('forecast', forecast.undefined)}`;
  const summary = [
    subject,
    ...namedDates(forecast).map((named) => dateSentence(named, advice)),
    ...basisSentences(advice, forecast),
  ];
  return altTextOf(MOST_CHANCES, (most) => [...summary, ...chanceSentences(advice, forecast, most)]);
}

function dateSentence({ name, chance, date }: NamedDate, advice: ForecastAdvice): string {
  return 'undefined' in date
    ? `${say('forecast-alt-no-date', { name, chance })} ${reasonSentence(date.undefined)}`
    : say('forecast-alt-date', { name, chance, on: date.on, ...holdingSprint(date, advice) });
}

/** The last sprint, and before it every n-th from where the chance is 1% on, so that they are not more than `most`. */
function chanceSentences(
  advice: ForecastAdvice,
  { chanceBySprint }: ReleaseForecast,
  most: number,
): string[] {
  const last = chanceBySprint.length - 1;
  const each = STEPS.find((step) => last / step <= most) ?? last;
  const worth = chanceBySprint.flatMap((chance, sprint) =>
    sprint === last || chance >= LEAST_CHANCE ? [{ chance, sprint }] : [],
  );
  const said = worth.filter(({ sprint }) => sprint === last || sprint % each === 0);
  const chances = said.map(({ chance, sprint }) =>
    say('forecast-alt-chance', { sprint, on: sprintEnd(advice, sprint), chance }),
  );
  const leftOut = worth.length - said.length;
  return [
    say('forecast-alt-chances', { chances }),
    ...(leftOut === 0 ? [] : [say('forecast-alt-chances-left-out', { sprints: leftOut })]),
  ];
}
