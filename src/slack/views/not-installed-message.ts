/** What people are told in a workspace that the bot does not serve. */
import type { MessageView } from './message-view.ts';
import { refusalMessage } from './refusal-message.ts';

/** @param installUrl the page on which the bot can be installed */
export function notInstalledMessage(installUrl: string): MessageView {
  return refusalMessage({
    what: 'Loadline is not installed in this workspace, or was removed from it; nothing was recorded.',
    mend: `Somebody who may install apps here can add it: ${installUrl}`,
  });
}
