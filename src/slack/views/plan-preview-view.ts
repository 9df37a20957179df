/** Shows what a plan means before the team commits to it. */
import type { ModalView } from '@slack/types';
import type { PlanPreview, RecentSprint } from '../../app/planning/plan-sprint.ts';
import { formatPoints, formatPointsWithUnit } from '../../sprint/points.ts';
import { plainTyped, typed } from '../../words/typed-text.ts';
import { encodeContext } from '../form-contexts.ts';
import { FORMS } from '../ids.ts';
import { bold, context, lead, section } from './block-builders.ts';
import { cardName, ownerWords } from './card-words.ts';
import { formView, withReplyTo } from './form-view.ts';
import { lineSections } from './line-sections.ts';
import { planAdviceBlocks } from './plan-advice-blocks.ts';
import { counted, spanWords } from './sprint-words.ts';

const CARD_SECTIONS_MAX = 60;

export function planPreviewView(preview: PlanPreview, replyTo?: string): ModalView {
  const { team, input, cards, commitmentPoints } = preview;
  const frame = {
    callbackId: FORMS.planPreview,
    title: 'Commit to this plan?',
    submit: 'Commit',
    leave: 'Back',
    context: encodeContext(withReplyTo({ teamId: team.id }, replyTo)),
  };
  const goal = input.goal.trim() === '' ? [] : [section(`Goal: ${typed(input.goal)}`)];
  const cardLines = cards.map(
    (card) =>
      `${card.number}. ${cardName(card)}: ${formatPointsWithUnit(card.estimatePoints)} (${ownerWords(card.ownerIds)})`,
  );
  return formView(frame, [
    lead(
      `${plainTyped(input.name)}: ${formatPointsWithUnit(commitmentPoints)} on ${counted(cards.length, 'card')}`,
    ),
    section(
      `${spanWords(input)}, ${counted(preview.workingDays, 'working day')}. It closes at ${input.closesAt} on its last day (${typed(team.timeZone)}).`,
    ),
    ...goal,
    ...lineSections(
      bold('Please check'),
      preview.warnings.map((warning) => `• ${typed(warning)}`),
      { maxSections: 5, more: (count) => `… and ${count} more.` },
    ),
    ...planAdviceBlocks(preview),
    section(recentWords(preview)),
    ...lineSections(bold('Cards'), cardLines, {
      maxSections: CARD_SECTIONS_MAX,
      more: (count) => `… and ${counted(count, 'more card', 'more cards')}, committed to as well.`,
    }),
    context('After this, estimates stay as they are. Cards that come in later count as pulled-in work.'),
  ]);
}

function recentWords({ recent }: PlanPreview): string {
  if (recent.length === 0) return 'No closed sprint to compare with yet.';
  return [bold('The team’s latest sprints'), ...recent.map(recentLine)].join('\n');
}

function recentLine({ sprintName, commitmentPoints, velocityPoints, verdict }: RecentSprint): string {
  const velocity =
    velocityPoints === undefined ? 'velocity not known' : `velocity ${formatPoints(velocityPoints)}`;
  return `• ${typed(sprintName)}: committed ${formatPoints(commitmentPoints)}, ${velocity}, ${verdict ?? 'imported'}`;
}
