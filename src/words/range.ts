/** How much to commit to: one number with its chances first, then what they mean and what they are based on. */
import type { RangeAdvice } from '../app/advice/advice.ts';
import { readCommitment } from '../app/advice/range-advice.ts';
import type { PastSprint } from '../app/history/past-sprint.ts';
import type { CommitmentChances, CommitmentRange } from '../forecast/commitment-range.ts';
import type { Unserved } from '../forecast/commitment-remedies.ts';
import type { Thresholds } from '../sprint/thresholds.ts';
import { isDefined, type Reason } from '../sprint/undefined-value.ts';
import type { AdviceWords } from './advice.ts';
import { mrkdwn, say, sayCode } from './say.ts';
import { sprintSpan } from './sprint.ts';
import { noAnswer, reasonSentence } from './undefined.ts';

const PAST_SHOWN = 3;

export function rangeWords(advice: RangeAdvice): AdviceWords {
  const { range, past, thresholds } = advice;
  const asked = askedWords(advice);
  const lead = asked?.lead ?? rangeLead(advice);
  const { span, facts } = comingFacts(advice);
  if ('undefined' in range) {
    const days = say('range-working-days', { count: advice.coming.workingDays });
    const coming = mrkdwn('range-coming', { span, facts: [days, ...facts] });
    const evidence = [coming, mrkdwn('advice-import-hint'), ...pastLines(past)];
    return { lead, evidence, details: [], unknown: [], isAnswered: false };
  }
  return {
    lead,
    evidence: [
      ...(asked ? [asked.startFrom] : []),
      ...meaningWords(range, thresholds),
      mrkdwn('range-scaled', { scaledTo: scaledTo(range), span, facts }),
    ],
    details: [
      mrkdwn('range-chosen'),
      ...endsWords(range),
      basisWords(range, past),
      ...(advice.surpriseInVerdict === false ? [] : surpriseWords(range, thresholds)),
    ],
    unknown: [
      ...range.missing.map((missing) => sayCode('range-missing', missing, 'mrkdwn')),
      mrkdwn('range-unknown-changes'),
      mrkdwn('range-unknown-urgent-work'),
    ],
    isAnswered: !('undefined' in range.advised),
  };
}

/** `At 26 points: 8 in 10 to keep it, … Your last commitment was 21.`, as plain text. */
export function rangeLead({ range, past }: Pick<RangeAdvice, 'range' | 'past'>): string {
  if ('undefined' in range) return noAnswer('range', range.undefined);
  const { advised } = range;
  if ('undefined' in advised) return noAnswer('range', advised.undefined);
  const last = past.at(-1);
  const sentences = [
    say('range-at', { points: advised.points, chances: chanceWords(advised.chances) }),
    ...(last ? [say('range-last-commitment', { points: last.commitmentPoints })] : []),
  ];
  return sentences.join(' ');
}

/**
 * `At 30 points: 4 in 10 to keep it …`, and `The number to start from is 26: …`
 *
 * @returns undefined when no commitment was asked about, it is the one to start from, or nothing is known of any.
 */
function askedWords(advice: RangeAdvice): { lead: string; startFrom: string } | undefined {
  const { range, question } = advice;
  const { points } = question;
  if (points === undefined || 'undefined' in range || 'undefined' in range.advised) return undefined;
  const { advised } = range;
  if (points === advised.points) return undefined;
  return {
    lead: say('range-at', { points, chances: chanceWords(readCommitment(points, advice)) }),
    startFrom: mrkdwn('range-start-from', { points: advised.points, chances: chanceWords(advised.chances) }),
  };
}

/** `8 in 10 to keep it`, `4 in 10 to finish everything`, `2 in 10 to run out of work`, as far as they are known. */
export function chanceWords({ kept, finishedWhole, ranOut }: CommitmentChances): string[] {
  return [
    ...(isDefined(kept) ? [say('range-chance-kept', { chance: kept })] : []),
    ...(isDefined(finishedWhole) ? [say('range-chance-finished', { chance: finishedWhole })] : []),
    ...(isDefined(ranOut) ? [say('range-chance-ran-out', { chance: ranOut })] : []),
  ];
}

/** Between what points both ends hold, or why they don't and what would help; then what the chances are of. */
function meaningWords(
  { advised, lowPoints }: CommitmentRange,
  { keptShareAtLeast: floor, pullInRatioAtMost: ceiling }: Thresholds,
): string[] {
  if ('undefined' in advised) return [adviceBeforeRange(advised.undefined)];
  const { points, unserved, chances } = advised;
  const isRunningOutKnown = isDefined(chances.ranOut);
  const meaning = mrkdwn('range-meaning', { known: isRunningOutKnown ? 'both' : 'kept', floor, ceiling });
  if (unserved) return [unservedWords(unserved), meaning];
  if (!isDefined(lowPoints)) {
    return [`${mrkdwn('range-ran-out-unknown')} ${reasonSentence(lowPoints.undefined)}`, meaning];
  }
  const span =
    lowPoints < points ? mrkdwn('range-span', { low: lowPoints, high: points }) : mrkdwn('range-span-one');
  return [span, meaning];
}

function adviceBeforeRange(why: Reason): string {
  return why.code === 'too-little-finished' ? mrkdwn('range-finish-anything') : mrkdwn('advice-import-hint');
}

/** `No commitment serves both: … In 3 of 8 sprints …: smaller cards would help.` */
function unservedWords({ why, remedies }: Unserved): string {
  return [reasonSentence(why), ...remedies.map((remedy) => sayCode('range-remedy', remedy, 'mrkdwn'))].join(
    ' ',
  );
}

/** Where the ends are, when they are not the answer. */
function endsWords({ advised, lowPoints: low, highPoints: high }: CommitmentRange): string[] {
  if ('undefined' in advised || !advised.unserved || !isDefined(low) || !isDefined(high)) return [];
  const others = advised.unserved.remedies.slice(1);
  return [
    mrkdwn('range-ends-apart', { low, high }),
    ...others.map((remedy) => sayCode('range-remedy', remedy, 'mrkdwn')),
  ];
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
