/**
 * How the sprint stands, for one person or shared with the channel. The shared one holds sums and cards
 * only: what somebody wrote about growth stays with those who ask for the status themselves.
 */
import type { KnownBlock, SectionBlock } from '@slack/types';
import type { CardLine } from '../../app/cards/card-line.ts';
import type { StatusContent } from '../../app/posting/message-content.ts';
import { formatDay } from '../../sprint/calendar.ts';
import { formatPoints, formatPointsWithUnit } from '../../sprint/points.ts';
import { against } from '../../words/amounts.ts';
import { loadEvidenceWords, loadWords } from '../../words/load.ts';
import { mention } from '../../words/people.ts';
import { mrkdwnOf, plainTyped, shortened, typed } from '../../words/typed-text.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS, COMMAND } from '../ids.ts';
import { actions, bold, button, code, context, fieldSections, lead, section } from './block-builders.ts';
import { cardName, growthWords, plainCardName } from './card-words.ts';
import { type ChartImage, chartBlocks } from './chart-image.ts';
import { lineSections } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';
import { loadSentence, ratioFields } from './ratio-fields.ts';
import { closingWords, counted, listed, spanWords } from './sprint-words.ts';

const GROWTH_SECTIONS_MAX = 30;
const OWNERLESS_NAMED = 3;
const OWNERLESS_NAME_MAX_LENGTH = 60;

/** What the caller alone sees, but for the chart: see `statusChartMessage`. */
export function statusMessage(status: StatusContent): MessageView {
  const share = button('Share in the channel', {
    actionId: ACTIONS.shareStatus,
    value: encodeValue({ sprintId: status.sprint.id }),
  });
  return messageView([
    ...statusBlocks(status, undefined, growthByAnswer(status)),
    context('Only you see this. Shared, it shows the same numbers without the notes.'),
    actions([share]),
  ]);
}

/** The chart that follows the words, seen by whoever sees those. */
export function statusChartMessage(chart: ChartImage): MessageView {
  return messageView(chartBlocks(chart));
}

/** What the channel sees. */
export function sharedStatusMessage(
  status: StatusContent,
  byUserId: string,
  chart?: ChartImage,
): MessageView {
  return messageView([
    ...statusBlocks(status, chart, growthByCard(status)),
    context(`Shared by ${mention(byUserId)}. See it any time with ${code(`${COMMAND} status`)}.`),
  ]);
}

function statusBlocks(
  status: StatusContent,
  chart: ChartImage | undefined,
  growth: SectionBlock[],
): KnownBlock[] {
  const { sprint, summary, on } = status;
  if (!status.begun) {
    return [
      lead(`${plainTyped(sprint.name)} begins on ${formatDay(sprint.startsOn)}`),
      section(
        `${spanWords(sprint)}, ${counted(status.workingDays, 'working day')}. Committed: ${formatPointsWithUnit(summary.totals.commitmentPoints)} on ${counted(status.cards.length, 'card')}. Once it runs, this shows how likely the commitment is to be kept.`,
      ),
    ];
  }
  const open = status.cards.filter(({ state }) => state === 'open').length;
  return [
    lead(
      `${plainTyped(sprint.name)} on ${formatDay(on)}: ${formatPointsWithUnit(summary.totals.openLeftPoints)} left on ${counted(open, 'open card')}`,
    ),
    section(
      [
        finishedWords(status),
        loadWords(status.load),
        ...surpriseWords(status),
        ...ownerlessWords(status),
        daysWords(status),
        answersWords(status),
      ].join('\n'),
    ),
    ...evidenceBlocks(status),
    ...chartBlocks(chart),
    section(bold('Ratios so far')),
    ...fieldSections(ratioFields(summary)),
    section(loadSentence(summary)),
    ...growth,
  ];
}

/** The verdict's other test, which no projection of finished work tells about. */
function surpriseWords({ summary, load }: StatusContent): string[] {
  const failed = summary.verdict.failedTests.find(({ id }) => id === 'surpriseRatio');
  if (!failed || load.from === 'nothing') return [];
  const { value, threshold } = against(failed.value, failed.threshold);
  return [
    `Surprise work alone would make it missed: its ratio is ${value}, above the ceiling of ${threshold}.`,
  ];
}

/** What nobody is asked about, so that it would not be missed before the sprint ends. */
function ownerlessWords({ cards }: StatusContent): string[] {
  const ownerless = cards.filter(({ state, ownerIds }) => state === 'open' && ownerIds.length === 0);
  const [first] = ownerless;
  if (!first) return [];
  const named = ownerless
    .slice(0, OWNERLESS_NAMED)
    .map((card) => mrkdwnOf(shortened(`${card.number}. ${plainCardName(card)}`, OWNERLESS_NAME_MAX_LENGTH)));
  const more = ownerless.length - named.length;
  const list = listed([...named, ...(more > 0 ? [`${more} more`] : [])]);
  return [
    `${counted(ownerless.length, 'open card')} ${ownerless.length === 1 ? 'needs' : 'need'} an owner: ${list}. Take one with ${code(`${COMMAND} take ${first.number}`)}.`,
  ];
}

function evidenceBlocks({ load }: StatusContent): KnownBlock[] {
  const words = loadEvidenceWords(load);
  return words === '' ? [] : [context(words)];
}

function finishedWords({ summary: { totals } }: StatusContent): string {
  if (totals.commitmentPoints === 0) {
    return `Finished: ${formatPointsWithUnit(totals.velocityPoints)}. Nothing had been committed to.`;
  }
  return `Finished: ${formatPoints(totals.committedFinishedPoints)} of ${formatPointsWithUnit(totals.commitmentPoints)} committed.`;
}

function daysWords({ workingDays, workingDaysLeft, sprint, team }: StatusContent): string {
  const left =
    workingDaysLeft === 0
      ? 'No working day comes after this one'
      : `${workingDaysLeft} of ${counted(workingDays, 'working day')} still ${workingDaysLeft === 1 ? 'comes' : 'come'} after this one`;
  return `${left}; the sprint closes on ${closingWords({ sprint, team })}.`;
}

function answersWords({ asked, answered }: StatusContent): string {
  if (asked === 0) return 'Nobody has a card to answer for today.';
  return `${answered} of ${counted(asked, 'member')} with open cards ${asked === 1 ? 'has' : 'have'} answered today.`;
}

function growthByAnswer({ growth }: StatusContent): SectionBlock[] {
  const lines = growth.map((change) => {
    const note = change.note.trim() === '' ? '' : ` – ${typed(change.note)}`;
    return `• ${formatDay(change.day)}, ${cardName(change.card)}: ${growthWords(change)}${note}`;
  });
  return growthSections(lines, 'change', 'changes');
}

function growthByCard({ cards }: StatusContent): SectionBlock[] {
  const grew = cards.filter((card: CardLine) => growthWords(card) !== '');
  const lines = grew.map((card) => `• ${cardName(card)}: ${growthWords(card)}`);
  return growthSections(lines, 'card', 'cards');
}

function growthSections(lines: readonly string[], one: string, many: string): SectionBlock[] {
  if (lines.length === 0) return [section('No card has grown or shrunk so far.')];
  return lineSections(bold('What grew or shrank'), lines, {
    maxSections: GROWTH_SECTIONS_MAX,
    more: (count) =>
      `… and ${counted(count, `more ${one}`, `more ${many}`)}; ${code(`${COMMAND} cards`)} shows every card.`,
  });
}
