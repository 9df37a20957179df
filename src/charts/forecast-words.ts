/** Words that the forecast picture and its text for the ear have in common. Pure. */
import type { ForecastAdvice } from '../app/advice/advice.ts';
import type { ReleaseDate, ReleaseForecast } from '../forecast/release-forecast.ts';
import { RELEASE_CHANCES } from '../forecast/release-forecast.ts';
import type { UndefinedValue } from '../sprint/undefined-value.ts';
import { countText } from './alt-text.ts';
import { dateWithYear } from './day-text.ts';
import { sprintEnd } from './forecast-layout.ts';
import { titleWithName } from './marks-option.ts';
import { pointsNumber, pointsText } from './points-text.ts';

/** Of the three dates, in their order. */
export const dateNames = ['optimistic', 'likely', 'cautious'] as const;

export interface NamedDate {
  readonly name: (typeof dateNames)[number];
  readonly chance: number;
  readonly date: ReleaseDate | UndefinedValue;
}

export function namedDates({ dates }: ReleaseForecast): NamedDate[] {
  return dateNames.flatMap((name, place): NamedDate[] => {
    const date = dates[place];
    const chance = RELEASE_CHANCES[place];
    return date === undefined || chance === undefined ? [] : [{ name, chance, date }];
  });
}

/** The sprint that holds the day, from 1, and its end. */
export function holdingSprint(date: ReleaseDate, { startsOn, sprintLengthDays }: ForecastAdvice) {
  const sprint = Math.max(1, Math.ceil(date.sprints));
  return { sprint, endsOn: sprintEnd(startsOn, sprintLengthDays, sprint) };
}

export function forecastTitle({ question, team }: ForecastAdvice): string {
  return titleWithName(`When ${pointsText(question.backlogPoints)} will be finished`, team.name);
}

/** `from the latest 5 sprints, 23.4 points each on average · first sprint from 16 Nov 2026` */
export function forecastSubtitle({ question, startsOn }: ForecastAdvice, forecast: ReleaseForecast): string {
  const { sprintsUsed, meanVelocityPoints } = forecast;
  const pace = `from the latest ${countText(sprintsUsed, 'sprint')}: ${pointsNumber(meanVelocityPoints)} points each on average`;
  const grows =
    question.growthPoints === 0 ? [] : [`the work grows by ${pointsText(question.growthPoints)} a sprint`];
  return [pace, `work starts ${dateWithYear(startsOn)}`, ...grows].join(' · ');
}
