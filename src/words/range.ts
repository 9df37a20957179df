/** How much to commit to: the range first, then what its ends mean and what it is based on. */
import type { RangeAdvice } from '../app/advice/advice.ts';
import type { PastSprint } from '../app/history/past-sprint.ts';
import { type AdvisedRange, advisedRange } from '../forecast/advised-range.ts';
import type { CommitmentRange } from '../forecast/commitment-range.ts';
import type { Thresholds } from '../sprint/thresholds.ts';
import type { AdviceWords } from './advice.ts';
import { mrkdwn, say, sayCode } from './say.ts';
import { sprintSpan } from './sprint.ts';
import { noAnswer, reasonSentence } from './undefined.ts';

const PAST_SHOWN = 3;

export function rangeWords(advice: RangeAdvice): AdviceWords {
  const { range, past, thresholds } = advice;
  const lead = rangeLead(advice);
  if ('undefined' in range) {
    const { span, facts } = comingFacts(advice);
    const days = say('range-working-days', { count: advice.coming.workingDays });
    const coming = mrkdwn('range-coming', { span, facts: [days, ...facts] });
    const evidence = [coming, mrkdwn('advice-import-hint'), ...pastLines(past)];
    return { lead, evidence, details: [], unknown: [], isAnswered: false };
  }
  return {
    lead,
    evidence: [
      ...endsWords(range, thresholds),
      mrkdwn('range-scaled', { scaledTo: scaledTo(range), ...comingFacts(advice) }),
    ],
    details: [
      ...endsBesideCompromise(range, thresholds),
      basisWords(range, past),
      ...(advice.surpriseInVerdict === false ? [] : surpriseWords(range, thresholds)),
    ],
    unknown: [
      ...range.missing.map((missing) => sayCode('range-missing', missing, 'mrkdwn')),
      mrkdwn('range-unknown-changes'),
      mrkdwn('range-unknown-urgent-work'),
    ],
    isAnswered: true,
  };
}

/** `Commit to 26 to 31 points. Your last commitment was 21.`, as plain text. */
export function rangeLead({ range, past }: Pick<RangeAdvice, 'range' | 'past'>): string {
  const advised = advisedRange(range);
  if (advised.kind === 'none') {
    const isCrossed = !('undefined' in range) && range.crossed !== undefined;
    return isCrossed ? reasonSentence(advised.why) : noAnswer('range', advised.why);
  }
  const last = past.at(-1);
  const sentences = [
    commitSentence(advised),
    ...(last ? [say('range-last-commitment', { points: last.commitmentPoints })] : []),
  ];
  return sentences.join(' ');
}

/** `Commit to 26 to 31 points.`, as plain text. */
export function commitSentence(advised: Exclude<AdvisedRange, { kind: 'none' }>): string {
  switch (advised.kind) {
    case 'range': {
      const { lowPoints, highPoints } = advised;
      return lowPoints === highPoints
        ? say('range-commit-exactly', { points: highPoints })
        : say('range-commit-between', { lowPoints, highPoints });
    }
    case 'middle way':
      return say('range-commit-compromise', { points: advised.points });
    case 'at least':
      return say('range-commit-at-least', { points: advised.lowPoints });
    case 'at most':
    case 'crossed':
      return say('range-commit-at-most', { points: advised.highPoints });
  }
}

/** What the ends of the range mean, or why there are none; a paragraph each. */
function endsWords(range: CommitmentRange, thresholds: Thresholds): string[] {
  const advised = advisedRange(range);
  const high = (points: number): string => highEnd(points, thresholds);
  const low = (points: number): string => lowEnd(points, thresholds);
  switch (advised.kind) {
    case 'range':
      return [`${high(advised.highPoints)}\n${low(advised.lowPoints)}`];
    case 'at most':
      return [
        `${high(advised.highPoints)}\n• ${mrkdwn('range-low-end-unknown')} ${reasonSentence(advised.why)}`,
      ];
    case 'at least':
      return [
        `${low(advised.lowPoints)}\n• ${mrkdwn('range-high-end-unknown')} ${reasonSentence(advised.why)}`,
      ];
    case 'crossed':
      return [`${reasonSentence(advised.why)} ${mrkdwn('range-finish-first')}`];
    case 'middle way':
      return [
        reasonSentence(advised.why),
        mrkdwn('range-compromise', { points: advised.points, chance: advised.chance }),
      ];
    case 'none':
      return [range.crossed ? mrkdwn('range-finish-anything') : mrkdwn('advice-import-hint')];
  }
}

/** Where they exclude each other, the ends are no advice. */
function endsBesideCompromise(range: CommitmentRange, thresholds: Thresholds): string[] {
  const advised = advisedRange(range);
  return advised.kind === 'crossed' || advised.kind === 'middle way'
    ? [`${highEnd(advised.highPoints, thresholds)}\n${lowEnd(advised.lowPoints, thresholds)}`]
    : [];
}

function highEnd(points: number, { keptShareAtLeast: floor }: Thresholds): string {
  return `• ${mrkdwn('range-high-end', { points, floor })}`;
}

function lowEnd(points: number, { pullInRatioAtMost: ceiling }: Thresholds): string {
  return `• ${mrkdwn('range-low-end', { points, ceiling })}`;
}

/** `44 member-days`: what past sprints are scaled to. */
export function scaledTo({ model: { scaledTo } }: CommitmentRange): string {
  const { measuredBy, comingTime: time = 0 } = scaledTo;
  return say('range-scaled-to', { measuredBy, time });
}

/** `Mon 30 Nov to Fri 11 Dec`; `5 members and 6 days off or away` */
function comingFacts({ coming }: RangeAdvice): { span: string; facts: string[] } {
  const { workingDays, members, memberDays, awayDays } = coming;
  const daysAway = workingDays * members - memberDays + (awayDays ?? 0);
  const facts = [say('range-members', { count: members }), say('range-days-away', { count: daysAway })];
  return { span: sprintSpan(coming), facts };
}

/** `Based on your latest 9 sprints with a commitment, 4 of them imported. The last 3:`, and these. */
function basisWords({ sprints }: CommitmentRange, past: readonly PastSprint[]): string {
  const lines = pastLines(past);
  const importedSprints = past.filter(({ importedAt }) => importedAt !== undefined).length;
  const imported = importedSprints === 0 ? 'none' : importedSprints === past.length ? 'all' : 'some';
  const heading = mrkdwn('range-basis', { imported, sprints, importedSprints, shown: lines.length });
  return [heading, ...lines].join('\n');
}

/** The latest sprints, latest first. */
function pastLines(past: readonly PastSprint[]): string[] {
  return past.slice(-PAST_SHOWN).reverse().map(pastLine);
}

/** `• Harbour 11: 21 committed, 20 of them finished, 3 pulled in, velocity 23` */
function pastLine(sprint: PastSprint): string {
  const { name, commitmentPoints, committedFinishedPoints, pulledInPoints, velocityPoints } = sprint;
  const facts = [
    say('range-past-committed', { points: commitmentPoints }),
    ...(committedFinishedPoints === undefined
      ? []
      : [say('range-past-finished', { points: committedFinishedPoints })]),
    ...(pulledInPoints === undefined ? [] : [say('range-past-pulled-in', { points: pulledInPoints })]),
    velocityPoints === undefined
      ? say('range-past-velocity-unknown')
      : say('range-past-velocity', { points: velocityPoints }),
  ];
  return `• ${mrkdwn('range-past-sprint', { name, facts })}`;
}

/** The verdict's other test, which no commitment decides. */
function surpriseWords(
  { sprints: used, surpriseAboveCeiling: { sprints, of } }: CommitmentRange,
  { surpriseRatioAtMost: ceiling }: Thresholds,
): string[] {
  if (of === 0) return [];
  const recordedIn = of === used ? 'all' : 'some';
  return sprints === 0
    ? [mrkdwn('range-surprise-within', { recordedIn, ceiling, of })]
    : [
        `${mrkdwn('range-surprise-above', { recordedIn, ceiling, sprints, of })} ${mrkdwn('range-surprise-hint')}`,
      ];
}
