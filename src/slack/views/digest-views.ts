/** What is said of a running sprint by itself: a facilitator's morning digest, a word when something turns, the form for both, and the channel's weekly line. */
import type { ModalView } from '@slack/types';
import type { CardLine } from '../../app/cards/card-line.ts';
import type { DigestContent } from '../../app/watching/digest-content.ts';
import type { DigestSetting } from '../../app/watching/set-digest.ts';
import type { StatusContent } from '../../app/watching/status-content.ts';
import { signalOf, type Word } from '../../app/watching/watch.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { against } from '../../words/amounts.ts';
import { linkedCardName } from '../../words/cards.ts';
import { loadSentence } from '../../words/load.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { bold, context, lead, section } from './block-builders.ts';
import { textField } from './form-inputs.ts';
import { formView } from './form-view.ts';
import { lineList } from './line-sections.ts';
import { type MessagePart, type MessageView, messageView } from './message-view.ts';

export const DIGEST_FIELDS = { digestAt: 'digestAt' } as const;

export function digestMessage({ digest }: { readonly digest: DigestContent }): MessageView {
  const { status, still } = digest;
  const blocked = status.cards.filter((card) => card.blocked !== undefined);
  const isCalm = blocked.length === 0 && still.length === 0;
  return messageView([
    lead(say('digest-title', { sprint: status.sprint.name, day: status.on })),
    section(
      [
        ...lastDaySentence(status),
        ...answersSentence(digest),
        loadSentence(status.load),
        changeSentence(digest),
        surpriseSentence(digest),
      ].join('\n'),
    ),
    ...list(mrkdwn('digest-blocked-title'), blocked.map(blockedLine)),
    ...list(
      mrkdwn('digest-still-title'),
      still.map(({ card, days }) =>
        mrkdwn('digest-still', { card: linkedCardName(card), days, left: card.leftPoints }),
      ),
    ),
    ...(isCalm ? [section(mrkdwn('digest-none-still'))] : []),
    context(mrkdwn('digest-how')),
  ]);
}

function lastDaySentence({ sprint, on }: StatusContent): string[] {
  return on === sprint.endsOn ? [mrkdwn('digest-last-day', { time: sprint.closesAt })] : [];
}

/** Where somebody didn't answer, the cards may be further than they look. */
function answersSentence({ answersBefore: before }: DigestContent): string[] {
  if (!before || before.answered === before.asked) return [];
  const { day, asked, answered } = before;
  return [
    answered === 0
      ? mrkdwn('digest-no-answers', { day })
      : mrkdwn('digest-answers', { day, asked, answered }),
  ];
}

function changeSentence({ status, signalBefore }: DigestContent): string {
  const before = signalBefore === 'on the line' ? 'on-the-line' : (signalBefore ?? 'none');
  const isSame = signalBefore !== undefined && signalBefore === signalOf(status.load);
  return mrkdwn('digest-change', { before: isSame ? 'same' : before });
}

function surpriseSentence({ status, surpriseCeiling }: DigestContent): string {
  const { totals, ratios } = status.summary;
  const growth = { points: totals.surprisePoints, drift: totals.driftPoints };
  if (!isDefined(ratios.surpriseRatio)) return mrkdwn('digest-surprise-no-plan', growth);
  return mrkdwn('digest-surprise', { ...growth, ...against(ratios.surpriseRatio, surpriseCeiling) });
}

function blockedLine(card: CardLine): string {
  const { since, on } = card.blocked ?? { since: '', on: '' };
  const named = { card: linkedCardName(card), since };
  return on === '' ? mrkdwn('digest-blocked', named) : mrkdwn('digest-blocked-on', { ...named, on });
}

function list(title: string, lines: readonly string[]): MessagePart[] {
  if (lines.length === 0) return [];
  return [
    lineList(
      bold(title),
      lines.map((line) => `• ${line}`),
      (cards) => mrkdwn('digest-more', { cards }),
    ),
  ];
}

export function watchWordMessage({
  status: { load, sprint },
  word,
  crossed,
}: {
  readonly status: StatusContent;
  readonly word: Word;
  readonly crossed: { readonly value: number; readonly ceiling: number } | undefined;
}): MessageView {
  return messageView([
    lead(say(`watch-${word}`, { sprint: sprint.name })),
    section(crossed ? mrkdwn('watch-ratio', against(crossed.value, crossed.ceiling)) : loadSentence(load)),
    context(mrkdwn('watch-next')),
  ]);
}

export function weeklyLineMessage({
  status,
  surpriseCeiling,
}: Pick<DigestContent, 'status' | 'surpriseCeiling'>): MessageView {
  const { cards, sprint, summary, workingDaysLeft } = status;
  const { commitmentPoints } = summary.totals;
  const left = cards
    .filter(({ origin, state }) => origin === 'planned' && state === 'open')
    .reduce((sum, { leftPoints }) => sum + leftPoints, 0);
  const { surpriseRatio } = summary.ratios;
  return messageView([
    lead(say('weekly-line-title', { sprint: sprint.name, days: workingDaysLeft })),
    section(
      [
        mrkdwn('weekly-line-left', { committed: commitmentPoints, left }),
        isDefined(surpriseRatio)
          ? mrkdwn('weekly-line-surprise', against(surpriseRatio, surpriseCeiling))
          : mrkdwn('weekly-line-surprise-no-plan', { points: summary.totals.surprisePoints }),
        mrkdwn('weekly-line-blocked', { cards: cards.filter(({ blocked }) => blocked).length }),
      ].join(' '),
    ),
  ]);
}

export function digestFormView({ team, digestAt }: DigestSetting, replyTo?: string): ModalView {
  const frame = {
    form: 'digest',
    title: say('digest-form-title'),
    submit: say('digest-submit'),
    context: { teamId: team.id },
    replyTo,
  };
  return formView(frame, [
    section(mrkdwn('digest-intro', { team: team.name })),
    textField({
      field: DIGEST_FIELDS.digestAt,
      label: say('digest-at'),
      hint: say('digest-at-hint', { zone: team.timeZone }),
      initial: digestAt ?? '',
      maxLength: 5,
      optional: true,
    }),
  ]);
}

export function digestSetMessage({ team, digestAt }: DigestSetting): MessageView {
  return messageView(
    digestAt === undefined
      ? [section(mrkdwn('digest-off', { team: team.name })), context(mrkdwn('digest-off-next'))]
      : [section(mrkdwn('digest-set', { team: team.name, time: digestAt }))],
  );
}
