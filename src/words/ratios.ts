/** The ratios of a sprint as short facts: the number first, then what it is made of. */
import { RATIO_IDS, type RatioId } from '../sprint/sprint-ratios.ts';
import type { SprintSummary } from '../sprint/summary.ts';
import type { SprintTotals } from '../sprint/totals.ts';
import { isDefined } from '../sprint/undefined-value.ts';
import { against } from './amounts.ts';
import { say, sayCode } from './say.ts';
import { ratioText } from './undefined.ts';

interface RatioFact {
  readonly title: string;
  /** `92% (23 of 25 points committed)`, or why there is no such ratio. */
  readonly fact: string;
}

/** Each ratio's message takes what it needs of a sprint's sums, and of what it is compared with. */
type MadeOf = {
  [Id in RatioId]: { readonly code: Id } & SprintTotals & {
      readonly baseline: 'itself' | 'first-three' | 'named' | 'not-noted';
      readonly baselineName: string;
      readonly change: 'fell' | 'same' | 'rose' | 'so-far';
      readonly by: number;
    };
}[RatioId];

/** One for each ratio, as plain text. */
export function ratioFacts(summary: SprintSummary, sprint: 'running' | 'over'): RatioFact[] {
  return RATIO_IDS.map((ratio) => ({
    title: ratio === 'velocityGrowth' ? say('ratio-velocity-title') : say('ratio-title', { ratio }),
    fact: fact(ratio, summary, sprint),
  }));
}

function fact(
  id: RatioId,
  { ratios, verdict, totals, baseline, growthPerMemberDay: growth }: SprintSummary,
  sprint: 'running' | 'over',
): string {
  const ratio = ratios[id];
  if (!isDefined(ratio)) return ratioText(ratio);
  const failed = verdict.failedTests.find((test) => test.id === id);
  const value = failed ? against(failed.value, failed.threshold).value : ratioText(ratio);
  const [known, baselineName] =
    typeof baseline === 'object' ? ['named', baseline.name] : [baseline ?? 'not-noted', ''];
  const fellOrRose = ratio < 1 ? 'fell' : ratio === 1 ? 'same' : 'rose';
  const change = { change: sprint === 'over' ? fellOrRose : 'so-far', by: Math.abs(ratio - 1) };
  const made = { code: id, ...totals, baseline: known, baselineName, ...change } as MadeOf;
  const madeOf = sayCode('ratio-of', made);
  const isPerDay = id === 'velocityGrowth' && growth !== undefined;
  return say('ratio-fact', {
    value,
    madeOf: isPerDay ? say('ratio-of-velocityGrowth-per-member-day', { madeOf, growth }) : madeOf,
  });
}

/** `Load 30 points: 25 committed, 3 pulled in, 2 surprise work. Velocity 23 points.`, as plain text. */
export function loadSentence({ totals }: SprintSummary): string {
  return say('ratio-load', {
    load: totals.loadPoints,
    committed: totals.commitmentPoints,
    pulledIn: totals.pulledInPoints,
    surprise: totals.surprisePoints,
    velocity: totals.velocityPoints,
  });
}
