/**
 * The ratios of a sprint. Each is declared once, as sums over sums; notes, history, charts, import, export and words follow
 * from the declaration.
 */
import type { ThresholdNote } from './coaching-note.ts';
import type { Thresholds } from './thresholds.ts';
import type { SprintTotals } from './totals.ts';
import { type Ratio, type ReasonCode, ratioOf } from './undefined-value.ts';

/** What ratios are made of. */
export interface RatioSums extends SprintTotals {
  /** 0 when there is no baseline sprint. */
  readonly baselineVelocityPoints: number;
}

/** A line that the team sets, and the note for a value on its wrong side; for a mark, for one that reached it. */
export interface RatioLine {
  readonly side: 'floor' | 'ceiling' | 'mark';
  readonly threshold: keyof Thresholds;
  readonly note: ThresholdNote['id'];
  /** One value beyond it says nothing, so it isn't drawn or counted as crossed: only a signal over several sprints tells. */
  readonly onlyAsSignal?: true;
}

/** `(part − less) ÷ whole`. */
interface RatioDeclaration {
  readonly part: keyof RatioSums;
  readonly less?: keyof RatioSums;
  readonly whole: keyof RatioSums;
  /** Why there is no such ratio when the whole is 0. */
  readonly whenZero: Extract<ReasonCode, `no-${string}`>;
  /** The bounds that it can't pass, so that no limit in a chart promises what can't happen. */
  readonly possible: { readonly low?: number; readonly high?: number };
  /** In the order of their notes. */
  readonly lines: readonly RatioLine[];
}

/** In the order in which they are shown: the verdict's tests, how planning went, estimates, flow, growth. */
const DECLARED = {
  /**
   * Kept share: how much of the commitment got finished.
   *
   * Formula: estimates of the committed cards that were finished ÷ commitment. From 0 to 1.
   * Undefined when there was no commitment.
   * How it misleads: a card that is almost done counts as nothing, and one big card can decide it alone.
   * Source: common practice, no published source.
   *
   * @example ratioOfSums('keptShare', { committedFinishedPoints: 16, commitmentPoints: 20 }) === 0.8
   */
  keptShare: {
    part: 'committedFinishedPoints',
    whole: 'commitmentPoints',
    whenZero: 'no-commitment',
    possible: { low: 0, high: 1 },
    lines: [{ side: 'floor', threshold: 'keptShareAtLeast', note: 'kept-share-low' }],
  },
  /**
   * Surprise ratio: how much work turned up that nobody foresaw, measured by the commitment.
   *
   * Formula: surprise work ÷ commitment. 0 or more, without an upper end.
   * Undefined when there was no commitment.
   * How it misleads: surprise on pulled-in cards counts as well, and what one person calls surprise another calls drift.
   * Source: common practice, no published source.
   *
   * @example ratioOfSums('surpriseRatio', { surprisePoints: 4, commitmentPoints: 20 }) === 0.2
   */
  surpriseRatio: {
    part: 'surprisePoints',
    whole: 'commitmentPoints',
    whenZero: 'no-commitment',
    possible: { low: 0 },
    lines: [{ side: 'ceiling', threshold: 'surpriseRatioAtMost', note: 'surprise-ratio-high' }],
  },
  /**
   * Pull-in ratio: how much work was brought in after planning, measured by the commitment.
   *
   * Formula: pulled-in work ÷ commitment. 0 or more, without an upper end.
   * Undefined when there was no commitment.
   * How it misleads: work that was pulled in because of an emergency looks like a team that committed to too little.
   * Source: common practice, no published source.
   *
   * @example ratioOfSums('pullInRatio', { pulledInPoints: 5, commitmentPoints: 20 }) === 0.25
   */
  pullInRatio: {
    part: 'pulledInPoints',
    whole: 'commitmentPoints',
    whenZero: 'no-commitment',
    possible: { low: 0 },
    lines: [{ side: 'ceiling', threshold: 'pullInRatioAtMost', note: 'pull-in-ratio-high' }],
  },
  /**
   * Plan share: how much of what the sprint became had been planned.
   *
   * Formula: commitment ÷ load. From 0 to 1; 0 when there was no commitment but some work.
   * Undefined when the sprint held no work at all.
   * How it misleads: a team that plans little and lets nothing in scores as well as one that plans much.
   * Source: common practice, no published source.
   *
   * @example ratioOfSums('planShare', { commitmentPoints: 20, loadPoints: 25 }) === 0.8
   */
  planShare: {
    part: 'commitmentPoints',
    whole: 'loadPoints',
    whenZero: 'no-load',
    possible: { low: 0, high: 1 },
    lines: [{ side: 'floor', threshold: 'planShareAtLeast', note: 'plan-share-low' }],
  },
  /**
   * Estimate accuracy: how near the estimates came to the true sizes, over all cards not dropped.
   *
   * Formula: 1 − Σ|estimate error| ÷ load, computed as (load − Σ|estimate error|) ÷ load, which is exact up to the
   * division. At most 1; below 0 when the errors exceed the load.
   * Undefined when the sprint held no work.
   * How it misleads: errors within the scale's gaps count as none, and cards that nobody began have no error yet.
   * Source: common practice, no published source.
   *
   * @example ratioOfSums('estimateAccuracy', { estimateErrorPoints: 4, loadPoints: 20 }) === 0.8
   */
  estimateAccuracy: {
    part: 'loadPoints',
    less: 'estimateErrorPoints',
    whole: 'loadPoints',
    whenZero: 'no-load',
    possible: { high: 1 },
    lines: [
      { side: 'floor', threshold: 'estimateAccuracyAtLeast', note: 'estimate-accuracy-low' },
      {
        side: 'ceiling',
        threshold: 'estimateAccuracyAtMost',
        note: 'estimate-accuracy-high',
        onlyAsSignal: true,
      },
    ],
  },
  /**
   * On-scale share: how many of the finished cards turned out to be as large as the team had estimated.
   *
   * Formula: finished cards whose true size lies nearest to their own estimate on the scale ÷ finished cards. Counts
   * cards, not points. From 0 to 1.
   * Undefined when no card was finished.
   * How it misleads: an estimate that is not on the scale can never be hit, and one card of two is already a half.
   * Source: common practice, no published source.
   *
   * @example ratioOfSums('onScaleShare', { onScaleCards: 3, finishedCards: 4 }) === 0.75
   */
  onScaleShare: {
    part: 'onScaleCards',
    whole: 'finishedCards',
    whenZero: 'no-card-finished',
    possible: { low: 0, high: 1 },
    lines: [],
  },
  /**
   * Finish share: how much of the effort ended in finished cards.
   *
   * Formula: velocity ÷ points worked. 0 or more; above 1 when finished cards took less work than estimated.
   * Undefined when nothing was worked.
   * How it misleads: it mixes half-done work with estimates that were too low; look at both.
   * Source: common practice, no published source.
   *
   * @example ratioOfSums('finishShare', { velocityPoints: 18, workedPoints: 24 }) === 0.75
   */
  finishShare: {
    part: 'velocityPoints',
    whole: 'workedPoints',
    whenZero: 'no-work-reported',
    possible: { low: 0 },
    lines: [],
  },
  /**
   * Velocity growth: this sprint's velocity, measured by the team's own baseline sprint.
   *
   * Formula: velocity ÷ velocity of the baseline sprint (the team's first closed sprint with a velocity, or one that the
   * facilitator names). 0 or more; 1 in the baseline sprint itself.
   * Undefined before there is a baseline.
   * How it misleads: points stretch with time, so the same work may be called more points; people joining or leaving
   * change it as well. Never compare it between teams.
   * Source: common practice, no published source.
   *
   * @example ratioOfSums('velocityGrowth', { velocityPoints: 24, baselineVelocityPoints: 10 }) === 2.4
   */
  velocityGrowth: {
    part: 'velocityPoints',
    whole: 'baselineVelocityPoints',
    whenZero: 'no-baseline',
    possible: { low: 0 },
    lines: [
      { side: 'mark', threshold: 'velocityGrowthFirstMark', note: 'velocity-growth-first-mark' },
      { side: 'mark', threshold: 'velocityGrowthLongRangeMark', note: 'velocity-growth-long-range-mark' },
    ],
  },
} as const satisfies Record<string, RatioDeclaration>;

export type RatioId = keyof typeof DECLARED;

export const RATIOS: Readonly<Record<RatioId, RatioDeclaration>> = DECLARED;

export const RATIO_IDS = Object.keys(RATIOS) as readonly RatioId[];

export type SprintRatios = Readonly<Record<RatioId, Ratio>>;

/** The sums that a ratio is made of. */
type SumsOf<Id extends RatioId> = Pick<
  RatioSums,
  Extract<(typeof DECLARED)[Id][keyof (typeof DECLARED)[Id]], keyof RatioSums>
>;

export function ratioOfSums<Id extends RatioId>(id: Id, sums: SumsOf<Id>): Ratio {
  const { part, less, whole, whenZero } = RATIOS[id];
  const known = sums as RatioSums;
  return ratioOf(known[part] - (less ? known[less] : 0), known[whole], whenZero);
}

/** @param baselineVelocityPoints undefined when no sprint with a velocity has been closed. */
export function sprintRatios(totals: SprintTotals, baselineVelocityPoints: number | undefined): SprintRatios {
  const sums: RatioSums = { ...totals, baselineVelocityPoints: baselineVelocityPoints ?? 0 };
  return Object.fromEntries(RATIO_IDS.map((id) => [id, ratioOfSums(id, sums)])) as SprintRatios;
}
