/** How much to commit to, in sentences: the range first, then what its ends mean and what it rests on. */
import type { RangeAdvice } from '../../app/advice/advice.ts';
import type { PastSprint } from '../../app/history/past-sprint.ts';
import { advisedRange } from '../../forecast/advised-range.ts';
import type { CommitmentRange } from '../../forecast/commitment-range.ts';
import { formatPercent } from '../../sprint/percent.ts';
import { formatPoints, formatPointsWithUnit } from '../../sprint/points.ts';
import type { Thresholds } from '../../sprint/thresholds.ts';
import { mrkdwnOf, typed } from '../../words/typed-text.ts';
import { notKnown, reasonSentence } from '../../words/undefined.ts';
import { COMMAND } from '../ids.ts';
import type { AdviceWords } from './advice-words.ts';
import { rangeLead } from './advised-words.ts';
import { code } from './block-builders.ts';
import { importHint } from './no-answer-words.ts';
import { inTen } from './often-words.ts';
import { counted, listed, spanWords } from './sprint-words.ts';

const PAST_SHOWN = 3;

const ALWAYS_UNKNOWN = [
  'It takes the team and its way of working for unchanged.',
  'It takes all pulled-in work for time to spare, which urgent work is not.',
];

export function rangeWords(advice: RangeAdvice): AdviceWords {
  const { range, past, thresholds } = advice;
  const lead = rangeLead(advice);
  if ('undefined' in range) {
    const evidence = [comingWords(advice), importHint(), ...pastLines(past)];
    return { lead, evidence, unknown: [], isAnswered: false };
  }
  return {
    lead,
    evidence: [
      ...endsWords(range, thresholds),
      comingWords(advice),
      basisWords(range, past),
      ...surpriseWords(range, thresholds),
    ],
    unknown: [...range.missing.map(mrkdwnOf), ...ALWAYS_UNKNOWN],
    isAnswered: true,
  };
}

/** What the ends of the range mean, or why there are none; a paragraph each. */
export function endsWords(range: CommitmentRange, thresholds: Thresholds): string[] {
  const advised = advisedRange(range);
  const high = (points: number): string =>
    `• Up to ${formatPointsWithUnit(points)} you are likely to keep it: in at least 8 of 10 sprints ${formatPercent(thresholds.keptShareAtLeast)} of it or more gets finished.`;
  const low = (points: number): string =>
    `• From ${formatPointsWithUnit(points)} on you are unlikely to run out of work: in at most 2 of 10 sprints more than ${formatPercent(thresholds.pullInRatioAtMost)} on top gets pulled in.`;
  switch (advised.kind) {
    case 'range':
      return [`${high(advised.highPoints)}\n${low(advised.lowPoints)}`];
    case 'at most':
      return [`${high(advised.highPoints)}\n• The low end is ${notKnown(advised.why)}`];
    case 'at least':
      return [`${low(advised.lowPoints)}\n• The high end is ${notKnown(advised.why)}`];
    case 'crossed':
      return [
        `${reasonSentence(advised.why)} No other commitment mends that: agree to finish committed cards before new ones come in.`,
        `${high(advised.highPoints)}\n${low(advised.lowPoints)}`,
      ];
    case 'middle way':
      return [
        reasonSentence(advised.why),
        `At ${formatPointsWithUnit(advised.points)} the chances are even: ${inTen(advised.chance)} to keep it, and as many not to pull in more than ${formatPercent(thresholds.pullInRatioAtMost)} on top.`,
        `${high(advised.highPoints)}\n${low(advised.lowPoints)}`,
      ];
    case 'none':
      return range.crossed
        ? [
            'Look at what kept cards from being finished before you look at the size of the commitment: smaller cards, and fewer of them begun at once, are a start.',
          ]
        : [importHint()];
  }
}

/** `For Mon 30 Nov to Fri 11 Dec: 10 working days and 5 members, with 6 days off or away.` */
function comingWords({ coming, range }: RangeAdvice): string {
  const { workingDays, members, awayDays } = coming;
  const away =
    awayDays === undefined
      ? []
      : [
          awayDays === 0
            ? 'nobody off or away'
            : `${formatPoints(awayDays)} ${awayDays === 1 ? 'day' : 'days'} off or away`,
        ];
  const facts = listed([counted(workingDays, 'working day'), counted(members, 'member'), ...away]);
  const scaled =
    'undefined' in range ? '' : ' What past sprints achieved is scaled to that much working time.';
  return `For ${spanWords(coming)}: ${facts}.${scaled}`;
}

/** `It rests on your latest 9 sprints with a commitment, 4 of them imported. The last 3:`, and these. */
function basisWords({ sprints }: CommitmentRange, past: readonly PastSprint[]): string {
  const lines = pastLines(past);
  const heading = `It rests on your latest ${counted(sprints, 'sprint')} with a commitment${importedWords(past)}. The last ${lines.length}:`;
  return [heading, ...lines].join('\n');
}

function importedWords(past: readonly PastSprint[]): string {
  const imported = past.filter(({ importedAt }) => importedAt !== undefined).length;
  if (imported === 0) return '';
  return imported === past.length ? ', all of them imported' : `, ${imported} of them imported`;
}

/** The latest sprints, latest first. */
function pastLines(past: readonly PastSprint[]): string[] {
  return past.slice(-PAST_SHOWN).reverse().map(pastLine);
}

/** `• Harbour 11: 21 committed, 20 of them finished, 3 pulled in, velocity 23` */
function pastLine({
  name,
  commitmentPoints,
  committedFinishedPoints,
  pulledInPoints,
  velocityPoints,
}: PastSprint): string {
  const facts = [
    `${formatPoints(commitmentPoints)} committed`,
    ...(committedFinishedPoints === undefined
      ? []
      : [`${formatPoints(committedFinishedPoints)} of them finished`]),
    ...(pulledInPoints === undefined ? [] : [`${formatPoints(pulledInPoints)} pulled in`]),
    velocityPoints === undefined ? 'velocity not known' : `velocity ${formatPoints(velocityPoints)}`,
  ];
  return `• ${typed(name)}: ${facts.join(', ')}`;
}

/** The verdict's other test, which no commitment decides. */
function surpriseWords(
  { sprints: used, surpriseAboveCeiling: { sprints, of } }: CommitmentRange,
  thresholds: Thresholds,
): string[] {
  if (of === 0) return [];
  const ceiling = formatPercent(thresholds.surpriseRatioAtMost);
  const recorded = of === used ? '' : ' in which it is recorded';
  if (sprints === 0) {
    return [
      `Surprise work stayed within its ceiling of ${ceiling} in all ${counted(of, 'sprint')}${recorded}.`,
    ];
  }
  return [
    `In ${sprints} of ${counted(of, 'sprint')}${recorded} surprise work went above its ceiling of ${ceiling}, which by itself makes a sprint missed. No commitment mends that; ${code(`${COMMAND} odds`)} shows which sizes of card to look into first.`,
  ];
}
