/** The words of the commitment range: above it, beside its lines, and in place of it. */
import type { RangeAdvice } from '../../app/advice/advice.ts';
import { type CommitmentCurve, commitmentCurve } from '../../app/advice/shown-in-chart.ts';
import type { CommitmentChances } from '../../forecast/commitment-range.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { chanceWords, scaledTo } from '../range.ts';
import { say } from '../say.ts';
import { noAnswer, reasonSentence } from '../undefined.ts';
import { altTextOf, type ChartHeading, shortName } from './chart-text.ts';

export type ChanceId = keyof CommitmentChances;

export function rangeHeading(advice: RangeAdvice): ChartHeading {
  const sentences = [advisedSentence(advice), ...basisSentences(advice)];
  return { title: say('range-chart-title'), name: advice.team.name, subtitle: sentences.join(' ') };
}

function advisedSentence({ range }: RangeAdvice): string {
  const advised = 'undefined' in range ? range : range.advised;
  if ('undefined' in advised) return noAnswer('range', advised.undefined);
  return say('range-at', { points: advised.points, chances: chanceWords(advised.chances) });
}

/** Why there is no advice takes all the room there is. */
function basisSentences({ range, past }: RangeAdvice): string[] {
  if ('undefined' in range || 'undefined' in range.advised) return [];
  const imported = past.filter(({ importedAt }) => importedAt !== undefined).length;
  return [
    say('range-chart-basis', { sprints: range.sprints, scaledTo: scaledTo(range) }),
    ...(imported === 0 ? [] : [say('chart-sprints-imported', { sprints: imported })]),
  ];
}

/** `to keep it` over `8 in 10` */
export function chanceLabel(id: ChanceId, chance: number): string {
  return say('range-chart-label', { id, chance });
}

/** The advice first, then the chances of as many commitments as there is room for. */
export function rangeAltText(advice: RangeAdvice): string {
  const { coming, team } = advice;
  const curve = commitmentCurve(advice);
  const summary = [
    say('range-alt-subject', { team: shortName(team.name), from: coming.startsOn, to: coming.endsOn }),
    advisedSentence(advice),
    ...(curve ? spanSentences(curve) : []),
    ...basisSentences(advice),
  ];
  if (!curve) return altTextOf(0, () => summary);
  return altTextOf(MOST_STEPS_TOLD, (most) => [
    ...summary,
    say('range-alt-chances'),
    ...stepsTold(curve, most).map(({ points, chances }) =>
      say('range-alt-step', { points, facts: percentages(chances) }),
    ),
  ]);
}

const MOST_STEPS_TOLD = 10;

/** Evenly spread over the picture. */
function stepsTold({ steps }: CommitmentCurve, most: number): CommitmentCurve['steps'] {
  const each = Math.max(1, Math.ceil(steps.length / most));
  return steps.filter((_, i) => (i + 1) % each === 0);
}

function spanSentences({ advised: { unserved }, span }: CommitmentCurve): string[] {
  if (unserved) return [reasonSentence(unserved.why)];
  if (!span) return [say('range-ran-out-unknown')];
  return [span.low < span.high ? say('range-span', span) : say('range-span-one')];
}

function percentages({ kept, finishedWhole, ranOut }: CommitmentChances): string[] {
  return [
    ...(isDefined(kept) ? [say('range-alt-kept', { chance: kept })] : []),
    ...(isDefined(finishedWhole) ? [say('range-alt-finished', { chance: finishedWhole })] : []),
    ...(isDefined(ranOut) ? [say('range-alt-ran-out', { chance: ranOut })] : []),
  ];
}
