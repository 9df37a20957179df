/** Lays the commitment range out beside the sprints that it is made from. Pure; draws nothing. */
import type { EChartsOption } from 'echarts';
import type { RangeAdvice } from '../app/advice/advice.ts';
import { advisedRange } from '../forecast/advised-range.ts';
import { countText } from './alt-text.ts';
import { lineMark, type Mark, textMark } from './marks.ts';
import { marksOption, titleWithName } from './marks-option.ts';
import { palette } from './palette.ts';
import { pointsNumber } from './points-text.ts';
import { rangeComingMarks, shortText } from './range-coming-marks.ts';
import { type RangeLayout, rangeLayout, rangeSize, shownSprints } from './range-layout.ts';
import { rangePastMarks } from './range-past-marks.ts';

export function rangeOption(advice: RangeAdvice): EChartsOption {
  return marksOption({
    title: titleWithName('Commitment range', advice.team.name),
    subtitle: rangeSubtitle(advice),
    size: rangeSize,
    marks: rangeMarks(advice),
  });
}

/** `commit to 26 to 31 points · from 8 sprints with a commitment, 3 of the shown imported` */
function rangeSubtitle(advice: RangeAdvice): string {
  const { range } = advice;
  const advised = advisedRange(range);
  const compromise = advised.kind === 'middle way' ? ', a compromise' : '';
  const lead =
    advised.kind === 'none' ? 'no range yet' : `commit to ${shortText(advised)} points${compromise}`;
  const sprints = 'undefined' in range ? 0 : range.sprints;
  const from = sprints === 0 ? [] : [`made from ${countText(sprints, 'sprint')} with a commitment`];
  const imported = shownSprints(advice).filter(({ importedAt }) => importedAt !== undefined).length;
  return [lead, ...from, ...(imported === 0 ? [] : [`${imported} of those shown imported`])].join(' · ');
}

export function rangeMarks(advice: RangeAdvice): Mark[] {
  const layout = rangeLayout(advice);
  return [...pointsAxisMarks(layout), ...rangePastMarks(advice, layout), ...rangeComingMarks(advice, layout)];
}

function pointsAxisMarks({ plot, coming, axis, yOf }: RangeLayout): Mark[] {
  const steps = Math.round(axis.topPoints / axis.stepPoints);
  const lines = Array.from({ length: steps + 1 }, (_, step): Mark[] => {
    const points = step * axis.stepPoints;
    const y = Math.round(yOf(points)) + 0.5;
    return [
      lineMark(
        [
          [plot.left, y],
          [coming.right, y],
        ],
        { stroke: step === 0 ? palette.axis : palette.gridLine, under: step > 0 },
      ),
      textMark({ text: pointsNumber(points), x: plot.left - 10, y, align: 'right', fill: palette.quietInk }),
    ];
  }).flat();
  return [
    ...lines,
    textMark({ text: 'points', x: plot.left - 10, y: plot.top - 18, align: 'right', fill: palette.quietInk }),
  ];
}
