/**
 * What a plan means, before the team commits to it. Cards can be left out here; what is said of the plan is then brought up to
 * date at once.
 */
import type { InputBlock, ModalView, SectionBlock } from '@slack/types';
import type { CardLine } from '../../../app/cards/card-line.ts';
import type { PlanPreview } from '../../../app/planning/plan-sprint.ts';
import { cardName, plannedCardLine } from '../../../words/cards.ts';
import { planTimeLines } from '../../../words/days-off.ts';
import { people, person } from '../../../words/people.ts';
import { planOddsWords, planRangeWords, planSetWords } from '../../../words/plan-advice.ts';
import { planWarning, recentSprint } from '../../../words/planning.ts';
import { mrkdwn, say } from '../../../words/say.ts';
import { sprintSpan } from '../../../words/sprint.ts';
import { shortened } from '../../../words/typed-text.ts';
import { planTicksField } from '../../ids.ts';
import { bold, context, lead, section } from '../block-builders.ts';
import { OPTION_MAX_LENGTH, tickField } from '../form-inputs.ts';
import { formView } from '../form-view.ts';
import { lineList, lineSections } from '../line-sections.ts';
import { tryingSections } from './plan-forms.ts';

const CARD_SECTIONS_MAX = 60;
/** docs.slack.dev/reference/block-kit/block-elements/checkboxes-element */
const TICKS_OF_A_FIELD = 10;

export function planPreviewView(preview: PlanPreview, replyTo?: string): ModalView {
  const { team, input, cards, commitmentPoints, warnings, fingerprint } = preview;
  const frame = {
    form: 'plan-preview',
    title: say('plan-preview-title'),
    submit: say('plan-preview-submit'),
    leave: say('plan-preview-back'),
    context: { teamId: team.id, seen: fingerprint },
    replyTo,
  };
  const about = { sprint: input.name, points: commitmentPoints, cards: cards.length };
  const days = {
    span: sprintSpan(input),
    days: preview.workingDays,
    time: input.closesAt,
    timeZone: team.timeZone,
  };
  return formView(frame, [
    lead(say('plan-preview-lead', about)),
    section(mrkdwn('plan-preview-days', days)),
    ...timeSections(preview),
    ...(preview.guestIds.length > 0
      ? [section(mrkdwn('plan-guests-line', { guests: people(preview.guestIds) }))]
      : []),
    ...(input.goal.trim() === '' ? [] : [section(mrkdwn('plan-goal-line', { goal: input.goal }))]),
    ...tryingSections(preview.experiments),
    ...lineSections(
      lineList(bold(mrkdwn('plan-check-title')), warnings.map(planWarning), (count) =>
        mrkdwn('plan-check-more', { warnings: count }),
      ),
      { maxSections: 5 },
    ),
    rangeSection(preview),
    ...setSections(preview),
    ...tickFields(preview),
    ...oddsSections(preview),
    section(recentSprints(preview)),
    ...ownersSections(preview),
    ...unticked(preview),
    context(mrkdwn('plan-preview-after')),
  ]);
}

/** A form is seen by the person who opened it: who is off when is not for the channel. */
function timeSections({ time }: PlanPreview): SectionBlock[] {
  const { lead: first, lines } = planTimeLines(time);
  if (lines.length === 0) return [section(first)];
  return lineSections(
    lineList(first, lines, (count) => mrkdwn('plan-time-more', { count })),
    { maxSections: 3 },
  );
}

/** The range, and where this commitment lies. */
function rangeSection({ range, commitment, commitmentPoints }: PlanPreview): SectionBlock {
  return section(
    `${bold(mrkdwn('plan-range-title'))}\n${planRangeWords(range, commitment, commitmentPoints)}`,
  );
}

function setSections({ set, leftOut, commitment }: PlanPreview): SectionBlock[] {
  const points = leftOut.reduce((sum, { estimatePoints }) => sum + estimatePoints, 0);
  const lines = [
    ...(set ? [planSetWords(set, commitment.kept)] : []),
    ...(leftOut.length > 0 ? [mrkdwn('plan-left-out-now', { cards: leftOut.length, points })] : []),
  ];
  return lines.length === 0 ? [] : [section([bold(mrkdwn('plan-set-title')), ...lines].join('\n'))];
}

/** A group of ticks holds ten at the most. */
function tickFields({ tickable, leftOut, cards }: PlanPreview): InputBlock[] {
  const others = cards.length + leftOut.length - tickable.length;
  const groups = Array.from({ length: Math.ceil(tickable.length / TICKS_OF_A_FIELD) }, (_, i) =>
    tickable.slice(i * TICKS_OF_A_FIELD, (i + 1) * TICKS_OF_A_FIELD),
  );
  return groups.map((group, i) => {
    const isLast = i === groups.length - 1;
    const hint = others > 0 ? say('plan-ticks-hint-largest', { others }) : say('plan-ticks-hint');
    const [first, last] = [group[0] as CardLine, group.at(-1) as CardLine];
    return tickField({
      field: planTicksField(i + 1),
      label:
        groups.length === 1
          ? say('plan-ticks')
          : say('plan-ticks-more', { from: first.number, to: last.number }),
      ...(isLast ? { hint } : {}),
      optional: true,
      isLive: true,
      choices: group.map((card) => ({ value: String(card.number), label: tickLabel(card) })),
      initial: group.filter((card) => !leftOut.includes(card)).map(({ number }) => String(number)),
    });
  });
}

/** The title gives way to the points, which the choice is about. */
function tickLabel(card: CardLine): string {
  const label = (title: string): string =>
    say('plan-tick', { number: String(card.number), card: title, points: card.estimatePoints });
  return label(shortened(cardName(card), OPTION_MAX_LENGTH - label('').length));
}

/** The ticks say which cards there are, but not whose: a line for each owner, with the numbers of their cards. */
function ownersSections({ cards, tickable }: PlanPreview): SectionBlock[] {
  const ticked = cards.filter(({ number }) => isTickable(number, tickable));
  const owned = ticked.flatMap(({ number, ownerIds }) => ownerIds.map((userId) => ({ userId, number })));
  const lines = [...Map.groupBy(owned, ({ userId }) => userId)].map(([userId, theirs]) =>
    mrkdwn('plan-owner-line', { owner: person(userId), numbers: theirs.map(({ number }) => String(number)) }),
  );
  return lineSections(
    lineList(bold(mrkdwn('plan-owners-title')), lines, (count) =>
      mrkdwn('plan-owners-more', { owners: count }),
    ),
    { maxSections: 3 },
  );
}

/** Cards beyond those that can be ticked. */
function unticked({ cards, tickable }: PlanPreview): SectionBlock[] {
  const others = cards.filter(({ number }) => !isTickable(number, tickable));
  return lineSections(
    lineList(bold(mrkdwn('plan-cards-title')), others.map(plannedCardLine), (count) =>
      mrkdwn('plan-cards-more', { cards: count }),
    ),
    { maxSections: CARD_SECTIONS_MAX },
  );
}

function isTickable(number: number, tickable: readonly CardLine[]): boolean {
  return tickable.some((card) => card.number === number);
}

/** The odds of the big cards. */
function oddsSections({ commitmentPoints, bigCards }: PlanPreview): SectionBlock[] {
  const odds = commitmentPoints > 0 ? planOddsWords(bigCards) : [];
  return odds.length > 0 ? [section([bold(mrkdwn('plan-odds-title')), ...odds].join('\n'))] : [];
}

function recentSprints({ recent, workingDays }: PlanPreview): string {
  if (recent.length === 0) return mrkdwn('plan-recent-none');
  return [
    bold(mrkdwn('plan-recent-title')),
    ...recent.map((sprint) => recentSprint(sprint, workingDays)),
  ].join('\n');
}
