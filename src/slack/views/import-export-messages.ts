/** Confirms an import, and says what an export holds. */
import type { TeamExport } from '../../app/export/export-sprints.ts';
import type { SprintsImported } from '../../app/import/import-sprints.ts';
import { exportDone, importDone } from '../../words/import.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { actions, button, context, section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';

export function sprintsImportedMessage(imported: SprintsImported): MessageView {
  const value = encodeValue({ channelId: imported.team.channelId });
  return messageView([
    section(importDone(imported)),
    actions([
      button(say('advice-range-button'), { actionId: ACTIONS.showRange, value }),
      button(say('advice-odds-button'), { actionId: ACTIONS.showOdds, value }),
      button(say('advice-history-button'), { actionId: ACTIONS.showHistory, value }),
    ]),
  ]);
}

/** What comes with the files, in the person's direct messages. Mrkdwn. */
export function exportComment(exported: TeamExport): string {
  return `${exportDone(exported)} ${caution()}`;
}

/** Says to the person where they are. */
export function exportedMessage(exported: TeamExport): MessageView {
  return messageView([section(`${exportDone(exported)} ${mrkdwn('export-where')}`), context(caution())]);
}

function caution(): string {
  return `${mrkdwn('export-caution')} ${mrkdwn('caution-people')}`;
}
