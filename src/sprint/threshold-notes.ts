/** The notes on ratios that crossed a threshold of the team. Other notes are not its business. */
import type { CoachingNote, CoachingNoteId } from './coaching-note.ts';
import { formatAgainst } from './percent.ts';
import type { SprintRatios } from './sprint-ratios.ts';
import type { Thresholds } from './thresholds.ts';
import { isDefined } from './undefined-value.ts';

interface Rule {
  readonly id: CoachingNoteId;
  readonly name: string;
  readonly side: 'floor' | 'ceiling' | 'mark';
  readonly ratio: keyof SprintRatios;
  readonly threshold: keyof Thresholds;
  readonly mayMean: string;
  readonly tryNext: string;
}

const RULES: readonly Rule[] = [
  {
    id: 'kept-share-low',
    name: 'The kept share',
    side: 'floor',
    ratio: 'keptShare',
    threshold: 'keptShareAtLeast',
    mayMean:
      'The team promised more than the sprint could hold, or many cards were begun and few were brought home.',
    tryNext:
      'At the next planning, let what the team has lately finished, not what it wishes for, say when to stop adding cards; and finish a card before beginning another.',
  },
  {
    id: 'surprise-ratio-high',
    name: 'The surprise ratio',
    side: 'ceiling',
    ratio: 'surpriseRatio',
    threshold: 'surpriseRatioAtMost',
    mayMean:
      'Cards held work that nobody could see at planning: a dependency, old code, a rule not asked about.',
    tryNext:
      'Look at the cards that held surprises and write down the question that would have shown each one; ask those questions of the big cards at the next planning.',
  },
  {
    id: 'pull-in-ratio-high',
    name: 'The pull-in ratio',
    side: 'ceiling',
    ratio: 'pullInRatio',
    threshold: 'pullInRatioAtMost',
    mayMean:
      'The team commits to too little and fills the sprint later, or urgent work comes in from outside.',
    tryNext:
      'Ask of each pulled-in card whether it could have been planned. If most could, commit to more next time; if most could not, keep room for them and agree who lets work in.',
  },
  {
    id: 'plan-share-low',
    name: 'The plan share',
    side: 'floor',
    ratio: 'planShare',
    threshold: 'planShareAtLeast',
    mayMean:
      'A good part of the sprint was work that planning did not see, so the plan steered less than it should.',
    tryNext:
      'Split the unplanned part into pulled-in work and surprise work, and take up only the larger of the two at the retrospective.',
  },
  {
    id: 'estimate-accuracy-low',
    name: 'The estimate accuracy',
    side: 'floor',
    ratio: 'estimateAccuracy',
    threshold: 'estimateAccuracyAtLeast',
    mayMean: 'Stories were not understood, the code was unfamiliar, or a skill was missing.',
    tryNext:
      'Take the card that missed its estimate by most and retell it together: what would the team have had to know? Split the next card of that kind before estimating it.',
  },
  {
    id: 'estimate-accuracy-high',
    name: 'The estimate accuracy',
    side: 'ceiling',
    ratio: 'estimateAccuracy',
    threshold: 'estimateAccuracyAtMost',
    mayMean:
      'Estimates this near the truth are fine if they come cheaply; if they take long talks, the time may cost more than it brings.',
    tryNext:
      'Timebox estimating: 90 seconds a card is a usual cap. See whether the accuracy stays good enough.',
  },
  {
    id: 'velocity-growth-first-mark',
    name: 'The velocity growth',
    side: 'mark',
    ratio: 'velocityGrowth',
    threshold: 'velocityGrowthFirstMark',
    mayMean: 'At this mark most teams can steer themselves, unless the points have merely grown with time.',
    tryNext:
      'Check that a 3 of today is about a 3 of the baseline sprint. If it is, let the team run the next planning by itself, with the facilitator listening.',
  },
  {
    id: 'velocity-growth-long-range-mark',
    name: 'The velocity growth',
    side: 'mark',
    ratio: 'velocityGrowth',
    threshold: 'velocityGrowthLongRangeMark',
    mayMean: 'The team has reached the long-range mark, unless the points have merely grown with time.',
    tryNext:
      'Check the size of a point against old cards, write down what brought the growth, and choose a new baseline sprint to go on from.',
  },
];

function crosses({ side }: Pick<Rule, 'side'>, value: number, threshold: number): boolean {
  if (side === 'floor') return value < threshold;
  return side === 'ceiling' ? value > threshold : value >= threshold;
}

function crossedSentence(rule: Rule, value: number, threshold: number): string {
  const text = formatAgainst(value, threshold);
  const at = `${rule.name} is ${text.value}`;
  if (rule.side === 'floor') return `${at}, ${text.distance} below its floor of ${text.threshold}.`;
  if (rule.side === 'ceiling') return `${at}, ${text.distance} above its ceiling of ${text.threshold}.`;
  if (value === threshold) return `${at}, right on the mark.`;
  return `${at}, ${text.distance} past the mark of ${text.threshold}.`;
}

/**
 * One note for each crossed threshold, in a fixed order. A ratio that does not exist crosses nothing. Of
 * the two marks of the velocity growth only the higher one that was reached gets a note.
 */
export function thresholdNotes(ratios: SprintRatios, thresholds: Thresholds): CoachingNote[] {
  const notes: CoachingNote[] = [];
  for (const rule of RULES) {
    const value = ratios[rule.ratio];
    const threshold = thresholds[rule.threshold];
    if (!isDefined(value) || !crosses(rule, value, threshold)) continue;
    const { id, mayMean, tryNext } = rule;
    notes.push({ id, crossed: crossedSentence(rule, value, threshold), mayMean, tryNext });
  }
  const passedBoth = notes.some((note) => note.id === 'velocity-growth-long-range-mark');
  return notes.filter((note) => !passedBoth || note.id !== 'velocity-growth-first-mark');
}

/** The ratio that a note is about, and whether a value of it would call for the note; undefined for other notes. */
export function crossingOf(
  id: CoachingNoteId,
  thresholds: Thresholds,
): { readonly ratio: keyof SprintRatios; readonly isCrossedBy: (value: number) => boolean } | undefined {
  const rule = RULES.find((one) => one.id === id);
  return (
    rule && {
      ratio: rule.ratio,
      isCrossedBy: (value) => crosses(rule, value, thresholds[rule.threshold]),
    }
  );
}
