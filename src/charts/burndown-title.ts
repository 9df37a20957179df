/** The two lines above the burndown: which sprint, and what the picture says. Pure. */
import type { Burndown } from '../sprint/burndown.ts';
import { burndownLayout } from './burndown-layout.ts';
import { dayShort, daySpan } from './day-text.ts';
import { drawableText } from './drawable-text.ts';
import { pointsNumber, pointsText } from './points-text.ts';

/** Without the sprint's name when the font cannot draw it. */
export function burndownTitle({ sprintName }: Burndown): string {
  const name = drawableText(sprintName);
  return name === undefined ? 'Burndown' : `Burndown: ${name}`;
}

export function burndownSubtitle(burndown: Burndown): string {
  const { commitmentPoints, days } = burndown;
  const firstDay = days[0]?.day;
  const lastDay = days.at(-1)?.day;
  const span = firstDay === undefined || lastDay === undefined ? [] : [daySpan(firstDay, lastDay)];
  const commitment = commitmentPoints === 0 ? 'no commitment' : `commitment ${pointsText(commitmentPoints)}`;
  return [...span, commitment, ...standing(burndown)].join(' · ');
}

/** How the last known evening compares with the ideal. */
function standing(burndown: Burndown): string[] {
  const { position, leftPoints, idealPoints } = burndownLayout(burndown).leftEnd;
  const day = burndown.days[position - 1]?.day;
  if (day === undefined) return [];
  const left = `${pointsNumber(leftPoints)} left on ${dayShort(day)}`;
  return [burndown.commitmentPoints === 0 ? left : `${left}, ${besideIdeal(leftPoints, idealPoints)}`];
}

function besideIdeal(leftPoints: number, idealPoints: number): string {
  const gap = pointsNumber(Math.abs(leftPoints - idealPoints));
  if (gap === '0') return 'right on the ideal';
  return leftPoints > idealPoints ? `${gap} more than the ideal` : `${gap} fewer than the ideal`;
}
