/**
 * The state of the sprint, for one person or shared with the channel. The shared one holds sums and cards
 * only: what somebody wrote about growth stays with those who ask for the status themselves.
 */
import type { KnownBlock } from '@slack/types';
import type { StatusContent } from '../../app/watching/status-content.ts';
import { cardGrowth, linkedCardName, numbered } from '../../words/cards.ts';
import { loadEvidenceWords } from '../../words/load.ts';
import { person } from '../../words/people.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { sprintSpan } from '../../words/sprint.ts';
import { statusSentences } from '../../words/status.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import {
  actions,
  bold,
  button,
  type ChartImage,
  chartBlocks,
  context,
  lead,
  section,
} from './block-builders.ts';
import { lineList } from './line-sections.ts';
import { type MessagePart, type MessageView, messageView } from './message-view.ts';
import { ratioBlocks } from './ratio-blocks.ts';

/** What the caller alone sees, but for the chart: see `statusChartMessage`. */
export function statusMessage(status: StatusContent): MessageView {
  const value = encodeValue({ sprintId: status.sprint.id });
  const share = button(say('status-share'), { actionId: ACTIONS.shareStatus, value });
  const whatIf = button(say('what-if-button'), { actionId: ACTIONS.askWhatIf, value });
  const hasChances = status.begun && status.load.from === 'projection';
  return messageView([
    ...statusBlocks(status, undefined, {
      blocked: blockedCards(status, 'with what'),
      growth: growthByAnswer(status),
    }),
    context(mrkdwn('status-only-you')),
    actions(hasChances ? [share, whatIf] : [share]),
  ]);
}

/** The chart that follows the words, for the same people. */
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
    ...statusBlocks(status, chart, {
      blocked: blockedCards(status, 'cards only'),
      growth: growthByCard(status),
    }),
    context(mrkdwn('status-shared-by', { person: person(byUserId) })),
  ]);
}

function statusBlocks(
  status: StatusContent,
  chart: ChartImage | undefined,
  { blocked, growth }: { readonly blocked: readonly MessagePart[]; readonly growth: MessagePart },
): MessagePart[] {
  const { sprint, summary, on, cards, workingDays } = status;
  if (!status.begun) {
    return [
      lead(say('status-begins', { sprint: sprint.name, day: sprint.startsOn })),
      section(
        mrkdwn('status-planned', {
          span: sprintSpan(sprint),
          workingDays,
          committed: summary.totals.commitmentPoints,
          cards: cards.length,
        }),
      ),
    ];
  }
  const open = cards.filter(({ state }) => state === 'open').length;
  const left = summary.totals.openLeftPoints;
  return [
    lead(say('status-title', { sprint: sprint.name, day: on, left, cards: open })),
    ...blocked,
    section(statusSentences(status).join('\n')),
    ...evidenceBlocks(status),
    ...chartBlocks(chart),
    section(bold(mrkdwn('status-ratios-title'))),
    ...ratioBlocks(summary, 'running'),
    growth,
  ];
}

/** @param told whether what a card is blocked on is said as well */
function blockedCards({ cards }: StatusContent, told: 'with what' | 'cards only'): MessagePart[] {
  const lines = cards.flatMap((card) => {
    if (!card.blocked) return [];
    const { since, on } = card.blocked;
    const about = { ...numbered(card), since };
    return [
      on === '' || told === 'cards only'
        ? mrkdwn('status-blocked-card', about)
        : mrkdwn('status-blocked-card-on', { ...about, on }),
    ];
  });
  if (lines.length === 0) return [];
  return [
    lineList(bold(mrkdwn('status-blocked-title', { cards: lines.length })), lines, (cards) =>
      mrkdwn('status-blocked-more', { cards }),
    ),
  ];
}

function evidenceBlocks({ load }: StatusContent): KnownBlock[] {
  const words = loadEvidenceWords(load);
  return words === '' ? [] : [context(words)];
}

function growthByAnswer({ growth }: StatusContent): MessagePart {
  const lines = growth.map((change) => {
    const args = { day: change.day, card: linkedCardName(change.card), growth: cardGrowth(change) };
    const note = change.note.trim();
    return note === ''
      ? mrkdwn('status-growth-answer', args)
      : mrkdwn('status-growth-answer-note', { ...args, note });
  });
  return growthSections(lines, 'changes');
}

function growthByCard({ cards }: StatusContent): MessagePart {
  const lines = cards.flatMap((card) => {
    const growth = cardGrowth(card);
    return growth.length === 0 ? [] : [mrkdwn('status-growth-card', { card: linkedCardName(card), growth })];
  });
  return growthSections(lines, 'cards');
}

function growthSections(lines: readonly string[], kind: 'changes' | 'cards'): MessagePart {
  if (lines.length === 0) return section(mrkdwn('status-growth-none'));
  return lineList(
    bold(mrkdwn('status-growth-title')),
    lines.map((line) => `• ${line}`),
    (count) => mrkdwn('status-growth-more', { kind, count }),
  );
}
