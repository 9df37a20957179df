/** The whole bot, with its HTTP door, listeners, database and deliveries, ready to be sent what a sample says. */

import { setUpTeam } from '../../src/app/team/set-up-team.ts';
import { requestSignature } from '../../src/rehearsal/stand-in/bot-link.ts';
import type { JsonObject } from '../../src/rehearsal/stand-in/page-state.ts';
import type { StandIn } from '../../src/rehearsal/stand-in/stand-in.ts';
import type { Database } from '../../src/store/database.ts';
import { openDatabase } from '../../src/store/open-database.ts';
import { ManyWorkspacesBot, NORTH, SIGNING_SECRET } from '../support/many-workspaces-bot.ts';

export const ANA = 'U0ANA';
/** Where Ana and the bot write to each other. */
export const DIRECT = 'D0ANA';
const CHANNELS = 90;

export class CheckedBot {
  readonly bot: ManyWorkspacesBot;
  readonly #database: Database;
  readonly #freeChannels = Array.from({ length: CHANNELS }, (_, index) => channelId(index));
  #logged = 0;

  private constructor(bot: ManyWorkspacesBot, database: Database) {
    this.bot = bot;
    this.#database = database;
  }

  static async start(): Promise<CheckedBot> {
    const database = await openDatabase({ dataFolder: 'memory' });
    const channels = Array.from({ length: CHANNELS }, (_, index) => ({
      id: channelId(index),
      name: `harbour-${index}`,
      memberIds: [ANA, 'U0BEN'],
    }));
    const bot = await ManyWorkspacesBot.start(database, new Date().toISOString(), undefined, { channels });
    await bot.install(NORTH);
    return new CheckedBot(bot, database);
  }

  async stop(): Promise<void> {
    await this.bot.stop();
    await this.#database.close();
  }

  get standIn(): StandIn {
    return this.bot.platform.standIn(NORTH);
  }

  /** A channel that nothing happened in yet. */
  freeChannel(): string {
    const free = this.#freeChannels.pop();
    if (free === undefined) throw new Error('more channels are needed: raise CHANNELS');
    return free;
  }

  /** A channel with a team that Ana facilitates. */
  async channelWithTeam(): Promise<string> {
    const channelId = this.freeChannel();
    const actor = { workspaceId: NORTH, userId: ANA };
    await setUpTeam(this.bot.deps, actor, {
      channelId,
      name: 'Tugboats',
      timeZone: 'Etc/UTC',
      promptAt: '09:15',
      workingDays: [1, 2, 3, 4, 5],
      memberIds: [ANA, 'U0BEN'],
      facilitatorIds: [ANA],
      productOwnerId: undefined,
    });
    await this.bot.settle();
    return channelId;
  }

  /** Signed, as the platform sends it. @param kind `json`: an event; `form`: a command; `payload`: everything else */
  async send(body: JsonObject, kind: 'json' | 'form' | 'payload'): Promise<{ status: number; text: string }> {
    const text = encoded(body, kind);
    const seconds = Math.floor(Date.now() / 1_000);
    const response = await fetch(`${this.bot.url}/slack/events`, {
      method: 'POST',
      headers: {
        'content-type': kind === 'json' ? 'application/json' : 'application/x-www-form-urlencoded',
        'x-slack-request-timestamp': String(seconds),
        'x-slack-signature': requestSignature(SIGNING_SECRET, seconds, text),
      },
      body: text,
    });
    const answer = { status: response.status, text: await response.text() };
    await this.bot.settle();
    return answer;
  }

  /** What the bot logged as a failure since it was last asked. Whatever fails is logged before anybody hears of it. */
  newErrors(): string[] {
    const entries = this.bot.log.entries().slice(this.#logged);
    this.#logged += entries.length;
    return entries
      .filter(({ level }) => level === 'error' || level === 'fatal')
      .map(({ msg, err }) => `the log says: ${msg} ${JSON.stringify(err ?? '').slice(0, 300)}`);
  }
}

function channelId(index: number): string {
  return `C0HARBOUR${String(index).padStart(2, '0')}`;
}

/** A form has texts only. */
function encoded(body: JsonObject, kind: 'json' | 'form' | 'payload'): string {
  if (kind === 'json') return JSON.stringify(body);
  if (kind === 'payload') return new URLSearchParams({ payload: JSON.stringify(body) }).toString();
  return new URLSearchParams(
    Object.entries(body).map(([name, value]): [string, string] => [name, String(value ?? '')]),
  ).toString();
}
