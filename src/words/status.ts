/** The state of a running sprint in sentences, each in the platform's markup. */
import type { StatusContent } from '../app/watching/status-content.ts';
import { against } from './amounts.ts';
import { cardName } from './cards.ts';
import { loadWords } from './load.ts';
import { type Markup, markup, mrkdwn } from './say.ts';
import { closingTime } from './sprint.ts';
import { shortened } from './typed-text.ts';

const OWNERLESS_NAMED = 3;
const OWNERLESS_NAME_MAX_LENGTH = 60;

export function statusSentences(status: StatusContent): string[] {
  return [
    finishedSentence(status),
    loadWords(status.load),
    ...surpriseSentences(status),
    ...blockedSentences(status),
    ...ownerlessSentences(status),
    ...dayWords(status),
  ];
}

function finishedSentence({ summary: { totals } }: StatusContent): string {
  if (totals.commitmentPoints === 0) {
    return mrkdwn('status-finished-no-plan', { finished: totals.velocityPoints });
  }
  return mrkdwn('status-finished', {
    finished: totals.committedFinishedPoints,
    committed: totals.commitmentPoints,
  });
}

/** The verdict's other test, which no projection of finished work covers. */
function surpriseSentences({ summary, load }: StatusContent): string[] {
  const failed = summary.verdict.failedTests.find(({ id }) => id === 'surpriseRatio');
  if (!failed || load.from === 'nothing') return [];
  const { value, threshold } = against(failed.value, failed.threshold);
  return [mrkdwn('status-surprise', { value, threshold })];
}

function blockedSentences({ summary: { blockedCardDays = 0 } }: StatusContent): string[] {
  return blockedCardDays === 0 ? [] : [mrkdwn('status-blocked-days', { days: blockedCardDays })];
}

/** Nobody is asked about these, so they would not be missed before the sprint ends. */
function ownerlessSentences({ cards }: StatusContent): string[] {
  const ownerless = cards.filter(({ state, ownerIds }) => state === 'open' && ownerIds.length === 0);
  const [first] = ownerless;
  if (!first) return [];
  const named: (string | Markup)[] = ownerless
    .slice(0, OWNERLESS_NAMED)
    .map((card) => shortened(`${card.number}. ${cardName(card)}`, OWNERLESS_NAME_MAX_LENGTH));
  const more = ownerless.length - named.length;
  if (more > 0) named.push(markup('status-no-owner-more', { count: more }));
  return [mrkdwn('status-no-owner', { cards: ownerless.length, names: named, number: String(first.number) })];
}

/** Of the time to come, and of today's answers; nobody works or is asked in a sprint that was reopened for corrections. */
function dayWords({
  drawn,
  workingDays,
  workingDaysLeft,
  sprint,
  team,
  onlyNamedDays,
  asked,
  answered,
}: StatusContent): string[] {
  const closes = closingTime({ sprint, team });
  if (drawn.sprint.reopenedAt !== undefined) return [mrkdwn('status-closes-again', { closes })];
  return [
    mrkdwn('status-days', { left: workingDaysLeft, of: workingDays, closes }),
    ...(onlyNamedDays > 0 ? [mrkdwn('status-days-named', { days: onlyNamedDays })] : []),
    mrkdwn('status-answered', { asked, answered }),
  ];
}
