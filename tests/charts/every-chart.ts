/** Every example of every chart, with its picture and its description in the language that is spoken. */
import type {
  ForecastAdvice,
  HistoryAdvice,
  JointAdvice,
  KeptAdvice,
  OddsAdvice,
  RangeAdvice,
} from '../../src/app/advice/advice.ts';
import { burndownChart } from '../../src/charts/burndown-chart.ts';
import type { ChartPicture } from '../../src/charts/chart-theme.ts';
import { forecastChart } from '../../src/charts/forecast-chart.ts';
import { historyChart, historyToDraw } from '../../src/charts/history-chart.ts';
import { jointChart } from '../../src/charts/joint-chart.ts';
import { keptChart } from '../../src/charts/kept-chart.ts';
import { oddsChart } from '../../src/charts/odds-chart.ts';
import { rangeChart, rangeToDraw } from '../../src/charts/range-chart.ts';
import type { Burndown } from '../../src/sprint/burndown.ts';
import { burndownAltText } from '../../src/words/charts/burndown.ts';
import { forecastAltText } from '../../src/words/charts/forecast.ts';
import { historyAltText } from '../../src/words/charts/history.ts';
import { jointAltText } from '../../src/words/charts/joint.ts';
import { keptAltText } from '../../src/words/charts/kept.ts';
import { oddsAltText } from '../../src/words/charts/odds.ts';
import { rangeAltText } from '../../src/words/charts/range.ts';
import * as burndowns from './burndown-examples.ts';
import * as forecasts from './forecast-examples.ts';
import * as histories from './history-examples.ts';
import * as joint from './joint-examples.ts';
import * as kept from './kept-examples.ts';
import * as odds from './odds-examples.ts';
import * as ranges from './range-examples.ts';

export interface ChartExample {
  readonly name: string;
  readonly picture: ChartPicture;
  readonly altText: string;
}

/** @param typedName in place of the names of teams and sprints */
export function everyChart(typedName: string): ChartExample[] {
  const named = <
    Shown extends OddsAdvice | RangeAdvice | ForecastAdvice | HistoryAdvice | KeptAdvice | JointAdvice,
  >(
    shown: Shown,
  ) => ({
    ...shown,
    team: { ...shown.team, name: typedName },
  });
  return [
    ...examples<Burndown>('burndown', burndowns, burndownChart, burndownAltText, (shown) => ({
      ...shown,
      sprintName: typedName,
    })),
    ...examples<OddsAdvice>('odds', odds, oddsChart, oddsAltText, named),
    ...examples<RangeAdvice>(
      'range',
      ranges,
      (advice) => rangeChart(rangeToDraw(advice)),
      rangeAltText,
      named,
    ),
    ...examples<ForecastAdvice>('forecast', forecasts, forecastChart, forecastAltText, named),
    ...examples<HistoryAdvice>(
      'history',
      histories,
      (advice) => historyChart(historyToDraw(advice)),
      historyAltText,
      named,
    ),
    ...examples<JointAdvice>('joint', joint, jointChart, jointAltText, (shown) => ({
      ...named(shown),
      name: typedName,
    })),
    ...examples<KeptAdvice>('kept', kept, keptChart, keptAltText, (shown) => ({
      ...named(shown),
      bodies: shown.bodies.map((kept) => ({ ...kept, body: { ...kept.body, name: typedName } })),
    })),
  ];
}

function examples<Shown>(
  kind: string,
  found: object,
  picture: (shown: Shown) => ChartPicture,
  altText: (shown: Shown) => string,
  named: (shown: Shown) => Shown,
): ChartExample[] {
  return Object.entries(found)
    .filter(([, example]) => typeof example !== 'function')
    .map(([name, example]) => {
      const shown = named(example as Shown);
      return { name: `${kind} ${name}`, picture: picture(shown), altText: altText(shown) };
    });
}
