/** The words of the burndown: above it, beside its marks, and in place of it. */
import { type Burndown, type BurndownDay, leftEnd } from '../../sprint/burndown.ts';
import { toTenths } from '../amounts.ts';
import { say } from '../say.ts';
import { altTextOf, type ChartHeading, shortName } from './chart-text.ts';

export function burndownHeading(burndown: Burndown): ChartHeading {
  return {
    title: say('burndown-chart-title'),
    name: burndown.sprintName,
    subtitle: stateSentences(burndown).join(' '),
  };
}

function stateSentences(burndown: Burndown): string[] {
  const { commitmentPoints } = burndown;
  return [
    daysSentence(burndown),
    say('burndown-chart-commitment', { points: commitmentPoints }),
    stateSentence(burndown),
    ...blockedSentences(burndown),
  ];
}

/** Nothing while no card was blocked in an evening. */
function blockedSentences({ days }: Burndown): string[] {
  const cardDays = sum(days.map(({ blockedCards }) => blockedCards));
  return cardDays === 0 ? [] : [say('burndown-chart-blocked', { cardDays })];
}

function daysSentence({ days }: Burndown): string {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return say('burndown-chart-no-days');
  if (first === last) return say('burndown-chart-one-day', { day: first.day });
  return say('burndown-chart-days', { from: first.day, to: last.day, days: days.length });
}

/** Where the line of points left ends, and how far that is from the ideal. */
function stateSentence(burndown: Burndown): string {
  const { day, leftPoints, idealPoints } = leftEnd(burndown);
  if (day === undefined) return say('burndown-chart-no-state');
  const gap = toTenths(Math.abs(leftPoints - idealPoints));
  const side = gap === 0 ? 'same' : leftPoints > idealPoints ? 'more' : 'fewer';
  return say('burndown-chart-state', {
    beside: burndown.commitmentPoints === 0 ? 'no-ideal' : side,
    points: leftPoints,
    day,
    gap,
    ideal: toTenths(idealPoints),
  });
}

/** `none`, `5 in all`; also `0 in all`, of additions that cancel out. */
export function addedInAll(amounts: readonly number[]): string {
  if (amounts.every((points) => points === 0)) return say('burndown-chart-added-none');
  return say('burndown-chart-added-in-all', { points: sum(amounts) });
}

function sum(amounts: readonly number[]): number {
  return amounts.reduce((total, points) => total + points, 0);
}

/** The state first, then the days, latest first. */
export function burndownAltText(burndown: Burndown): string {
  const { sprintName, today } = burndown;
  const days = burndown.days
    .toReversed()
    .map(dayFacts)
    .filter(({ facts }) => facts.length > 0);
  const summary = [
    say('burndown-alt-subject', { sprint: shortName(sprintName) }),
    ...stateSentences(burndown),
    ...(today === undefined ? [] : [say('burndown-alt-today', { day: today })]),
    addedSentence(burndown),
  ];
  return altTextOf(days.length, (told) => [
    ...summary,
    ...(told === 0 ? [] : [say('burndown-alt-days')]),
    ...days.slice(0, told).map((day) => say('burndown-alt-day', day)),
    ...(told === days.length ? [] : [say('burndown-alt-days-left-out', { days: days.length - told })]),
  ]);
}

function addedSentence({ days }: Burndown): string {
  const [pulledIn, surprise] = [days.map((day) => day.pulledInPoints), days.map((day) => day.surprisePoints)];
  const isPulledIn = pulledIn.some((points) => points !== 0);
  const isSurprise = surprise.some((points) => points !== 0);
  const happened = isPulledIn ? (isSurprise ? 'both' : 'pulled-in') : isSurprise ? 'surprise' : 'nothing';
  return say('burndown-alt-added', { happened, pulledIn: sum(pulledIn), surprise: sum(surprise) });
}

function dayFacts({ day, leftPoints, pulledInPoints, surprisePoints, blockedCards }: BurndownDay) {
  const facts = [
    ...(leftPoints === undefined ? [] : [say('burndown-alt-day-left', { points: leftPoints })]),
    ...(pulledInPoints === 0 ? [] : [say('burndown-alt-day-pulled-in', { points: pulledInPoints })]),
    ...(surprisePoints > 0 ? [say('burndown-alt-day-surprise', { points: surprisePoints })] : []),
    ...(surprisePoints < 0 ? [say('burndown-alt-day-not-needed', { points: -surprisePoints })] : []),
    ...(blockedCards === 0 ? [] : [say('burndown-alt-day-blocked', { cards: blockedCards })]),
  ];
  return { day, facts };
}
