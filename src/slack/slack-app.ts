/**
 * Puts the chat side together: a door for requests (socket or HTTP), the listeners behind it, and a stop
 * that lets the work in hand finish. Must hold no rules about sprints and no words.
 */
import { setTimeout as wait } from 'node:timers/promises';
import { App, type Receiver } from '@slack/bolt';
import type { AppDependencies } from '../app/ports/app-dependencies.ts';
import type { Actor } from '../app/team/team.ts';
import { watchChannel } from '../app/team/watch-channel.ts';
import type { UseCases } from '../app/use-cases.ts';
import { giveUp } from '../app/written-once.ts';
import type { Config } from '../config.ts';
import type { Logger } from '../logger.ts';
import { boltLogger } from './bolt-logger.ts';
import { fairShare } from './door/fair-share.ts';
import { HealthDoor } from './door/health-door.ts';
import { HttpDoor } from './door/http-door.ts';
import { type Readiness, sharedReadiness } from './door/readiness.ts';
import { type RequestMeter, scopedRequests } from './door/request-scope.ts';
import { SocketDoor } from './door/socket-door.ts';
import { downloadFile } from './files/download-file.ts';
import { ReadingTurns } from './files/reading-turns.ts';
import { listenToButtons } from './listeners/buttons.ts';
import { listenToChannels } from './listeners/channel-events.ts';
import { listenToCommand } from './listeners/commands.ts';
import { listenToDirectMessages } from './listeners/direct-messages.ts';
import { HomePages, listenToHomePage } from './listeners/home-page.ts';
import type { ListenerContext } from './listeners/listener-context.ts';
import { listenToMentions } from './listeners/mentions.ts';
import { listenToShortcuts } from './listeners/shortcuts.ts';
import { listenToForms } from './listeners/submissions.ts';
import { onlyOfPlatform } from './platform-host.ts';
import { shareFiles, uploadImage } from './sending/upload-files.ts';
import { wholeCalls } from './sending/whole-call.ts';
import type { DistributionParts } from './workspaces/connect.ts';
import { removalEvents } from './workspaces/removals.ts';
import { withWorkspace } from './workspaces/with-workspace.ts';
import type { ConnectedWorkspace, Workspaces } from './workspaces/workspaces.ts';

/** A form's answer must be with the platform within three seconds; this leaves the last half to the way there. */
const ANSWER_DUE_MS = 2_500;
/** For an answer to the address that a request names. */
const RESPOND_LIMIT_MS = 30_000;
/** Longest that a stop waits for the work in hand. */
const STOP_LIMIT_MS = 10_000;

export { PlatformStartError } from './door/socket-door.ts';

export interface SlackAppOptions {
  readonly config: Pick<Config, 'transport' | 'port'> &
    Partial<Pick<Config, 'apiUrl' | 'host' | 'healthPort' | 'requestsPerMinute' | 'trustedProxies'>>;
  /** Where the bot is installed. */
  readonly workspaces: Workspaces;
  /** Where workspaces install the bot by themselves. */
  readonly distribution?: DistributionParts | undefined;
  readonly deps: Pick<AppDependencies, 'store' | 'clock' | 'directory'>;
  readonly useCases: UseCases;
  readonly logger: Logger;
  /** What besides the connection to the platform must be ready. */
  readonly readiness?: Readiness;
  /** Who counts requests. */
  readonly meter?: RequestMeter | undefined;
  /** Real time, for signatures. */
  readonly nowMs?: () => number;
  /** For tests: requests come from here instead of socket or HTTP. */
  readonly receiver?: Receiver;
  /** For tests: when a form's answer is due. */
  readonly answerDue?: () => Promise<void>;
}

export interface SlackApp {
  /**
   * @returns the port on which requests are answered (HTTP mode), and that of the health routes
   * @throws PlatformStartError
   */
  start(): Promise<{ readonly port: number; readonly healthPort: number }>;
  /** Brings the home pages of these people up to date, one after the other. Never throws. */
  refreshHomes(people: readonly Actor[]): Promise<void>;
  /** Resolves when no request is being worked on, those that were acknowledged included. */
  idle(): Promise<boolean>;
  /** Takes no new request and waits for the work in hand. @returns false when some was still running. */
  stop(): Promise<boolean>;
}

export function createSlackApp(options: SlackAppOptions): SlackApp {
  const { config, distribution, logger, nowMs = Date.now } = options;
  const running = new RunningWork();
  const homePages = new HomePages(options.useCases, logger);
  const turns = new ReadingTurns();
  const { transport } = config;
  const socket =
    options.receiver === undefined && transport.mode === 'socket'
      ? new SocketDoor({ appToken: transport.appToken, slackApiUrl: config.apiUrl, logger })
      : undefined;
  let isStopping = false;
  const othersReady = sharedReadiness(async () => (await options.readiness?.()) ?? []);

  const readiness: Readiness = async () => [
    ...(isStopping ? ['stopping'] : []),
    ...((socket?.isConnected ?? true) ? [] : ['the socket to the platform is not open']),
    ...(await othersReady()),
  ];
  const healthDoor =
    config.healthPort === undefined
      ? undefined
      : new HealthDoor({ port: config.healthPort, host: config.host, readiness });
  const door = new HttpDoor({
    signingSecret: transport.mode === 'http' ? transport.signingSecret : undefined,
    port: config.port,
    host: config.host,
    nowMs,
    logger,
    meter: options.meter,
    pages: distribution?.pages,
    readiness: healthDoor ? undefined : readiness,
    trustedProxies: config.trustedProxies,
  });

  const bolt = new App({
    receiver: options.receiver ?? socket ?? door,
    // The token comes from `withWorkspace`, to our own clients; Bolt's never call.
    authorize: async () => ({}),
    // Answers go to an address that the request names.
    clientOptions: { fetch: onlyOfPlatform(wholeCalls(RESPOND_LIMIT_MS), config.apiUrl) },
    logger: boltLogger(logger),
    convoStore: false,
  });
  bolt.error(async (error) => {
    logger.error({ err: error }, 'A listener failed.');
  });
  bolt.use(scopedRequests(options.meter));
  bolt.use(({ next }) => running.track(next));
  if (distribution) bolt.use(removalEvents(distribution.removals));
  bolt.use(
    withWorkspace({
      workspaces: options.workspaces,
      contextFor: (workspace) => listenerContext(options, workspace, { homePages, running, turns }),
      notInstalled: distribution?.notInstalled,
      logger,
    }),
  );
  bolt.use(fairShare(options.config.requestsPerMinute ?? 0));
  listenToCommand(bolt);
  listenToButtons(bolt);
  listenToShortcuts(bolt);
  listenToForms(bolt);
  listenToDirectMessages(bolt);
  listenToMentions(bolt);
  listenToHomePage(bolt);
  listenToChannels(bolt);

  return {
    async start() {
      try {
        const healthPort = await healthDoor?.start();
        const port = await door.start();
        await socket?.start();
        return { port, healthPort: healthPort ?? port };
      } catch (error) {
        await Promise.all([door.stop(), healthDoor?.stop()]);
        throw error;
      }
    },
    refreshHomes: (people) =>
      running.track(async () => {
        for (const actor of people) {
          const workspace = await options.workspaces.find(actor.workspaceId).catch(() => undefined);
          if (workspace) await homePages.refresh(workspace.bulk, actor);
        }
      }),
    idle: () => running.settled(STOP_LIMIT_MS),
    async stop() {
      isStopping = true;
      await socket?.stop();
      await door.stop();
      const isSettled = await running.settled(STOP_LIMIT_MS);
      await healthDoor?.stop();
      return isSettled;
    },
  };
}

/** What all workspaces share. */
interface OfProcess {
  readonly homePages: HomePages;
  readonly running: RunningWork;
  readonly turns: ReadingTurns;
}

/** The means of one workspace. */
function listenerContext(
  { config, useCases, deps, logger, answerDue }: SlackAppOptions,
  { workspaceId, botUserId, botToken, interactive: client, bulk }: ConnectedWorkspace,
  { homePages, running, turns }: OfProcess,
): ListenerContext {
  return {
    workspaceId,
    botUserId,
    useCases,
    directory: deps.directory,
    client,
    logger,
    download: async (file) => ({
      fileName: file.name,
      field: file.field,
      bytes: await downloadFile({ client, botToken, apiUrl: config.apiUrl, logger }, file),
    }),
    inTurn: (given, work) => turns.take({ ...given, workspaceId }, work),
    shareFiles: (shared) => shareFiles(client, shared),
    upload: (image) => uploadImage({ client, wait }, image),
    // Separate in each workspace, even with the same mark.
    isNew: (eventKey) => deps.store.single.rememberEvent(`${workspaceId} ${eventKey}`, deps.clock.now()),
    giveUp: (eventKey) => giveUp(deps.store, `${workspaceId} ${eventKey}`, deps.clock.now()),
    watchChannel: (change) => watchChannel(deps, workspaceId, change),
    openHome: (actor) => homePages.open(client, actor),
    refreshHome: (actor, openChannelId) => running.track(() => homePages.refresh(bulk, actor, openChannelId)),
    answerDue: answerDue ?? (() => wait(ANSWER_DUE_MS, undefined, { ref: false })),
  };
}

/** Counts the work in hand, so that a stop can wait for it. */
export class RunningWork {
  readonly #running = new Set<Promise<unknown>>();

  get count(): number {
    return this.#running.size;
  }

  /** Runs the work and remembers it until it ends; what it throws goes to the caller. */
  async track<T>(work: () => Promise<T>): Promise<T> {
    const promise = work();
    this.#running.add(promise);
    try {
      return await promise;
    } finally {
      this.#running.delete(promise);
    }
  }

  /**
   * Waits until nothing runs, new work included, but no longer than `limitMs`.
   *
   * @returns false when something still runs.
   */
  async settled(limitMs: number): Promise<boolean> {
    let timer: NodeJS.Timeout | undefined;
    const tooLate = new Promise<'late'>((resolve) => {
      timer = setTimeout(() => resolve('late'), limitMs);
    });
    try {
      while (this.#running.size > 0) {
        const outcome = await Promise.race([Promise.allSettled([...this.#running]), tooLate]);
        if (outcome === 'late') return false;
      }
      return true;
    } finally {
      clearTimeout(timer);
    }
  }
}
