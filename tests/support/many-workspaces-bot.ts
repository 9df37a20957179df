/**
 * The bot as it serves many workspaces: real listeners, use cases, database and delivery, over HTTP; the platform is
 * made of stand-ins. North and South are two workspaces in which everything has the same ids.
 */
import { setTimeout as wait } from 'node:timers/promises';
import { runDueWork } from '../../src/app/clock/ask-members.ts';
import { commitPlan, previewPlan } from '../../src/app/planning/plan-sprint.ts';
import type { AppDependencies } from '../../src/app/ports/app-dependencies.ts';
import type { Store } from '../../src/app/ports/store.ts';
import { deliverPost } from '../../src/app/posting/deliver.ts';
import { type NoteSecurity, notingStore, notingUseCases } from '../../src/app/security-events.ts';
import { bindUseCases } from '../../src/app/use-cases.ts';
import { writtenOnce } from '../../src/app/written-once.ts';
import { calendars } from '../../src/calendars/calendars.ts';
import { charts } from '../../src/charts/charts.ts';
import type { Distribution } from '../../src/config.ts';
import { noteSecurity } from '../../src/logger.ts';
import { fileReading } from '../../src/reading/file-reading.ts';
import { requestSignature } from '../../src/rehearsal/stand-in/bot-link.ts';
import { createMessenger } from '../../src/slack/sending/messenger.ts';
import { createSlackApp } from '../../src/slack/slack-app.ts';
import { connectMany } from '../../src/slack/workspaces/connect.ts';
import { createDirectory } from '../../src/slack/workspaces/directory.ts';
import type { Workspaces } from '../../src/slack/workspaces/workspaces.ts';
import type { Database } from '../../src/store/database.ts';
import { type DeliveryQueue, openQueue } from '../../src/store/queue/delivery-queue.ts';
import { logCatcher } from '../slack/support/log-catcher.ts';
import { SharedPlatform, type WorkspaceOptions } from './shared-platform.ts';

export const NORTH = 'T0NORTH';
export const SOUTH = 'T0SOUTH';
export const SIGNING_SECRET = 'signing-secret-of-the-test-0001';
const PUBLIC_URL = 'https://loadline.example.org';
export const DISTRIBUTION: Distribution = {
  clientId: '1234.5678',
  clientSecret: 'client-secret-of-the-test',
  tokenKeys: [{ name: 'spring', key: new Uint8Array(32).fill(1) }],
  publicUrl: PUBLIC_URL,
  allowedWorkspaces: '*',
};

/** The same people and channels, by their ids, in every workspace. */
function workspaceOf(teamId: string, now: () => Date): WorkspaceOptions {
  const [teamName, timeZone] = teamId === NORTH ? ['North', 'Etc/UTC'] : ['South', 'Asia/Tokyo'];
  const users = ['ana', 'ben', 'chi'].map((name) => ({ id: `U0${name.toUpperCase()}`, name, timeZone }));
  return {
    teamId,
    teamName,
    signingSecret: SIGNING_SECRET,
    users,
    channels: [{ id: 'C0TEAM', name: 'team', memberIds: users.map(({ id }) => id) }],
    now,
    rateLimits: 'off',
  };
}

export class ManyWorkspacesBot {
  readonly platform: SharedPlatform;
  readonly database: Database;
  readonly deps: AppDependencies;
  readonly workspaces: Workspaces;
  readonly log: ReturnType<typeof logCatcher>;
  readonly #queue: DeliveryQueue;
  readonly #app: ReturnType<typeof createSlackApp>;
  readonly #clock: { now: Date };
  url = '';

  private constructor(
    parts: Pick<ManyWorkspacesBot, 'platform' | 'database' | 'deps' | 'workspaces' | 'log'> & {
      queue: DeliveryQueue;
      app: ReturnType<typeof createSlackApp>;
      clock: { now: Date };
    },
  ) {
    this.platform = parts.platform;
    this.database = parts.database;
    this.deps = parts.deps;
    this.workspaces = parts.workspaces;
    this.log = parts.log;
    this.#queue = parts.queue;
    this.#app = parts.app;
    this.#clock = parts.clock;
  }

  static async start(
    database: Database,
    now: string,
    distribution: Distribution = DISTRIBUTION,
    more: Partial<WorkspaceOptions> = {},
  ): Promise<ManyWorkspacesBot> {
    const time = { now: new Date(now) };
    const clock = { now: () => time.now };
    const { clientId, clientSecret, publicUrl } = distribution;
    const platform = new SharedPlatform({ clientId, clientSecret, redirectUri: `${publicUrl}/slack/oauth` });
    await platform.start([NORTH, SOUTH].map((teamId) => ({ ...workspaceOf(teamId, clock.now), ...more })));
    const apiUrl = `${platform.url}/api/`;
    const log = logCatcher();
    const note: NoteSecurity = (event) => noteSecurity(log.logger, event);
    const [store, bulkStore] = [database.store, database.bulkStore].map((one) => notingStore(one, note)) as [
      Store,
      Store,
    ];
    const connection = await connectMany(distribution, { apiUrl }, { store, bulkStore, clock }, log.logger);
    const { workspaces, bulkWorkspaces } = connection;
    const deps: AppDependencies = {
      store: writtenOnce(store, clock),
      clock,
      directory: createDirectory({ workspaces, nowMs: () => time.now.getTime() }),
      calendars,
      files: fileReading,
      charts,
      messenger: createMessenger({
        workspaces: bulkWorkspaces,
        logger: log.logger,
        wait,
        nowMs: () => time.now.getTime(),
      }),
    };
    const app = createSlackApp({
      config: { transport: { mode: 'http', signingSecret: SIGNING_SECRET }, port: 0, apiUrl },
      workspaces,
      distribution: connection.distribution,
      deps,
      useCases: notingUseCases(bindUseCases(deps), note),
      logger: log.logger,
    });
    const queue = await openQueue(database);
    const bot = new ManyWorkspacesBot({ platform, database, deps, workspaces, log, queue, app, clock: time });
    bot.url = `http://127.0.0.1:${(await app.start()).port}`;
    for (const standIn of platform.standIns.values()) standIn.connectBot(`${bot.url}/slack/events`);
    return bot;
  }

  async stop(): Promise<void> {
    await this.#app.stop();
    await this.#queue.stop({ graceful: true });
    await this.platform.stop();
  }

  set(now: string): void {
    this.#clock.now = new Date(now);
  }

  /** Sets the clock, does what is due, and delivers. */
  async pass(to: string): Promise<void> {
    this.set(to);
    await runDueWork(this.deps);
    await this.settle();
  }

  /** Waits for requests in hand, and delivers what they caused. @returns how many deliveries were tried */
  async settle(): Promise<number> {
    await this.#app.idle();
    return this.#queue.drain((postId) => deliverPost(this.deps, postId));
  }

  /** Opens the page on which an installation begins, as a browser. */
  async beginInstall(): Promise<{ authorizeUrl: string; cookie: string; response: Response; html: string }> {
    const response = await fetch(`${this.url}/slack/install`);
    const html = await response.text();
    const authorizeUrl = /href="([^"]*)"/.exec(html)?.[1]?.replaceAll('&amp;', '&') ?? '';
    const cookie = response.headers.get('set-cookie')?.split(';')[0] ?? '';
    return { authorizeUrl, cookie, response, html };
  }

  /** Comes back from the platform. @param address on the public address, which leads to this bot */
  async comeBack(address: string, cookie: string): Promise<{ status: number; html: string }> {
    const url = address.replace(PUBLIC_URL, this.url);
    const response = await fetch(url, { headers: cookie === '' ? {} : { cookie }, redirect: 'manual' });
    return { status: response.status, html: await response.text() };
  }

  async install(teamId: string, byUserId = 'U0ANA'): Promise<void> {
    const { authorizeUrl, cookie } = await this.beginInstall();
    const { status, html } = await this.comeBack(this.platform.agree(authorizeUrl, teamId, byUserId), cookie);
    if (status !== 200) throw new Error(`not installed: ${status} ${html}`);
  }

  /** A signed request with this body, as the platform sends it. */
  async send(body: object): Promise<{ status: number; text: string }> {
    const text = JSON.stringify(body);
    const seconds = Math.floor(Date.now() / 1_000);
    const response = await fetch(`${this.url}/slack/events`, {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        'x-slack-request-timestamp': String(seconds),
        'x-slack-signature': requestSignature(SIGNING_SECRET, seconds, text),
      },
      body: text,
    });
    const answer = { status: response.status, text: await response.text() };
    await this.#app.idle();
    return answer;
  }

  /** The workspace removes the app, and the platform says so. */
  remove(teamId: string, event?: object) {
    this.platform.revokeTokens(teamId);
    return this.removed(teamId, event);
  }

  /** The event that follows the removal of the app. */
  removed(teamId: string, event: object = { type: 'app_uninstalled' }) {
    return this.send({
      type: 'event_callback',
      team_id: teamId,
      event_id: `Ev${crypto.randomUUID()}`,
      event_time: Math.floor(this.deps.clock.now().getTime() / 1_000),
      event,
    });
  }

  /** Sets Ana's team up in the workspace, by the form. @returns the team */
  async setUpTeam(teamId: string) {
    const standIn = this.platform.standIn(teamId);
    await standIn.command('U0ANA', 'C0TEAM', '/loadline setup');
    await this.settle();
    const view = standIn.viewOf('U0ANA');
    if (!view) throw new Error('no form was opened');
    const isShared = (view.blocks as { block_id?: string }[]).some(
      (block) => block.block_id === 'acceptsShared',
    );
    if (isShared) standIn.fill('U0ANA', view.id as string, { acceptsShared: ['yes'] });
    await standIn.submit('U0ANA', view.id as string);
    await this.settle();
    const team = await this.deps.store.read((read) => read.teamByChannel(teamId, 'C0TEAM'));
    if (!team) throw new Error('no team was set up');
    return team;
  }

  /** Ana plans a sprint from Monday 2 November 2026 on and commits to it. */
  async plan(workspaceId: string, teamId: string, cards: string) {
    const ana = { workspaceId, userId: 'U0ANA' };
    await previewPlan(this.deps, ana, {
      teamId,
      name: 'Harbour 12',
      goal: '',
      startsOn: '2026-11-02',
      endsOn: '2026-11-13',
      closesAt: '17:00',
      awayDays: '',
      cards,
    });
    return (await commitPlan(this.deps, ana, { teamId })).sprint;
  }

  /** The messages in a conversation of the workspace, oldest first. */
  textsIn(teamId: string, channelId: string, userId = 'U0ANA'): string[] {
    return this.platform
      .standIn(teamId)
      .messagesOf(userId, channelId)
      .map(({ text }) => text);
  }
}
