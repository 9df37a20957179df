/**
 * The verdict, posted in the channel when a sprint closes and brought up to date in place: what happened, why, and one
 * thing to try. It speaks to the team and names nobody. What it leaves out is in its thread (`verdict-thread.ts`).
 */
import type { KnownBlock } from '@slack/types';
import type { DirectVerdicts } from '../../app/closing/direct-verdicts.ts';
import type { VerdictContent } from '../../app/closing/verdict-content.ts';
import { linkedCardName } from '../../words/cards.ts';
import { evidenceSentence } from '../../words/evidence.ts';
import { experimentResultWords } from '../../words/experiments.ts';
import { Markup, mrkdwn, say } from '../../words/say.ts';
import { momentOf, sprintSpan } from '../../words/sprint.ts';
import { mrkdwnOf } from '../../words/typed-text.ts';
import { fourNumbers, goalSentence, reopenedSentence, verdictSentence } from '../../words/verdict.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import {
  actions,
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
  return messageView([...verdictParts(verdict, chart), ...buttons(verdict)]);
}

/** To somebody who wants it in their direct messages too. */
export function directVerdictMessage(verdict: VerdictContent, chart?: ChartImage): MessageView {
  return messageView([...verdictParts(verdict, chart), context(mrkdwn('verdict-direct-how'))]);
}

/** Where somebody gets the verdicts, as they chose. */
export function directVerdictsReply({ team, isWanted }: DirectVerdicts): MessageView {
  const about = { team: team.name };
  return messageView(
    isWanted
      ? [section(mrkdwn('verdict-direct-on', about)), context(mrkdwn('verdict-direct-end'))]
      : [section(mrkdwn('verdict-direct-off', about)), context(mrkdwn('verdict-direct-begin'))],
  );
}

function verdictParts(verdict: VerdictContent, chart: ChartImage | undefined): KnownBlock[] {
  const { summary, sprint } = verdict;
  const first = [reopenedSentence(verdict), goalSentence(verdict)].filter((one) => one !== undefined);
  const numbers = fourNumbers(verdict);
  const notes = leadLines(verdict);
  // The sentence that leads and the one that ends the post are a line each.
  const lines = 2 + first.length + numbers.length + notes.length;
  return [
    lead(say('verdict-title', { sprint: sprint.name, verdict: verdictSentence(summary) })),
    ...(first.length === 0 ? [] : [section(first.map(mrkdwnOf).join('\n'))]),
    ...chartBlocks(chart),
    section(numbers.map(mrkdwnOf).join('\n')),
    section([...notes, ...experimentLines(verdict, LINES_MAX - lines)].join('\n')),
    context(`${spanWords(verdict)} ${nextWords(verdict)}`),
  ];
}

const LINES_MAX = 12;
const EXPERIMENTS_MAX = 3;
const OVERTAKEN_MAX = 3;

/** Of what is tried, a line each: those that began last, three at most, as far as there is room, and one at least. */
function experimentLines({ experiments }: VerdictContent, room: number): string[] {
  const shown = Math.max(1, Math.min(EXPERIMENTS_MAX, room));
  return experiments.slice(-shown).map((result) => mrkdwnOf(experimentResultWords(result)));
}

/** What went well, what the leading note says with the ledger's evidence, and one thing to try. */
function leadLines(verdict: VerdictContent): string[] {
  const { wentWell, cards } = verdict;
  const well = wentWell.map((sign) => evidenceSentence(sign, cards)).join(' ');
  const { said, tryNext } = leadWords(verdict);
  return [
    ...(well === '' ? [] : [well]),
    ...(said === undefined ? [] : [said]),
    mrkdwn('verdict-try', { try: new Markup(tryNext) }),
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

/** `Mon 2 Nov to Fri 13 Nov.` */
function spanWords({ sprint, closedEarlyOn: day, cancelled }: VerdictContent): string {
  const span = sprintSpan(sprint);
  return day === undefined || cancelled
    ? `${mrkdwnOf(span)}.`
    : mrkdwn('verdict-closed-early', { day, span });
}

function nextWords(verdict: VerdictContent): string {
  const { reopened, reopenUntil, team } = verdict;
  const inThread = mrkdwn('verdict-in-thread');
  if (reopened === 'open') return `${inThread} ${mrkdwn('verdict-next-correct')}`;
  const plan = `${inThread} ${nextSprintWords(verdict)}`;
  if (!reopenUntil) return plan;
  return `${plan} ${mrkdwn('verdict-reopen-until', { moment: momentOf(reopenUntil, team.timeZone) })}`;
}

/** That it is to be planned, or when it begins. */
export function nextSprintWords({ nextSprint }: VerdictContent): string {
  if (!nextSprint) return mrkdwn('verdict-next-plan');
  const { name: sprint, startsOn, overtaken } = nextSprint;
  const next = mrkdwn('verdict-next-planned', { sprint, startsOn });
  const [first] = overtaken;
  if (!first) return next;
  const cards = overtaken.slice(0, OVERTAKEN_MAX).map((card) => linkedCardName(card));
  const more = overtaken.length - cards.length;
  return `${next} ${mrkdwn('verdict-next-overtaken', { cards, more, number: String(first.number) })}`;
}

/** Nothing is tried on numbers that may yet change. */
function buttons({ reopenUntil, reopened, sprint }: VerdictContent): KnownBlock[] {
  if (reopened === 'open') return [];
  const value = encodeValue({ sprintId: sprint.id });
  const reopen = {
    actionId: ACTIONS.reopenSprint,
    value,
    confirm: confirmation({
      title: say('verdict-reopen-title'),
      text: say('verdict-reopen-text'),
      yes: say('verdict-reopen-yes'),
      no: say('verdict-reopen-no'),
    }),
  };
  return [
    actions([
      button(say('try-this'), { actionId: ACTIONS.tryThis, value }),
      button(say('verdict-retro'), { actionId: ACTIONS.retroOfSprint, value }),
      ...(reopenUntil ? [button(say('verdict-reopen'), reopen)] : []),
    ]),
  ];
}
