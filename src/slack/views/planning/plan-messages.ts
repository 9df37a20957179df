/** What the channel and the planner read once the team has committed to a plan. */
import type { PlanContent } from '../../../app/planning/plan-content.ts';
import type { CommittedPlan } from '../../../app/planning/plan-sprint.ts';
import { moreCardsFrom, plannedCardLine } from '../../../words/cards.ts';
import { person } from '../../../words/people.ts';
import { mrkdwn, say } from '../../../words/say.ts';
import { closingTime, sprintSpan } from '../../../words/sprint.ts';
import { lead, section } from '../block-builders.ts';
import { lineList } from '../line-sections.ts';
import { type MessagePart, type MessageView, messageView } from '../message-view.ts';

export function planMessage({ sprint, team, cards, commitmentPoints, byUserId }: PlanContent): MessageView {
  const goal = sprint.goal.trim() === '' ? [] : [section(mrkdwn('plan-goal-line', { goal: sprint.goal }))];
  const when = section(
    mrkdwn('plan-post-when', {
      span: sprintSpan(sprint),
      closing: closingTime({ sprint, team }),
      timeZone: team.timeZone,
      person: person(byUserId),
    }),
  );
  if (cards.length === 0) {
    return messageView([
      lead(say('plan-post-title-none', { sprint: sprint.name })),
      ...goal,
      when,
      section(mrkdwn('plan-post-none')),
    ]);
  }
  const about = { sprint: sprint.name, points: commitmentPoints, cards: cards.length };
  return messageView([
    lead(say('plan-post-title', about)),
    ...goal,
    when,
    lineList('', cards.map(plannedCardLine), (count, index) => moreCardsFrom(count, cards[index]?.number)),
    section(mrkdwn('plan-post-next')),
  ]);
}

export function planCommittedReply({
  team,
  sprint,
  commitmentPoints,
  cards,
  leftOut,
}: CommittedPlan): MessageView {
  const closing = closingTime({ sprint, team });
  const about = { sprint: sprint.name, points: commitmentPoints, cards: cards.length, closing };
  return messageView([
    section(mrkdwn('plan-committed', about)),
    ...leftOutLines(leftOut),
    section(mrkdwn('plan-committed-next')),
  ]);
}

/** What was typed isn't lost. */
function leftOutLines(leftOut: CommittedPlan['leftOut']): MessagePart[] {
  if (leftOut.length === 0) return [];
  const lines = leftOut.map((card) =>
    mrkdwn('plan-left-out-card', { title: card.title, points: card.estimatePoints }),
  );
  return [lineList(mrkdwn('plan-left-out'), lines, (cards) => mrkdwn('plan-cards-left-out-more', { cards }))];
}
