/** Confirms an import, and says what an export holds. */
import type { TeamExport } from '../../app/export/export-sprints.ts';
import type { SprintsImported } from '../../app/import/import-sprints.ts';
import { mrkdwn } from '../../words/say.ts';
import { typed } from '../../words/typed-text.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { actions, button, context, section } from './block-builders.ts';
import { datedDay } from './closed-sprint-words.ts';
import { type MessageView, messageView } from './message-view.ts';
import { counted, listed } from './sprint-words.ts';

export function sprintsImportedMessage(imported: SprintsImported): MessageView {
  const { team, sprints, cards, answers, leftOut, knownSprints } = imported;
  const [first, last] = [sprints[0], sprints.at(-1)];
  const span = first && last ? `, from ${datedDay(first.startsOn)} to ${datedDay(last.endsOn)}` : '';
  const withCards =
    cards > 0 ? ` With them came ${counted(cards, 'card')} and ${counted(answers, 'answer')}.` : '';
  const others =
    leftOut.length > 0
      ? ` ${counted(leftOut.length, 'sprint')} of the file ${leftOut.length === 1 ? 'was' : 'were'} left out, as shown.`
      : '';
  const value = encodeValue({ channelId: team.channelId });
  return messageView([
    section(
      `Imported ${counted(sprints.length, 'sprint')} of ${typed(team.name)}${span}.${withCards}${others} The team now has ${counted(knownSprints, 'closed sprint')} to go by. Nothing was posted in its channel.`,
    ),
    actions([
      button('Commitment range', { actionId: ACTIONS.showRange, value }),
      button('Surprise odds', { actionId: ACTIONS.showOdds, value }),
      button('History', { actionId: ACTIONS.showHistory, value }),
    ]),
  ]);
}

const TEXT_CAUTION =
  'They don’t say who owns a card or who answered. Titles, goals, notes and reasons stand as they were typed: look through them before you pass the files on.';

/** What comes with the files, in the person's direct messages. Mrkdwn. */
export function exportComment(exported: TeamExport): string {
  return `${summary(exported)} ${TEXT_CAUTION} ${mrkdwn('caution-people')}`;
}

/** Tells the person where they are. */
export function exportedMessage(exported: TeamExport): MessageView {
  return messageView([
    section(`${summary(exported)} The files are in your direct messages with me.`),
    context(`${TEXT_CAUTION} ${mrkdwn('caution-people')}`),
  ]);
}

function summary({ team, files, lines, running, cancelled }: TeamExport): string {
  const held = listed([
    counted(lines.sprints, 'sprint'),
    counted(lines.cards, 'card'),
    counted(lines.answers, 'answer'),
    counted(lines.changes, 'change'),
  ]);
  const marked = [
    ...(running > 0 ? [`${running} still running`] : []),
    ...(cancelled > 0 ? [`${cancelled} cancelled`] : []),
  ];
  const among = marked.length > 0 ? ` (${marked.join(', ')}: marked so, and left out by an import)` : '';
  return `Exported ${typed(team.name)}: ${held}${among}, in ${counted(files.length, 'CSV file')}.`;
}
