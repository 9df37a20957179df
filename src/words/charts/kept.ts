/** The words of the picture of moving dates: above it, beside the latest dates, and in place of it. */
import type { KeptAdvice } from '../../app/advice/advice.ts';
import type { ToldDates } from '../../app/bodies/body-of-work.ts';
import { drawnBodies } from '../../app/bodies/moved-dates.ts';
import type { Day } from '../../sprint/calendar.ts';
import { shortDate } from '../amounts.ts';
import { say } from '../say.ts';
import { altTextOf, type ChartHeading, shortName } from './chart-text.ts';

export function keptHeading(advice: KeptAdvice): ChartHeading {
  const { leftOut } = drawnBodies(advice);
  const more = leftOut === 0 ? [] : [say('kept-chart-left-out', { bodies: leftOut })];
  return {
    title: say('kept-chart-title'),
    name: advice.team.name,
    subtitle: [say('kept-chart-basis'), ...more].join(' '),
  };
}

/** The latest tellings of each, as many as there is room for. */
export function keptAltText(advice: KeptAdvice): string {
  const { drawn } = drawnBodies(advice);
  const most = Math.max(...drawn.map(({ tellings }) => tellings.length));
  return altTextOf(most, (details) => [
    say('kept-alt-subject', { team: shortName(advice.team.name) }),
    ...drawn.map(({ name, tellings }) =>
      say('kept-alt-body', {
        name: shortName(name),
        tellings: tellings.slice(-Math.max(1, details)).map(tellingText),
      }),
    ),
  ]);
}

function tellingText({ toldOn: on, likelyOn, pessimisticOn }: ToldDates): string {
  const shown = (day: Day | undefined): string => (day === undefined ? say('kept-no-date') : shortDate(day));
  return say('kept-alt-telling', { on, likely: shown(likelyOn), pessimistic: shown(pessimisticOn) });
}
