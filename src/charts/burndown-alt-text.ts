/**
 * What the burndown picture shows, in sentences, for who hears it instead of seeing it. Pure.
 * It says no less than the picture does: every number that is drawn stands here too, as far as the platform's
 * length for such a text allows.
 */
import type { Burndown, BurndownDay } from '../sprint/burndown.ts';
import { fittingText, listText, spokenName } from './alt-text.ts';
import { burndownLayout } from './burndown-layout.ts';
import { dayLong, dayShort, daySpan } from './day-text.ts';
import { pointsNumber, pointsText } from './points-text.ts';

/** How much is told about single days; a very long sprint falls back to the next one. */
type Detail = 'every evening' | 'every addition' | 'sums';
const details: readonly Detail[] = ['every evening', 'every addition', 'sums'];

/**
 * At most 2,000 characters: the state first, then the evenings, then what was added and when.
 * When a sprint is too long for all of that, the evenings go first and the days of additions second.
 * Throws a `RangeError` when a day is no ISO date.
 */
export function burndownAltText(burndown: Burndown): string {
  return fittingText(details.map((detail) => sentences(burndown, detail).join(' ')));
}

function sentences(burndown: Burndown, detail: Detail): string[] {
  const { days } = burndown;
  return [
    subject(burndown),
    commitment(burndown),
    standing(burndown),
    ...(detail === 'every evening' ? evenings(days) : []),
    additions(
      'Pulled-in work',
      days.map(({ day, pulledInPoints }) => [day, pulledInPoints]),
      detail,
    ),
    additions(
      'Surprise work',
      days.map(({ day, surprisePoints }) => [day, surprisePoints]),
      detail,
    ),
  ];
}

function subject({ sprintName, days }: Burndown): string {
  const name = spokenName(sprintName);
  const of = name === '' ? 'Burndown of the sprint' : `Burndown of the sprint “${name}”`;
  const firstDay = days[0]?.day;
  const lastDay = days.at(-1)?.day;
  if (firstDay === undefined || lastDay === undefined) return `${of}, which has no working days.`;
  const count = days.length === 1 ? '1 working day' : `${days.length} working days`;
  return `${of}, ${daySpan(firstDay, lastDay)}, ${count}.`;
}

function commitment({ commitmentPoints, days }: Burndown): string {
  if (commitmentPoints === 0) return 'There was no commitment, so there is no ideal line.';
  const end = pointsNumber(days.at(-1)?.idealPoints ?? 0);
  return `The commitment is ${pointsText(commitmentPoints)}, from which the ideal line falls to ${end}.`;
}

/** Where the line of points left ends, and how far that is from the ideal. */
function standing(burndown: Burndown): string {
  const { commitmentPoints, days, today } = burndown;
  const { position, leftPoints, idealPoints } = burndownLayout(burndown).leftEnd;
  const todayText = today === undefined ? '' : `Today is ${dayLong(today)}. `;
  const day = days[position - 1]?.day;
  if (day === undefined) return `${todayText}No day has numbers yet.`;
  const isNow = day === today;
  const when = isNow ? 'Now' : `On the evening of ${dayLong(day)},`;
  const isOne = pointsNumber(leftPoints) === '1';
  const verb = isNow ? (isOne ? 'is' : 'are') : isOne ? 'was' : 'were';
  const left = `${todayText}${when} ${pointsText(leftPoints)} ${verb} left`;
  return commitmentPoints === 0 ? `${left}.` : `${left}, ${besideIdeal(leftPoints, idealPoints)}.`;
}

function besideIdeal(leftPoints: number, idealPoints: number): string {
  const gapPoints = Math.abs(leftPoints - idealPoints);
  if (pointsNumber(gapPoints) === '0') return 'as on the ideal line';
  const side = leftPoints > idealPoints ? 'more' : 'fewer';
  return `${pointsNumber(gapPoints)} ${side} than the ${pointsNumber(idealPoints)} of the ideal line`;
}

function evenings(days: readonly BurndownDay[]): string[] {
  const known = days.flatMap(({ day, leftPoints }) =>
    leftPoints === undefined ? [] : [`${dayShort(day)} ${pointsNumber(leftPoints)}`],
  );
  return known.length === 0 ? [] : [`Points left each evening: ${known.join(', ')}.`];
}

function additions(what: string, amounts: readonly (readonly [string, number])[], detail: Detail): string {
  const happened = amounts.filter(([, points]) => points !== 0);
  if (happened.length === 0) return `${what}: none.`;
  const sumPoints = happened.reduce((sum, [, points]) => sum + points, 0);
  const sum = `${what}: ${pointsText(sumPoints)} in all`;
  if (detail === 'sums') return `${sum}, on ${happened.length} of the days.`;
  const single = happened.map(([day, points]) =>
    points > 0
      ? `${pointsNumber(points)} on ${dayShort(day)}`
      : `${pointsNumber(-points)} taken back on ${dayShort(day)}`,
  );
  return `${sum}: ${listText(single)}.`;
}
