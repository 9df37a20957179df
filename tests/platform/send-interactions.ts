/**
 * Sends each interaction to the bot, in every way in which a sample can be filled, and looks for what must follow. Ids and
 * values are those of what the stand-in sends when somebody does it there.
 */
import type { JsonObject } from '../../src/rehearsal/stand-in/page-state.ts';
import { NORTH } from '../support/many-workspaces-bot.ts';
import { ANA, type CheckedBot, DIRECT } from './checked-bot.ts';
import { fillSample, WAYS } from './fill-sample.ts';
import type { Finding } from './finding.ts';
import type { Samples } from './read-samples.ts';
import { type Recorder, startRecorder } from './recorder.ts';

const NOTHING = 'acknowledged; nothing follows';

interface Case {
  readonly sample: string;
  readonly what?: string;
  readonly effect: string;
  /** @returns what the stand-in sends when somebody does it, and what can be seen of what follows */
  readonly prepare: (stage: Stage) => Promise<{ given: JsonObject; look?: () => unknown }>;
}

interface Stage {
  readonly bot: CheckedBot;
  /** What the stand-in sends while this is done. */
  record(work: () => Promise<unknown>): Promise<JsonObject>;
}

/** A message in which somebody else said something. */
const SAID = { type: 'message', text: 'The crane sticks', user: 'U0BEN', ts: '1793610000.000100' };

const CASES: readonly Case[] = [
  {
    sample: 'slash_command',
    effect: 'answered',
    prepare: async ({ bot, record }) => {
      const channel = bot.freeChannel();
      const given = await record(() => bot.standIn.command(ANA, channel, '/loadline status'));
      return { given, look: () => bot.standIn.messagesOf(ANA, channel).length };
    },
  },
  {
    sample: 'block_actions',
    what: 'block_actions, in a message',
    effect: 'answered',
    prepare: async ({ bot, record }) => {
      await bot.standIn.say(ANA, DIRECT, 'help');
      await bot.bot.settle();
      const messages = () => bot.standIn.messagesOf(ANA, DIRECT);
      const { ts, blocks } = messages().at(-1) ?? { ts: '', blocks: [] };
      const given = await record(() =>
        bot.standIn.click(ANA, { ts, channel: DIRECT }, ...firstButton(blocks)),
      );
      // Of a message the platform says nothing about forms, and of a form nothing about messages.
      return { given: { view: undefined, ...given }, look: () => messages().length };
    },
  },
  {
    sample: 'block_actions',
    what: 'block_actions, on the home page',
    effect: 'answered',
    prepare: async ({ bot, record }) => {
      await bot.standIn.openHome(ANA);
      await bot.bot.settle();
      const home = bot.standIn.homeOf(ANA);
      if (!home) throw new Error('there is no home page');
      const given = await record(() =>
        bot.standIn.click(ANA, { viewId: home.id }, ...firstButton(home.blocks)),
      );
      const look = () => [bot.standIn.messagesOf(ANA, DIRECT).length, bot.standIn.viewOf(ANA)?.id].join();
      return { given: { channel: undefined, message: undefined, response_url: undefined, ...given }, look };
    },
  },
  {
    sample: 'view_submission',
    effect: 'a team is set up',
    prepare: async ({ bot, record }) => {
      const { channel, view } = await openSetup(bot);
      const given = await record(() => bot.standIn.submit(ANA, view.id as string));
      const team = () => bot.bot.deps.store.read((read) => read.teamByChannel(NORTH, channel));
      return { given, look: async () => (await team())?.id };
    },
  },
  {
    sample: 'view_closed',
    effect: NOTHING,
    prepare: async ({ bot, record }) => {
      const { view } = await openSetup(bot);
      const {
        type: _type,
        trigger_id: _trigger,
        ...given
      } = await record(() => bot.standIn.submit(ANA, view.id as string));
      return { given: { ...given, type: 'view_closed' } };
    },
  },
  {
    sample: 'message_action',
    effect: 'a form opens',
    prepare: async ({ bot, record }) => {
      const channel = bot.freeChannel();
      await bot.standIn.say('U0BEN', channel, SAID.text);
      await bot.bot.settle();
      const { ts } = bot.standIn.messagesOf(ANA, channel).at(-1) ?? { ts: '' };
      const given = await record(() => bot.standIn.messageShortcut(ANA, channel, ts, 'pull-message-in'));
      return { given, look: () => bot.standIn.viewOf(ANA)?.id };
    },
  },
  {
    sample: 'message_action',
    what: 'message_action, of no shortcut of ours',
    effect: NOTHING,
    prepare: async ({ bot }) => ({
      given: {
        type: 'message_action',
        callback_id: 'somebody-elses',
        trigger_id: '1.2.3',
        response_url: 'https://hooks.example.org/1',
        message_ts: SAID.ts,
        message: SAID,
        team: { id: NORTH },
        user: { id: ANA },
        channel: { id: bot.freeChannel() },
      },
    }),
  },
];

/** Of a kind that is not among the cases: whatever it is, the bot must take it. */
function otherCase(sample: string): Case {
  return {
    sample,
    effect: NOTHING,
    prepare: async () => ({
      given: {
        type: sample,
        callback_id: 'somebody-elses',
        trigger_id: '1.2.3',
        team: { id: NORTH },
        user: { id: ANA },
      },
    }),
  };
}

export async function sendInteractions(
  bot: CheckedBot,
  samples: Samples['interactions'],
): Promise<Finding[]> {
  const recorder = await startRecorder();
  try {
    const known = CASES.map(({ sample }) => sample);
    const others = Object.keys(samples).filter((name) => !known.includes(name));
    const findings: Finding[] = [];
    for (const one of [...CASES, ...others.map(otherCase)])
      findings.push(await sendInEveryWay({ bot, record: recording(bot, recorder) }, one, samples));
    return findings;
  } finally {
    await recorder.stop();
  }
}

async function sendInEveryWay(stage: Stage, one: Case, samples: Samples['interactions']): Promise<Finding> {
  const { bot } = stage;
  const what = one.what ?? one.sample;
  const sample = samples[one.sample];
  if (!sample) return { what, seen: '', problems: ['there is no such sample'] };
  const problems: string[] = [];
  for (const way of WAYS) {
    const { given, look } = await one.prepare(stage);
    bot.newErrors();
    const seenBefore = await look?.();
    const body = fillSample(sample, given, way);
    const { status } = await bot.send(body, one.sample === 'slash_command' ? 'form' : 'payload');
    const fields = `with the other fields ${way}`;
    if (status !== 200) problems.push(`${fields}: answered with ${status}, not acknowledged`);
    else if (look && (await look()) === seenBefore) problems.push(`${fields}: “${one.effect}” is not seen`);
    problems.push(...bot.newErrors().map((error) => `${fields}: ${error}`));
  }
  return { what, seen: one.effect, problems };
}

function recording({ bot, standIn }: CheckedBot, recorder: Recorder): Stage['record'] {
  return async (work) => {
    standIn.connectBot(recorder.url);
    recorder.taken();
    const outcome = await work();
    standIn.connectBot(`${bot.url}/slack/events`);
    const [first] = recorder.taken();
    if (!first) throw new Error(`the stand-in sent nothing: ${JSON.stringify(outcome)}`);
    return first;
  };
}

async function openSetup(bot: CheckedBot) {
  const channel = bot.freeChannel();
  await bot.standIn.command(ANA, channel, '/loadline setup');
  await bot.bot.settle();
  const view = bot.standIn.viewOf(ANA);
  if (!view) throw new Error('the form did not open');
  return { channel, view };
}

function firstButton(
  blocks: readonly JsonObject[],
): [actionId: string, options: { value?: string; blockId?: string }] {
  const elements = blocks.flatMap((block) =>
    [...((block.elements as JsonObject[] | undefined) ?? []), block.accessory as JsonObject | undefined].map(
      (element): JsonObject => ({ ...element, blockId: block.block_id }),
    ),
  );
  const button = elements.find(({ type }) => type === 'button');
  if (!button) throw new Error('there is no button');
  const { action_id, value, blockId } = button as Record<string, string | undefined>;
  return [
    String(action_id),
    { ...(value === undefined ? {} : { value }), ...(blockId === undefined ? {} : { blockId }) },
  ];
}
