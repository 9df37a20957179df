/**
 * A whole workspace on this machine: the stand-in for the chat platform, the bot on an in-memory database,
 * and a calendar that moves on request. The bot is the real one: signed HTTP in, Web API out.
 */
import { randomBytes } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import { answerForm } from '../app/answering/answer-form.ts';
import { runDueWork } from '../app/clock/ask-members.ts';
import { dayAt, instantOf } from '../app/clock/local-time.ts';
import type { AppDependencies, Clock } from '../app/ports/app-dependencies.ts';
import { deliverPost } from '../app/posting/deliver.ts';
import type { Post } from '../app/posting/posts.ts';
import { removeMessages } from '../app/privacy/remove-messages.ts';
import { Refusal } from '../app/refusal.ts';
import { currentSprint } from '../app/team/place.ts';
import type { Actor, Sprint, SprintRecords } from '../app/team/team.ts';
import { bindUseCases, type UseCases } from '../app/use-cases.ts';
import { homesTouchedBy } from '../app/watching/homes-touched.ts';
import { writtenOnce } from '../app/written-once.ts';
import { calendars } from '../calendars/calendars.ts';
import { charts } from '../charts/charts.ts';
import type { Logger } from '../logger.ts';
import { fileReading } from '../reading/file-reading.ts';
import { createMessenger } from '../slack/sending/messenger.ts';
import { bulkClient, interactiveClient } from '../slack/sending/web-clients.ts';
import { createSlackApp } from '../slack/slack-app.ts';
import { checkPlatform } from '../slack/workspaces/check-platform.ts';
import { createDirectory } from '../slack/workspaces/directory.ts';
import { oneWorkspace } from '../slack/workspaces/workspaces.ts';
import { openDatabase } from '../store/open-database.ts';
import { openQueue } from '../store/queue/delivery-queue.ts';
import { refusalWords } from '../words/refusals.ts';
import { type Cast, castOf, TEAM_CHANNEL_ID } from './cast.ts';
import { Conversation } from './conversation.ts';
import { datedByClock } from './dated-by-clock.ts';
import type { Scenario } from './scenario.ts';
import { type StandIn, startStandIn } from './stand-in/stand-in.ts';
import type { PageRoute, StandInOptions } from './stand-in/stand-in-options.ts';

/** How the answer form would offer a card to a member. */
export interface OfferedCard {
  readonly cardId: string;
  readonly previousLeftPoints: number;
  /** Whether the form asks about surprise work even if the card does not grow. */
  readonly asksSurprise: boolean;
}

export interface OpenSprint {
  readonly sprint: Sprint;
  readonly records: SprintRecords;
}

export interface Rehearsal {
  readonly standIn: StandIn;
  readonly deps: AppDependencies;
  readonly cast: Cast;
  readonly conversation: Conversation;
  /** The words of every refusal so far, in order. */
  readonly refusals: readonly string[];
  readonly workspaceId: string;
  /** Moves the calendar on to the instant; everything due until then happens at its own time. */
  moveTo(instant: Date): Promise<void>;
  /** Delivers everything that is due, and deletes what is to go. */
  settle(): Promise<void>;
  /** The sprint that is under way in the channel, else the next one. */
  openSprint(channelId?: string): Promise<OpenSprint | undefined>;
  /** By card number: what the member's answer form for the day would offer. */
  answerOffer(userId: string, day: string): Promise<Map<number, OfferedCard>>;
  stop(): Promise<void>;
}

export interface RehearsalOptions {
  readonly scenario: Scenario;
  readonly logger: Logger;
  readonly routes?: Record<string, PageRoute>;
  /** Channels besides the team's, in which everybody is. */
  readonly moreChannels?: readonly { id: string; name: string }[];
  /** Called whenever the bot has done something, after which posts may be due. */
  readonly onWork?: () => void;
  /** Port of the page; a free one when left out. */
  readonly port?: number;
  /** An image (PGlite's dump) for the database to start from: it saves some seconds. */
  readonly memoryImage?: Blob | undefined;
  /** What goes wrong with calls of the platform. */
  readonly faultFor?: StandInOptions['faultFor'];
}

/** A retry that is due later than this is not waited for. */
const LONGEST_WAIT_MS = 90_000;
const WAIT_STEP_MS = 250;
/** The platform's three seconds say nothing about the bot on a machine that is busy with other things. */
const PATIENCE_MS = 60_000;

export async function startRehearsal({
  scenario,
  logger,
  routes,
  moreChannels = [],
  onWork = () => undefined,
  port,
  memoryImage,
  faultFor,
}: RehearsalOptions): Promise<Rehearsal> {
  const { team, sprints } = scenario;
  const days = sprints.flatMap(({ startsOn, events }) => [startsOn, ...events.map(({ on }) => on)]);
  const firstDay = days.sort()[0] as string;
  const clock = new SimulatedClock(instantOf(firstDay, '00:00', team.timeZone));
  const secrets = {
    signingSecret: randomBytes(16).toString('hex'),
    botToken: `xoxb-${randomBytes(12).toString('hex')}`,
  };
  const cast = castOf(scenario);
  const standIn = await startStandIn({
    ...secrets,
    users: cast.users,
    channels: [{ id: TEAM_CHANNEL_ID, name: channelNameOf(team.name) }, ...moreChannels].map((channel) => ({
      ...channel,
      memberIds: cast.users.map(({ id }) => id),
    })),
    now: () => clock.now(),
    ackLimitMs: PATIENCE_MS,
    triggerLifeMs: PATIENCE_MS,
    ...(routes ? { routes } : {}),
    ...(faultFor ? { faultFor } : {}),
    ...(port === undefined ? {} : { port }),
  });
  const settings = { botToken: secrets.botToken, logger, slackApiUrl: `${standIn.url}/api/` };
  const interactive = interactiveClient(settings);
  const checked = await checkPlatform(interactive);
  if (!checked.ok) throw new Error(checked.problems.map(({ code }) => code).join(', '));
  const { identity } = checked;
  const { botToken } = secrets;
  const workspaces = oneWorkspace({ ...identity, botToken, interactive, bulk: bulkClient(settings) });
  const database = await openDatabase({ dataFolder: 'memory', memoryImage });
  const setDatabaseClock = await datedByClock(database, clock.now());
  const queue = await openQueue(database);
  const deps: AppDependencies = {
    store: writtenOnce(database.store, clock),
    clock,
    directory: createDirectory({ workspaces, nowMs: () => clock.now().getTime() }),
    calendars,
    files: fileReading,
    charts,
    messenger: createMessenger({ workspaces, logger, wait }),
  };
  const refusals: string[] = [];
  const app = createSlackApp({
    config: {
      transport: { mode: 'http', signingSecret: secrets.signingSecret },
      port: 0,
      // Files of forms lie on the stand-in, as they lie on the platform otherwise.
      apiUrl: settings.slackApiUrl,
    },
    workspaces,
    deps,
    useCases: watched(bindUseCases(deps), {
      onRefusal: (refusal) => {
        const { what, fix } = refusalWords(refusal, 'plain');
        refusals.push(`${what} ${fix}`);
      },
      onWork,
    }),
    logger,
  });
  const address = await app.start();
  standIn.connectBot(`http://127.0.0.1:${address.port}/slack/events`);

  async function settle(): Promise<void> {
    await removeMessages(deps);
    for (let waitedMs = 0; ; waitedMs += WAIT_STEP_MS) {
      await queue.drain(async (postId) => {
        let delivered: Post | undefined;
        const outcome = await deliverPost(deps, postId, false, (post) => {
          delivered = post;
        });
        if (delivered) await app.refreshHomes(await homesTouchedBy(deps, delivered));
        return outcome;
      });
      const waiting = await database.store.read((read) => read.countUnsentPosts());
      // A rate limit holds deliveries back for a moment of real time.
      if (waiting === 0 || waitedMs >= LONGEST_WAIT_MS) return;
      await wait(WAIT_STEP_MS);
    }
  }

  async function moveTo(instant: Date): Promise<void> {
    await settle();
    for (;;) {
      const due = await database.store.read((read) => read.nextDueAt());
      if (due === undefined || due > instant) break;
      await setClocks(due);
      await runDueWork(deps);
      await settle();
    }
    await setClocks(instant);
  }

  async function setClocks(instant: Date): Promise<void> {
    clock.moveTo(instant);
    await setDatabaseClock(clock.now());
  }

  return {
    standIn,
    deps,
    cast,
    conversation: new Conversation(standIn, () => app.idle()),
    refusals,
    workspaceId: identity.workspaceId,
    moveTo,
    settle,
    openSprint: (channelId = TEAM_CHANNEL_ID) =>
      deps.store.read(async (read) => {
        const team = await read.teamByChannel(identity.workspaceId, channelId);
        if (!team) return undefined;
        const sprint = currentSprint(await read.openSprintsOf(team.id), dayAt(clock.now(), team.timeZone));
        return sprint && { sprint, records: await read.recordsOf(sprint.id) };
      }),
    async answerOffer(userId, day) {
      const actor: Actor = { workspaceId: identity.workspaceId, userId };
      const place = { channelId: TEAM_CHANNEL_ID, isDirect: false };
      const form = await answerForm(deps, actor, { place, day }).catch((error: unknown) => {
        if (error instanceof Refusal) return undefined;
        throw error;
      });
      return new Map(
        form?.cards.map(({ card, previousLeftPoints, given }) => [
          card.number,
          {
            cardId: card.cardId,
            previousLeftPoints,
            asksSurprise: card.surprisePoints > 0 || (given?.surprise ?? 0) !== 0,
          },
        ]),
      );
    },
    async stop() {
      await app.stop();
      await queue.stop({ graceful: true });
      await database.close();
      await standIn.stop();
    },
  };
}

/** A channel's name on the platform: lower case, no spaces. */
function channelNameOf(teamName: string): string {
  const name = teamName
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return name || 'team';
}

function watched(
  useCases: UseCases,
  { onRefusal, onWork }: { onRefusal: (refusal: Refusal) => void; onWork: () => void },
): UseCases {
  const watching = Object.entries(useCases).map(([name, useCase]) => [
    name,
    async (...input: unknown[]) => {
      try {
        return await (useCase as (...all: unknown[]) => Promise<unknown>)(...input);
      } catch (error) {
        if (error instanceof Refusal) onRefusal(error);
        throw error;
      } finally {
        onWork();
      }
    },
  ]);
  return Object.fromEntries(watching) as UseCases;
}

/** A clock that runs only when it is moved; it never goes back. */
class SimulatedClock implements Clock {
  #now: Date;

  constructor(now: Date) {
    this.#now = now;
  }

  now(): Date {
    return new Date(this.#now);
  }

  /** Moves on to the instant; an earlier one leaves the clock where it is. */
  moveTo(instant: Date): void {
    if (instant > this.#now) this.#now = new Date(instant);
  }
}
