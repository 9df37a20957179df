/** The `Charts` port: each picture with its words for those who can't see it. */
import type { Charts, Picture } from '../app/ports/charts.ts';
import { burndownAltText } from '../words/charts/burndown.ts';
import { forecastAltText } from '../words/charts/forecast.ts';
import { historyAltText } from '../words/charts/history.ts';
import { oddsAltText } from '../words/charts/odds.ts';
import { rangeAltText } from '../words/charts/range.ts';
import { burndownChart } from './burndown-chart.ts';
import type { ChartPicture } from './chart-theme.ts';
import { forecastChart } from './forecast-chart.ts';
import { historyChart } from './history-chart.ts';
import { oddsChart } from './odds-chart.ts';
import { rangeChart } from './range-chart.ts';
import { renderPng } from './render-png.ts';

export const charts: Charts = {
  burndown: (burndown) => drawn(burndownChart(burndown), burndownAltText(burndown)),
  odds: (advice) => drawn(oddsChart(advice), oddsAltText(advice)),
  range: (advice) => drawn(rangeChart(advice), rangeAltText(advice)),
  forecast: (advice) => drawn(forecastChart(advice), forecastAltText(advice)),
  history: (advice) => drawn(historyChart(advice), historyAltText(advice)),
};

async function drawn({ option, size }: ChartPicture, altText: string): Promise<Picture> {
  return { png: await renderPng(option, size), altText };
}
