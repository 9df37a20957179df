/**
 * The verdict, posted in the channel when a sprint closes and brought up to date in place: what happened, why, and one
 * thing to try. It speaks to the team and names nobody. What it leaves out is in its thread (`verdict-thread.ts`).
 */
import type { KnownBlock } from '@slack/types';
import type { VerdictContent } from '../../app/closing/verdict-content.ts';
import { evidenceSentence } from '../../words/evidence.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { momentOf, sprintSpan } from '../../words/sprint.ts';
import { mrkdwnOf } from '../../words/typed-text.ts';
import { fourNumbers, goalSentence, reopenedSentence, verdictSentence } from '../../words/verdict.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import {
  actions,
  bold,
  button,
  type ChartImage,
  chartBlocks,
  confirmation,
  context,
  lead,
  section,
} from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';
import { noteLines } from './verdict-thread.ts';

export function verdictMessage(verdict: VerdictContent, chart?: ChartImage): MessageView {
  const { summary, sprint } = verdict;
  const reopened = reopenedSentence(verdict);
  const goal = goalSentence(verdict);
  return messageView([
    lead(say('verdict-title', { sprint: sprint.name, verdict: verdictSentence(summary) })),
    ...linesOf([reopened && mrkdwnOf(reopened), goal && mrkdwnOf(goal)]),
    ...chartBlocks(chart),
    section(fourNumbers(verdict).map(mrkdwnOf).join('\n')),
    ...linesOf(leadLines(verdict)),
    context(`${mrkdwnOf(sprintSpan(sprint))}. ${nextWords(verdict)}`),
    ...reopenBlocks(verdict),
  ]);
}

/** One section of the lines that there are; none when there are none. */
function linesOf(lines: readonly (string | undefined)[]): KnownBlock[] {
  const said = lines.filter((line) => line !== undefined);
  return said.length === 0 ? [] : [section(said.join('\n'))];
}

/** What went well, what the leading note says with the ledger's evidence, and one thing to try. */
function leadLines(verdict: VerdictContent): string[] {
  const { wentWell, cards } = verdict;
  const well = wentWell.map((sign) => evidenceSentence(sign, cards)).join(' ');
  const { said, tryNext } = leadWords(verdict);
  return [
    ...(well === '' ? [] : [well]),
    ...(said === undefined ? [] : [said]),
    bold(mrkdwn('verdict-try-title')),
    tryNext,
  ];
}

function leadWords(verdict: VerdictContent): { said: string | undefined; tryNext: string } {
  const { leadingNoteId, notes } = verdict;
  if (leadingNoteId === 'no-plan') {
    const said = `${mrkdwn('evidence-no-plan')} ${mrkdwn('evidence-no-plan-ask')}`;
    return { said, tryNext: mrkdwn('evidence-no-plan-try') };
  }
  const note = notes.find(({ id }) => id === leadingNoteId);
  if (!note) return { said: undefined, tryNext: mrkdwn('evidence-went-well-try') };
  const { crossed, evidence, tryNext } = noteLines(note, verdict);
  // What failed has been said with the numbers.
  return { said: evidence ?? crossed, tryNext };
}

function nextWords({ reopened, reopenUntil, team }: VerdictContent): string {
  const inThread = mrkdwn('verdict-in-thread');
  if (reopened === 'open') return `${inThread} ${mrkdwn('verdict-next-correct')}`;
  const plan = `${inThread} ${mrkdwn('verdict-next-plan')}`;
  if (!reopenUntil) return plan;
  return `${plan} ${mrkdwn('verdict-reopen-until', { moment: momentOf(reopenUntil, team.timeZone) })}`;
}

function reopenBlocks({ reopenUntil, reopened, sprint }: VerdictContent): KnownBlock[] {
  if (!reopenUntil || reopened === 'open') return [];
  return [
    actions([
      button(say('verdict-reopen'), {
        actionId: ACTIONS.reopenSprint,
        value: encodeValue({ sprintId: sprint.id }),
        confirm: confirmation({
          title: say('verdict-reopen-title'),
          text: say('verdict-reopen-text'),
          yes: say('verdict-reopen-yes'),
          no: say('verdict-reopen-no'),
        }),
      }),
    ]),
  ];
}
