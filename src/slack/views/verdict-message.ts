/**
 * The verdict, posted in the channel when a sprint closes and brought up to date in place: what happened,
 * why, and what to try next. It speaks to the team and names nobody.
 */
import type { KnownBlock } from '@slack/types';
import type { VerdictContent } from '../../app/message-content.ts';
import type { CoachingNote } from '../../sprint/coaching.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS, COMMAND } from '../ids.ts';
import {
  actions,
  bold,
  button,
  code,
  confirmation,
  context,
  divider,
  fieldSections,
  lead,
  section,
} from './block-builders.ts';
import { type ChartImage, chartBlocks } from './chart-image.ts';
import { type MessageView, messageView } from './message-view.ts';
import { loadSentence, ratioFields } from './ratio-fields.ts';
import { instantWords, spanWords } from './sprint-words.ts';
import { mrkdwnOf, plainTyped } from './typed-text.ts';
import { verdictCardLists } from './verdict-card-lists.ts';
import { failedTestSentence, reopenedSentence, verdictSentence } from './verdict-words.ts';

const BLOCKS_MAX = 50;

export function verdictMessage(verdict: VerdictContent, chart?: ChartImage): MessageView {
  const { summary, sprint } = verdict;
  const before: KnownBlock[] = [
    lead(`${plainTyped(sprint.name)}: ${verdictSentence(summary)}`),
    ...sectionOf([reopenedSentence(verdict), ...summary.verdict.failedTests.map(failedTestSentence)]),
    ...chartBlocks(chart),
    ...fieldSections(ratioFields(summary)),
    section(loadSentence(summary)),
    ...noteBlocks(summary),
  ];
  const after = [context(`${spanWords(sprint)}. ${nextWords(verdict)}`), ...reopenBlocks(verdict)];
  const lists = verdictCardLists(verdict, BLOCKS_MAX - before.length - after.length);
  return messageView([...before, ...lists, ...after]);
}

/** One section of the lines that are not empty; none when all are. */
function sectionOf(lines: readonly string[]): KnownBlock[] {
  const said = lines.filter((line) => line !== '').map(mrkdwnOf);
  return said.length === 0 ? [] : [section(said.join('\n'))];
}

/** What the failed tests above have said already is not said again. */
const HEADINGS_AFTER_FAILED_TEST: Partial<Record<CoachingNote['id'], string>> = {
  'kept-share-low': 'On the kept share',
  'surprise-ratio-high': 'On the surprise work',
};

function noteBlocks({ notes, verdict }: SprintSummary): KnownBlock[] {
  if (notes.length === 0) return [];
  const words = notes.map(({ id, crossed, mayMean, tryNext }) => {
    const short = verdict.failedTests.length > 0 ? HEADINGS_AFTER_FAILED_TEST[id] : undefined;
    return `${bold(mrkdwnOf(short ?? crossed))}\n${mrkdwnOf(mayMean)}\nTry next: ${mrkdwnOf(tryNext)}`;
  });
  return [divider(), ...words.map(section), divider()];
}

function nextWords({ reopened, reopenUntil, team }: VerdictContent): string {
  const plan = `Next: plan the coming sprint with ${code(`${COMMAND} plan`)}.`;
  if (reopened === 'open')
    return `Next: correct what is wrong, then close it with ${code(`${COMMAND} close`)}.`;
  if (!reopenUntil) return plan;
  return `${plan} If a number is wrong, a facilitator can reopen the sprint until ${instantWords(reopenUntil, team.timeZone)}.`;
}

function reopenBlocks({ reopenUntil, reopened, sprint }: VerdictContent): KnownBlock[] {
  if (!reopenUntil || reopened === 'open') return [];
  return [
    actions([
      button('Reopen for corrections', {
        actionId: ACTIONS.reopenSprint,
        value: encodeValue({ sprintId: sprint.id }),
        confirm: confirmation({
          title: 'Reopen the sprint?',
          text: 'Answers can then be corrected. It closes again by itself, and this post is brought up to date.',
          yes: 'Reopen',
          no: 'Leave it closed',
        }),
      }),
    ]),
  ];
}
