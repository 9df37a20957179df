/** Binds every kind of request to its listener. */
import type { App } from '@slack/bolt';
import { listenToButtons } from './buttons.ts';
import { listenToChannels } from './channel-events.ts';
import { listenToCommand } from './commands.ts';
import { listenToDirectMessages } from './direct-messages.ts';
import { listenToHomePage } from './home-page.ts';
import { listenToMentions } from './mentions.ts';
import { listenToShortcuts } from './shortcuts.ts';
import { listenToForms } from './submissions.ts';

export function registerListeners(app: App): void {
  listenToCommand(app);
  listenToButtons(app);
  listenToShortcuts(app);
  listenToForms(app);
  listenToDirectMessages(app);
  listenToMentions(app);
  listenToHomePage(app);
  listenToChannels(app);
}
