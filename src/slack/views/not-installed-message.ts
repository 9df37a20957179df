/** What people read in a workspace that the bot does not serve. */
import { mrkdwn } from '../../words/say.ts';
import type { MessageView } from './message-view.ts';
import { refusalMessage } from './refusal-message.ts';

/** @param installUrl the page on which the bot can be installed */
export function notInstalledMessage(installUrl: string): MessageView {
  return refusalMessage({
    what: mrkdwn('refusal-not-installed'),
    fix: mrkdwn('refusal-not-installed-fix', { url: installUrl }),
  });
}
