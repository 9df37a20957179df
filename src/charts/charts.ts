/** The `Charts` port: each picture with its words for those who cannot see it. */
import type { Charts } from '../app/ports/charts.ts';
import { burndownAltText } from './burndown-alt-text.ts';
import { burndownPng } from './burndown-png.ts';
import { forecastAltText } from './forecast-alt-text.ts';
import { forecastPng } from './forecast-png.ts';
import { historyAltText } from './history-alt-text.ts';
import { historyPng } from './history-png.ts';
import { oddsAltText } from './odds-alt-text.ts';
import { oddsPng } from './odds-png.ts';
import { rangeAltText } from './range-alt-text.ts';
import { rangePng } from './range-png.ts';

export const charts: Charts = {
  async burndown(burndown) {
    return { png: await burndownPng(burndown), altText: burndownAltText(burndown) };
  },
  async odds(advice) {
    return { png: await oddsPng(advice), altText: oddsAltText(advice) };
  },
  async range(advice) {
    return { png: await rangePng(advice), altText: rangeAltText(advice) };
  },
  async forecast(advice) {
    return { png: await forecastPng(advice), altText: forecastAltText(advice) };
  },
  async history(advice) {
    return { png: await historyPng(advice), altText: historyAltText(advice) };
  },
};
