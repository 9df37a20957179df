/** What a plan means beside the team's history: the range, where this commitment lies, and its big cards. */
import type { SectionBlock } from '@slack/types';
import type { BigCards } from '../../app/advice/odds-advice.ts';
import type { CommitmentReading } from '../../app/advice/range-advice.ts';
import type { PlanPreview } from '../../app/planning/plan-sprint.ts';
import { formatPercent } from '../../sprint/percent.ts';
import { formatPointsWithUnit } from '../../sprint/points.ts';
import type { Thresholds } from '../../sprint/thresholds.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { mrkdwnOf } from '../../words/typed-text.ts';
import { COMMAND } from '../ids.ts';
import { rangeLead } from './advised-words.ts';
import { bold, code, section } from './block-builders.ts';
import { importHint } from './no-answer-words.ts';
import { oddsSentence } from './odds-words.ts';
import { inTen } from './often-words.ts';
import { counted, listed } from './sprint-words.ts';

const NUMBERS_SHOWN = 12;
/** From here on a size is worth a warning. */
const OFTEN_FROM = 0.5;

type Shown = Pick<PlanPreview, 'range' | 'commitment' | 'commitmentPoints' | 'bigCards'>;

export function planAdviceBlocks(preview: Shown): SectionBlock[] {
  const { commitmentPoints, bigCards } = preview;
  return [section(rangeParagraph(preview)), ...(commitmentPoints > 0 ? bigCardsParagraph(bigCards) : [])];
}

function rangeParagraph({ range, commitment, commitmentPoints }: Shown): string {
  const heading = `${bold('How much to commit to')}\n${mrkdwnOf(rangeLead(range))}`;
  if ('undefined' in range.range) return `${heading} ${importHint()}`;
  const basis = `From ${counted(range.range.sprints, 'closed sprint')} with a commitment; ${code(`${COMMAND} range`)} tells more.`;
  if (commitmentPoints === 0) return `${heading} ${basis}`;
  return `${heading} ${basis}\n${placeSentence(commitment, commitmentPoints)} ${chanceSentences(commitment, range.thresholds)}`.trim();
}

/** `This plan of 18 points lies below that:` */
function placeSentence({ lies }: CommitmentReading, commitmentPoints: number): string {
  const plan = `This plan of ${formatPointsWithUnit(commitmentPoints)}`;
  switch (lies) {
    case 'below':
      return `${plan} lies below that: the team may run out of work.`;
    case 'above':
      return `${plan} lies above that: it may be more than the team will keep.`;
    case 'within':
      return `${plan} lies within that.`;
    case 'no range':
      return `This plan has ${formatPointsWithUnit(commitmentPoints)}.`;
  }
}

function chanceSentences(reading: CommitmentReading, thresholds: Thresholds): string {
  const { chanceKept, chancePulledInTooMuch } = reading;
  const parts = [
    ...(isDefined(chanceKept)
      ? [`${inTen(chanceKept)} to keep it (at least ${formatPercent(thresholds.keptShareAtLeast)} finished)`]
      : []),
    ...(isDefined(chancePulledInTooMuch)
      ? [
          `${inTen(chancePulledInTooMuch)} to pull in more than ${formatPercent(thresholds.pullInRatioAtMost)} on top`,
        ]
      : []),
  ];
  return parts.length === 0 ? '' : `The chances: ${parts.join(', ')}.`;
}

function bigCardsParagraph(bigCards: PlanPreview['bigCards']): SectionBlock[] {
  if ('undefined' in bigCards) {
    return [
      section(
        `${bold('Surprise odds of the big cards')}\nNot known yet: no card of a closed sprint is known.`,
      ),
    ];
  }
  if (bigCards.length === 0) return [];
  const isOften = bigCards.some(({ odds }) => odds.likelyShare >= OFTEN_FROM);
  const tip = isOften
    ? [
        'Before you commit to those that often hold some: ask what could turn up, split them, or timebox a first look inside.',
      ]
    : [];
  return [
    section([bold('Surprise odds of the big cards'), ...bigCards.map(bigCardsLine), ...tip].join('\n')),
  ];
}

/** `• Cards 2 and 5: cards of 8 points hold surprise work about 6 times in 10; when they do, 3 points is typical.` */
function bigCardsLine({ odds, cardNumbers }: BigCards): string {
  const shown = cardNumbers.slice(0, NUMBERS_SHOWN).map(String);
  const more = cardNumbers.length - shown.length;
  const numbers = listed([...shown, ...(more > 0 ? [`${more} more`] : [])]);
  const sentence = oddsSentence(odds);
  return `• ${cardNumbers.length === 1 ? 'Card' : 'Cards'} ${numbers}: ${sentence.charAt(0).toLowerCase()}${sentence.slice(1)}.`;
}
