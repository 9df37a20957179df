/** Lays the history out: a small panel for each ratio, and what the shapes mean. Pure; draws nothing. */
import type { EChartsOption } from 'echarts';
import type { HistoryAdvice } from '../app/advice/advice.ts';
import type { PastSprint } from '../app/history/past-sprint.ts';
import { LEAST_CHART_VALUES } from '../forecast/control-chart.ts';
import { countText } from './alt-text.ts';
import type { Box, ChartSize } from './chart-frame.ts';
import { dateMarks } from './date-marks.ts';
import { dateWithYear } from './day-text.ts';
import { growthPanel } from './growth-panel.ts';
import { historyKey } from './history-key.ts';
import { type HistoryLayout, historyLayout } from './history-layout.ts';
import { historyWindow } from './history-window.ts';
import type { Mark } from './marks.ts';
import { marksOption, titleWithName } from './marks-option.ts';
import { ratioPanel } from './ratio-panel.ts';

export interface HistoryChart {
  readonly option: EChartsOption;
  readonly size: ChartSize;
}

export function historyChart(advice: HistoryAdvice): HistoryChart {
  const { marks, size } = historyMarks(advice);
  const title = titleWithName('History', advice.team.name);
  return { size, option: marksOption({ title, subtitle: historySubtitle(advice), size, marks }) };
}

/** `12 closed sprints, to 13 Nov 2026 · 4 imported · the latest 26 shown` */
export function historySubtitle(advice: HistoryAdvice): string {
  const { past, earlier } = historyWindow(advice);
  const last = advice.past.at(-1);
  const sprints = countText(advice.past.length, 'closed sprint');
  const imported = advice.past.filter(({ importedAt }) => importedAt !== undefined).length;
  return [
    last === undefined ? 'no closed sprint yet' : `${sprints}, to ${dateWithYear(last.endsOn)}`,
    ...(imported === 0 ? [] : [`${imported} imported`]),
    ...(earlier === 0 ? [] : [`the latest ${past.length} shown`]),
    ...(past.length >= LEAST_CHART_VALUES ? [] : [`what is ordinary shows from ${LEAST_CHART_VALUES} on`]),
  ].join(' · ');
}

export function historyMarks(advice: HistoryAdvice): { readonly marks: Mark[]; readonly size: ChartSize } {
  const shown = historyWindow(advice);
  const panels = shown.ratios.length + (shown.growth === undefined ? 0 : 1);
  const layout = historyLayout(panels, shown.past.length);
  const marks = layout.plots.flatMap((plot, panel): Mark[] => {
    const ratio = shown.ratios[panel];
    const { velocity, growth } = shown.baselineEnds;
    const measuredBy = ratio === undefined ? growth : ratio.ratio === 'velocityGrowth' ? velocity : undefined;
    const place = { plot, xOf: (index: number) => layout.xOf(plot, index), measuredBy };
    return [
      ...(ratio === undefined
        ? growthPanel(shown.growth ?? [], place)
        : ratioPanel(ratio, shown.past, place)),
      ...(layout.writesDates(panel) ? dates(shown.past, plot, layout) : []),
    ];
  });
  return { marks: [...marks, ...historyKey(shown, layout.key)], size: layout.size };
}

function dates(past: readonly PastSprint[], plot: Box, { bandPx, xOf }: HistoryLayout): Mark[] {
  return dateMarks(
    past.map(({ endsOn }) => endsOn),
    { bandPx, bottomPx: plot.bottom, fontSizePx: 12, xOf: (index) => xOf(plot, index) },
  );
}
