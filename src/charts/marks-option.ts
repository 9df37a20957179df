/** An ECharts option made of a frame and marks alone. Pure; draws nothing. */
import type { EChartsOption } from 'echarts';
import { type ChartSize, cardEdge, titles } from './chart-frame.ts';
import { drawableText } from './drawable-text.ts';
import type { Mark } from './marks.ts';

export interface MarkedChart {
  readonly title: string;
  readonly subtitle: string;
  readonly size: ChartSize;
  readonly marks: readonly Mark[];
}

export function marksOption({ title, subtitle, size, marks }: MarkedChart): EChartsOption {
  return { title: titles(title, subtitle, size), graphic: { elements: [cardEdge(size), ...marks] } };
}

/** `Surprise odds by size: Harbour team`; without the team's name when the font cannot draw it. */
export function titleWithName(title: string, teamName: string): string {
  const name = drawableText(teamName);
  return name === undefined ? title : `${title}: ${name}`;
}
