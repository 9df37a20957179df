/**
 * What people see when they open the bot: the home page, and once a welcome in the direct messages. The page is made when
 * somebody opens it, and again after what they did; not after what others did, as the platform says of each visit, so that
 * only a page that stays open can be out of date.
 */
import type { App } from '@slack/bolt';
import type { HomeView } from '@slack/types';
import type { WebClient } from '@slack/web-api';
import type { Actor } from '../../app/team/team.ts';
import type { UseCases } from '../../app/use-cases.ts';
import type { Logger } from '../../logger.ts';
import { homeOpened } from '../door/incoming.ts';
import { homeView } from '../views/home-page.ts';
import { welcomeMessage } from '../views/welcome-message.ts';
import { failureMessage, failureOf } from './failure-words.ts';
import { contextOf, type ListenerContext } from './listener-context.ts';

export function listenToHomePage(app: App): void {
  app.event('app_home_opened', async ({ body, context: bolt }) => {
    const sent = homeOpened.safeParse(body);
    if (!sent.success) return;
    const context = contextOf(bolt);
    const { tab = 'home', user: userId } = sent.data.event;
    const actor = { workspaceId: context.workspaceId, userId };
    if (tab === 'home') await context.openHome(actor);
    if (tab === 'messages') await welcome(context, actor);
  });
}

/** The platform says of each visit to the direct messages; the first is welcomed. */
async function welcome({ client, useCases, logger }: ListenerContext, actor: Actor): Promise<void> {
  const begun = await useCases.beginWelcome(actor);
  if (!begun) return;
  try {
    await client.chat.postMessage({ channel: actor.userId, ...welcomeMessage(begun) });
  } catch (error) {
    logger.warn({ err: error }, 'Somebody was not welcomed; they are on their next visit.');
    await useCases.takeBackWelcome(actor);
  }
}

export class HomePages {
  readonly #useCases: UseCases;
  readonly #logger: Logger;
  /** The last work on each person's page that is under way. */
  readonly #last = new Map<string, Promise<unknown>>();

  constructor(useCases: UseCases, logger: Logger) {
    this.#useCases = useCases;
    this.#logger = logger;
  }

  /** Shows the page to somebody who has opened it. */
  async open(client: WebClient, actor: Actor): Promise<void> {
    await this.#inTurn(actor, async () => {
      const view = await this.#opened(actor);
      await client.views.publish({ user_id: actor.userId, view });
    });
  }

  /**
   * Brings the page up to date. Never throws: the page is made again when it is opened next.
   *
   * @param client that of the posts, which waits where the platform asks for it: somebody's form must not
   * @returns whether the person, having opened the page before, finds it up to date
   */
  async refresh(client: WebClient, actor: Actor, openChannelId?: string): Promise<boolean> {
    return this.#inTurn(actor, async () => {
      try {
        const page = await this.#useCases.refreshHomePage(actor);
        if (page) await client.views.publish({ user_id: actor.userId, view: homeView(page, openChannelId) });
        return page !== undefined;
      } catch (error) {
        this.#logger.info({ err: error }, 'A home page was not brought up to date.');
        return false;
      }
    });
  }

  async #opened(actor: Actor): Promise<HomeView> {
    try {
      return homeView(await this.#useCases.openHomePage(actor));
    } catch (error) {
      return { type: 'home', blocks: failureMessage(failureOf(error, this.#logger, 'home page')).blocks };
    }
  }

  /** One after the other for each person, so that what was true earlier doesn't come last. */
  async #inTurn<T>({ workspaceId, userId }: Actor, work: () => Promise<T>): Promise<T> {
    const key = `${workspaceId} ${userId}`;
    const before = this.#last.get(key) ?? Promise.resolve();
    const turn = before.then(work, work);
    this.#last.set(key, turn);
    try {
      return await turn;
    } finally {
      if (this.#last.get(key) === turn) this.#last.delete(key);
    }
  }
}
