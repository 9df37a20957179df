/** What the forecast picture shows, in sentences. Pure. */
import type { ForecastAdvice } from '../app/advice/advice.ts';
import type { ReleaseForecast } from '../forecast/release-forecast.ts';
import { wholePercent } from '../sprint/whole-percent.ts';
import { reasonSentence } from '../words/undefined.ts';
import { countText, fittingText, listText, spokenName } from './alt-text.ts';
import { dateWithYear } from './day-text.ts';
import { sprintEnd } from './forecast-layout.ts';
import { holdingSprint, type NamedDate, namedDates } from './forecast-words.ts';
import { pointsNumber, pointsText } from './points-text.ts';

/** About as many as the picture has room to name. */
const mostTold = 12;
const steps = [1, 2, 5, 10, 20];
const leastTold = 0.01;

/** At most 2,000 characters: the three dates first, then the chance at the end of some sprints. */
export function forecastAltText(advice: ForecastAdvice): string {
  const { forecast, question } = advice;
  const name = spokenName(advice.team.name);
  const whose = name === '' ? '' : ` of the team “${name}”`;
  const subject = `Forecast${whose} for ${pointsText(question.backlogPoints)} of work`;
  if ('undefined' in forecast)
    return fittingText([`${subject}: none. ${reasonSentence(forecast.undefined)}`]);
  const start = [
    `${subject}.`,
    ...namedDates(forecast).map((named) => dateText(named, advice)),
    basis(advice, forecast),
  ];
  return fittingText([[...start, chances(advice, forecast)].join(' '), start.join(' ')]);
}

function dateText({ name, chance, date }: NamedDate, advice: ForecastAdvice): string {
  const heading = `${name.charAt(0).toUpperCase()}${name.slice(1)}, with a chance of ${wholePercent(chance)}:`;
  if ('undefined' in date) return `${heading} no date. ${reasonSentence(date.undefined)}`;
  const { sprint, endsOn } = holdingSprint(date, advice);
  return `${heading} by ${dateWithYear(date.on)}, in sprint ${sprint}, which runs to ${dateWithYear(endsOn)}.`;
}

function basis(
  { question, startsOn }: ForecastAdvice,
  { sprintsUsed, meanVelocityPoints }: ReleaseForecast,
): string {
  const grows =
    question.growthPoints === 0
      ? 'the work is taken not to grow'
      : `the work grows by ${pointsText(question.growthPoints)} a sprint`;
  const from = `Made from the latest ${countText(sprintsUsed, 'sprint')}, ${pointsNumber(meanVelocityPoints)} points each on average`;
  return `${from}; work starts on ${dateWithYear(startsOn)}; ${grows}.`;
}

/** The last sprint always, before it every n-th from where the chance is 1% on. */
function chances(
  { startsOn, sprintLengthDays }: ForecastAdvice,
  { chanceBySprint }: ReleaseForecast,
): string {
  const last = chanceBySprint.length - 1;
  const each = steps.find((step) => last / step <= mostTold) ?? last;
  const told = chanceBySprint.flatMap((chance, sprint) =>
    sprint !== last && (chance < leastTold || sprint % each !== 0)
      ? []
      : [
          `${sprint} (${dateWithYear(sprintEnd(startsOn, sprintLengthDays, sprint))}) ${wholePercent(chance)}`,
        ],
  );
  return `Chance to be finished by the end of sprint ${listText(told)}.`;
}
