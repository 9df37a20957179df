/** The mid-sprint reading in a sentence: the number first, the signal by its word. */
import type { PaceReading } from '../../app/message-content.ts';
import { formatPointsWithUnit } from '../../sprint/points.ts';
import { mrkdwnOf } from './typed-text.ts';

/** A projection is no exact number, so it is told in whole points. */
function about(points: number): string {
  return `about ${formatPointsWithUnit(Math.round(Math.abs(points)))}`;
}

export function paceWords({ signal, noSignalBecause, projectedLeftPoints }: PaceReading): string {
  if (signal === undefined || projectedLeftPoints === undefined) {
    return `No load signal yet: ${mrkdwnOf(noSignalBecause ?? 'there are too few answers.')}`;
  }
  switch (signal) {
    case 'heavy':
      return `The load is heavy: at the pace so far, ${about(projectedLeftPoints)} will be left at the end.`;
    case 'light':
      return `The load is light: at the pace so far, there is room for ${about(projectedLeftPoints)} more.`;
    case 'on the line':
      return `The load is on the line: at the pace so far, ${evenFinish(projectedLeftPoints)}.`;
  }
}

function evenFinish(projectedLeftPoints: number): string {
  if (Math.round(projectedLeftPoints) === 0) return 'everything will be finished just in time';
  return projectedLeftPoints > 0
    ? `${about(projectedLeftPoints)} will be left at the end`
    : `everything will be finished, with room for ${about(projectedLeftPoints)} more`;
}
