/** Binds every kind of request to its listener. */
import type { App } from '@slack/bolt';
import { homeOpened } from '../door/incoming.ts';
import { homeView } from '../views/overview.ts';
import { listenToButtons } from './buttons.ts';
import { listenToChannels } from './channel-events.ts';
import { listenToCommand } from './commands.ts';
import { listenToDirectMessages } from './direct-messages.ts';
import { failureMessage, failureOf } from './failure-words.ts';
import { contextOf } from './listener-context.ts';
import { listenToMentions } from './mentions.ts';
import { listenToForms } from './submissions.ts';

export function registerListeners(app: App): void {
  listenToCommand(app);
  listenToButtons(app);
  listenToForms(app);
  listenToDirectMessages(app);
  listenToMentions(app);
  listenToHomePage(app);
  listenToChannels(app);
}

/** The bot's home page: built each time somebody opens it. */
function listenToHomePage(app: App): void {
  app.event('app_home_opened', async ({ body, context: bolt }) => {
    const sent = homeOpened.safeParse(body);
    if (!sent.success || (sent.data.event.tab ?? 'home') !== 'home') return;
    const { workspaceId, useCases, client, logger } = contextOf(bolt);
    const actor = { workspaceId, userId: sent.data.event.user };
    try {
      const view = homeView(await useCases.overview(actor, undefined));
      await client.views.publish({ user_id: actor.userId, view });
    } catch (error) {
      const { blocks } = failureMessage(failureOf(error, logger, 'home page'));
      await client.views.publish({ user_id: actor.userId, view: { type: 'home', blocks } });
    }
  });
}
