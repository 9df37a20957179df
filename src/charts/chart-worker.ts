/** What `charts.ts` starts: draws charts in a thread of its own. */
import { answering } from '../threads/answering.ts';
import { burndownChart } from './burndown-chart.ts';
import type { ChartQuestion } from './charts.ts';
import { forecastChart } from './forecast-chart.ts';
import { historyChart } from './history-chart.ts';
import { jointChart } from './joint-chart.ts';
import { keptChart } from './kept-chart.ts';
import { oddsChart } from './odds-chart.ts';
import { rangeChart } from './range-chart.ts';
import { renderPng } from './render-png.ts';

const CHARTS = {
  burndown: burndownChart,
  odds: oddsChart,
  range: rangeChart,
  forecast: forecastChart,
  history: historyChart,
  kept: keptChart,
  joint: jointChart,
};

answering(async ({ chart, of }: ChartQuestion) => {
  const { option, size } = CHARTS[chart](of as never);
  return renderPng(option, size);
});
