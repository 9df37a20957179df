/** What the shapes in the history mean; only of those that are there. Pure. */
import type { KeyPlace } from './history-layout.ts';
import type { HistoryWindow } from './history-window.ts';
import { areaMark, lineMark, type Mark, type Point, symbolMarks, textMark } from './marks.ts';
import { palette } from './palette.ts';
import { crossedMarks, signalMarks } from './ratio-panel.ts';

interface KeyEntry {
  readonly text: string;
  sample(at: Point): Mark[];
}

export function historyKey(shown: HistoryWindow, place: KeyPlace): Mark[] {
  const { left, top, perRow, columnPx, rowPx } = place;
  return keyEntries(shown).flatMap(({ text, sample }, index) => {
    const x = left + (index % perRow) * columnPx;
    const y = top + Math.floor(index / perRow) * rowPx;
    return [...sample([x + 14, y]), textMark({ text, x: x + 36, y, fill: palette.quietInk })];
  });
}

function keyEntries({ past, ratios }: HistoryWindow): KeyEntry[] {
  const hasImported = past.some(({ importedAt }) => importedAt !== undefined);
  const hasOwn = past.some(({ importedAt }) => importedAt === undefined);
  const hasLimits = ratios.some(({ chart }) => !('undefined' in chart));
  const dot = (body: 'filled' | 'open') => (at: Point) =>
    symbolMarks('circle', at, { colour: palette.left, radiusPx: 3.5, body, widthPx: 1.5 });
  const entries: (KeyEntry | false)[] = [
    hasOwn && { text: 'a sprint', sample: dot('filled') },
    hasImported && { text: 'an imported sprint', sample: dot('open') },
    hasLimits && { text: 'mean, and ordinary variation', sample: ordinarySample },
    { text: 'threshold or mark', sample: (at) => [sampleLine(at, [7, 4], palette.ink)] },
    ratios.some(({ crossedAt }) => crossedAt.size > 0) && {
      text: 'threshold crossed',
      sample: ([x, y]) => crossedMarks(x, y),
    },
    ratios.some(({ signalsAt }) => signalsAt.size > 0) && {
      text: 'signal: more than ordinary',
      sample: ([x, y]) => signalMarks(x, y),
    },
  ];
  return entries.filter((entry) => entry !== false);
}

function sampleLine([x, y]: Point, dash: number[] | undefined, stroke: string): Mark {
  return lineMark(
    [
      [x - 14, y],
      [x + 14, y],
    ],
    { stroke, widthPx: 1.5, ...(dash ? { dash } : {}) },
  );
}

function ordinarySample([x, y]: Point): Mark[] {
  const edge = [2, 3];
  return [
    areaMark({ left: x - 14, right: x + 14, top: y - 7, bottom: y + 7 }, palette.ordinaryFill),
    sampleLine([x, y - 7], edge, palette.axis),
    sampleLine([x, y], undefined, palette.axis),
    sampleLine([x, y + 7], edge, palette.axis),
  ];
}
