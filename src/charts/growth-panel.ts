/** Draws the growth of the recorded value beside that of the velocity, both measured by the same sprint. Pure. */
import type { Growth } from '../forecast/value-growth.ts';
import { isDefined, type Ratio } from '../sprint/undefined-value.ts';
import { reasonSentence } from '../words/undefined.ts';
import { lineMark, type Mark, paragraphMark, symbolMarks } from './marks.ts';
import { palette } from './palette.ts';
import {
  axisMarks,
  headingMarks,
  heightOf,
  type RightWord,
  rightWords,
  runsOf,
  spanOf,
} from './panel-marks.ts';
import { ratioAxis } from './ratio-axis.ts';
import type { PanelPlace } from './ratio-panel.ts';
import { shortShare } from './short-share.ts';

export function growthPanel(growth: readonly Growth[], { plot, xOf, measuredBy }: PanelPlace): Mark[] {
  const heading = headingMarks('Value and velocity', plot, measuredBy);
  const velocity = growth.map(({ velocityGrowth }) => velocityGrowth);
  const value = growth.map(({ valueGrowth }) => valueGrowth);
  const all = [...velocity, ...value].filter(isDefined);
  if (all.length === 0) {
    const last = value.at(-1);
    const reason =
      last === undefined || isDefined(last) ? 'No value was recorded.' : reasonSentence(last.undefined);
    return [
      ...heading,
      paragraphMark({ text: reason, x: plot.left, y: plot.top + 10, widthPx: plot.right - plot.left + 90 }),
    ];
  }
  const axis = ratioAxis(spanOf([...all, 1]));
  const yOf = heightOf(plot, axis);
  const draw = (
    values: readonly Ratio[],
    shape: 'circle' | 'square',
    colour: string,
    dash?: number[],
  ): Mark[] => {
    const runs = runsOf(values, (index, share) => [xOf(index), yOf(share)]);
    return [
      ...runs.map((run) => lineMark(run, { stroke: colour, widthPx: 1.8, ...(dash ? { dash } : {}) })),
      ...runs
        .flat()
        .flatMap((point) =>
          symbolMarks(shape, point, { colour, radiusPx: 3, body: dash ? 'open' : 'filled', widthPx: 1.5 }),
        ),
    ];
  };
  return [
    ...heading,
    ...axisMarks(plot, axis, yOf),
    ...draw(velocity, 'circle', palette.velocity),
    ...draw(value, 'square', palette.ink, [5, 3]),
    ...rightWords([...latest('velocity', velocity), ...latest('value', value)], plot, yOf),
  ];
}

/** Where the line ends, which may be before the last sprint. */
function latest(name: string, values: readonly Ratio[]): RightWord[] {
  const share = values.findLast(isDefined);
  return share === undefined ? [] : [{ text: `${name} ${shortShare(share)}`, value: share, bold: true }];
}
