/** Sends each event to the bot, in every way in which a sample can be filled, and looks for what must follow. */
import type { JsonObject } from '../../src/rehearsal/stand-in/page-state.ts';
import { NEEDED_EVENTS } from '../../src/slack/workspaces/manifest-needs.ts';
import { NORTH } from '../support/many-workspaces-bot.ts';
import { ANA, type CheckedBot, DIRECT } from './checked-bot.ts';
import { fillSample, WAYS, type Way } from './fill-sample.ts';
import type { Finding } from './finding.ts';
import type { EventSample, Samples } from './read-samples.ts';

const BOT_USER = 'U0LOADLINE';

interface Case {
  /** Fields of the event whose values matter. */
  readonly given: JsonObject;
  /** What follows, in a few words. */
  readonly effect: string;
  /** What can be seen of it; has to differ once the event was sent. */
  readonly look?: () => unknown;
  /** Puts everything back, for the next sample. */
  readonly after?: () => Promise<void>;
}

const NOTHING: Case = { given: {}, effect: 'acknowledged; nothing follows' };

export async function sendEvents(bot: CheckedBot, samples: Samples['events']): Promise<Finding[]> {
  const findings: Finding[] = [];
  for (const [name, sample] of Object.entries(samples))
    findings.push(await sendInEveryWay(bot, name, sample));
  return findings;
}

async function sendInEveryWay(bot: CheckedBot, name: string, sample: EventSample): Promise<Finding> {
  const problems: string[] = [];
  let effect = '';
  for (const way of WAYS) {
    const one = await caseOf(bot, sample.event, way);
    effect ||= one.effect;
    for (const body of bodiesOf(sample, one.given, way)) {
      const seenBefore = await one.look?.();
      const wroteBefore = written(bot);
      const { status } = await bot.send(body, 'json');
      const fields = `with the other fields ${way}`;
      if (status < 200 || status > 299) problems.push(`${fields}: answered with ${status}, not acknowledged`);
      else if (one.look && (await one.look()) === seenBefore)
        problems.push(`${fields}: “${one.effect}” is not seen`);
      else if (!one.look && written(bot) !== wroteBefore)
        problems.push(`${fields}: the bot did something about it`);
      problems.push(...bot.newErrors().map((error) => `${fields}: ${error}`));
    }
    bot.bot.platform.answers.clear();
    await one.after?.();
  }
  return { what: name, seen: effect, problems };
}

/** All calls that change something. */
function written(bot: CheckedBot): number {
  return bot.bot.platform.calls.filter(({ method }) => /^(chat|views|files)\./.test(method)).length;
}

function bodiesOf(sample: EventSample, given: JsonObject, way: Way): JsonObject[] {
  const { type, subtype } = sample.event;
  const event = { type, ...(subtype === undefined ? {} : { subtype }), ...given };
  const envelope = {
    type: 'event_callback',
    team_id: NORTH,
    event_id: `Ev${crypto.randomUUID()}`,
    event_time: Math.ceil(Date.now() / 1_000),
    event,
  };
  const body = fillSample(sample, envelope, way);
  // The platform sends it without an envelope (docs.slack.dev/reference/events/app_rate_limited).
  if (type !== 'app_rate_limited') return [body];
  return [body, fillSample(sample.event, { type, team_id: NORTH }, way)];
}

async function caseOf(bot: CheckedBot, { type, subtype }: EventSample['event'], way: Way): Promise<Case> {
  switch (type) {
    case 'message':
      return messageCase(bot, subtype, way);
    case 'app_mention':
      return mentionCase(bot, way);
    case 'app_home_opened':
      return {
        given: { user: ANA, channel: DIRECT, tab: 'home' },
        effect: 'the home page is published',
        look: () => bot.standIn.homeOf(ANA)?.hash,
      };
    case 'channel_archive':
    case 'group_archive':
      return toldCase(bot, { ok: true, channel: { id: 'C1', name: 'harbour', is_archived: true } });
    case 'channel_deleted':
    case 'group_deleted':
      return toldCase(bot, { ok: false, error: 'channel_not_found' });
    case 'channel_left':
    case 'group_left':
    case 'channel_shared':
      return toldCase(bot);
    case 'member_left_channel':
      return toldCase(bot, undefined, { user: BOT_USER });
    case 'channel_id_changed':
      return movedCase(bot);
    case 'app_uninstalled':
      return removedCase(bot, {});
    case 'tokens_revoked':
      return removedCase(bot, { tokens: { bot: [BOT_USER] } });
    default:
      return NOTHING;
  }
}

/** Words by a person are answered, wherever in their direct messages they stand; notices about messages are not. */
function messageCase(bot: CheckedBot, subtype: unknown, way: Way): Case {
  const given = { channel: DIRECT, channel_type: 'im', user: ANA, text: 'status', ts: nextTs() };
  const isByPerson = subtype === undefined || subtype === 'file_share' || subtype === 'thread_broadcast';
  // A sample in which every field has a value is by a bot, too.
  if (!isByPerson || (subtype === undefined && way === 'full')) return { ...NOTHING, given };
  return { given, effect: 'answered', look: () => bot.standIn.messagesOf(ANA, DIRECT).length };
}

function mentionCase(bot: CheckedBot, way: Way): Case {
  const isHeard = (NEEDED_EVENTS as readonly string[]).includes('app_mention');
  const channel = bot.freeChannel();
  const given = { channel, user: ANA, text: `<@${BOT_USER}> status`, ts: nextTs() };
  if (!isHeard || way === 'full') return { ...NOTHING, given };
  return {
    given: { ...given, edited: undefined },
    effect: 'answered',
    look: () => bot.standIn.messagesOf(ANA, channel).length,
  };
}

/** @param asked what the platform says of the channel from now on */
async function toldCase(bot: CheckedBot, asked?: JsonObject, more: JsonObject = {}): Promise<Case> {
  const channel = await bot.channelWithTeam();
  if (asked) bot.bot.platform.answers.set('conversations.info', asked);
  return {
    given: { channel, ...more },
    effect: 'the facilitator is told',
    look: () => bot.standIn.messagesOf(ANA, DIRECT).length,
  };
}

async function movedCase(bot: CheckedBot): Promise<Case> {
  const [from, to] = [await bot.channelWithTeam(), bot.freeChannel()];
  return {
    given: { old_channel_id: from, new_channel_id: to },
    effect: 'the team moves to the new id',
    look: async () => (await bot.bot.deps.store.read((read) => read.teamByChannel(NORTH, to)))?.id,
  };
}

/** The platform takes the token no more once it says so. */
function removedCase(bot: CheckedBot, given: JsonObject): Case {
  bot.bot.platform.revokeTokens(NORTH);
  return {
    given,
    effect: 'the installation ends',
    look: async () => (await bot.bot.workspaces.find(NORTH)) !== undefined,
    after: () => bot.bot.install(NORTH),
  };
}

let lastMicros = Date.now() * 1_000;
function nextTs(): string {
  lastMicros += 1;
  return `${Math.floor(lastMicros / 1_000_000)}.${String(lastMicros % 1_000_000).padStart(6, '0')}`;
}
