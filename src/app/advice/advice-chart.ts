/** The picture that goes with an answer to a planning question. Draws nothing itself. */
import { isDefined } from '../../sprint/undefined-value.ts';
import { drawnBodies } from '../bodies/moved-dates.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Picture } from '../ports/charts.ts';
import type { PostImage } from '../ports/messenger.ts';
import type { Advice, JointAdvice } from './advice.ts';
import { commitmentCurve } from './shown-in-chart.ts';

type Drawable = Advice | JointAdvice;

/** A line takes two points. */
const LEAST_VALUES = 2;

/** Whether there is something to draw: where the answer is that too little is known, words say it better. */
export function hasChart(advice: Drawable): boolean {
  if ('joint' in advice) return advice.joint !== undefined;
  if ('odds' in advice) return !('undefined' in advice.odds);
  if ('range' in advice) return commitmentCurve(advice) !== undefined;
  if ('forecast' in advice) return !('undefined' in advice.forecast);
  if ('bodies' in advice) return drawnBodies(advice).drawn.length > 0;
  return advice.ratios.some(({ values }) => values.filter(isDefined).length >= LEAST_VALUES);
}

/** Takes longer than a lock should be held: not for use inside a transaction. Undefined: there is nothing to draw. */
export async function adviceChart(deps: AppDependencies, advice: Drawable): Promise<PostImage | undefined> {
  if (!hasChart(advice)) return undefined;
  return { ...(await drawn(deps, advice)), fileName: `${advice.question.about}.png` };
}

function drawn({ charts }: AppDependencies, advice: Drawable): Promise<Picture> {
  if ('joint' in advice) return charts.joint(advice);
  if ('odds' in advice) return charts.odds(advice);
  if ('range' in advice) return charts.range(advice);
  if ('forecast' in advice) return charts.forecast(advice);
  if ('bodies' in advice) return charts.kept(advice);
  return charts.history(advice);
}
