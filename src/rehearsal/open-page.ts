/** Serves the rehearsal's web page: the workspace, a calendar to move, and a preloaded sprint to play on. */
import { addDays } from 'date-fns/addDays';
import { addHours } from 'date-fns/addHours';
import { dayAt, instantOf, timeAt } from '../app/clock/local-time.ts';
import type { Logger } from '../logger.ts';
import { cardFileField, IMPORT_FIELDS, SHORTCUTS } from '../slack/ids.ts';
import { VALUE_FIELDS } from '../slack/views/value-views.ts';
import { dayPlus, type Weekday, workingDaysFromTo } from '../sprint/calendar.ts';
import { say } from '../words/say.ts';
import { FREE_CHANNEL, TEAM_CHANNEL_ID } from './cast.ts';
import { type Rehearsal, startRehearsal } from './rehearsal.ts';
import type { Scenario, ScenarioSprint } from './scenario.ts';
import { Script } from './script.ts';
import type { PageRoute } from './stand-in/stand-in-options.ts';

interface PageOptions {
  readonly scenario: Scenario;
  readonly logger: Logger;
  readonly port: number;
}

export async function openPage({ scenario, logger, port }: PageOptions): Promise<Rehearsal> {
  let underWay: Promise<unknown> = Promise.resolve();
  /** One move of the calendar at a time, however often the buttons are pressed. */
  const inTurn = <T>(move: () => Promise<T>): Promise<T> => {
    const result = underWay.then(move);
    underWay = result.catch(() => undefined);
    return result;
  };
  let verdictIsIn = false;
  const firstMember = scenario.members[0]?.name ?? '';
  const routes: Record<string, PageRoute> = {
    'GET /page/about': () => ({
      teamName: scenario.team.name,
      scenario: scenario.sprints.map(({ name }) => name).join(', '),
      hint: verdictIsIn
        ? say('rehearsal-hint-after', { channel: FREE_CHANNEL.name })
        : say('rehearsal-hint', { member: firstMember }),
      startPlace: 'dm',
      timeZone: scenario.team.timeZone,
      roles: rehearsal.cast.roles,
      shortcuts: [{ callbackId: SHORTCUTS.answerForMyCards, name: say('rehearsal-shortcut-answer') }],
      examples: ['/loadline', '/loadline status'],
      examplesAt: { [FREE_CHANNEL.id]: ['/loadline setup', '/loadline import', '/loadline plan'] },
      exampleFiles: {
        [IMPORT_FIELDS.files]: ['past-sprints.csv'],
        [cardFileField(1)]: ['cards.csv'],
        [VALUE_FIELDS.file]: ['values.csv'],
      },
    }),
    'POST /page/forward': ({ by }) => inTurn(() => forward(by)),
  };
  const onWork = () => void inTurn(() => rehearsal.settle());
  const moreChannels = [FREE_CHANNEL];
  const rehearsal = await startRehearsal({ scenario, logger, routes, moreChannels, onWork, port });
  const script = new Script(rehearsal, scenario);
  const { timeZone, promptAt } = scenario.team;
  const workingDays = scenario.team.workingDays as Weekday[];

  /** Moves the calendar on; bot and scenario do on the way what is due. What is due at the instant itself is to come. */
  async function moveTo(instant: Date): Promise<void> {
    for (let at = await script.nextAt(); at && at < instant; at = await script.nextAt()) {
      await script.playNext();
    }
    await rehearsal.moveTo(instant);
  }

  async function forward(by: unknown): Promise<{ did: string; place?: string }> {
    const now = rehearsal.deps.clock.now();
    let place: string | undefined;
    if (by === 'hour') await moveTo(addHours(now, 1));
    else if (by === 'day') await moveTo(nextPrompt(now, dayAt(now, timeZone)));
    else if (by === 'close') {
      const closing = await nextClosing();
      place = closing.channelId;
      await moveTo(closing.at);
    } else throw new Error('The calendar moves on by hour, day or close.');
    verdictIsIn ||= (await rehearsal.openSprint()) === undefined;
    const at = rehearsal.deps.clock.now();
    const names = script.takeWriters().map((id) => scenario.members.find((one) => one.id === id)?.name ?? id);
    const moved = { day: dayAt(at, timeZone), time: timeAt(at, timeZone) };
    const did =
      names.length > 0 ? say('rehearsal-wrote', { people: names, ...moved }) : say('rehearsal-day', moved);
    return place === undefined ? { did } : { did, place };
  }

  /** The next morning's prompt, where a day begins for a member. */
  function nextPrompt(now: Date, today: string): Date {
    const times = [today, dayPlus(today, 1)].map((day) => instantOf(day, promptAt, timeZone));
    return times.find((at) => at > now) ?? addDays(now, 1);
  }

  /** When and where the sprint ends that is under way, else the scenario's next one. */
  async function nextClosing(): Promise<{ at: Date; channelId: string }> {
    for (;;) {
      const closings = await Promise.all(
        [TEAM_CHANNEL_ID, FREE_CHANNEL.id].map(async (channelId) => {
          const open = await rehearsal.openSprint(channelId);
          return open ? [{ at: open.sprint.closesAtInstant, channelId }] : [];
        }),
      );
      const next = closings.flat().sort((a, b) => a.at.getTime() - b.at.getTime())[0];
      if (next) return next;
      if (!(await script.nextAt())) throw new Error(say('rehearsal-no-sprint'));
      await script.playNext();
    }
  }

  const { startsOn, endsOn } = scenario.sprints[0] as ScenarioSprint;
  const [firstDay = startsOn, secondDay = firstDay] = workingDaysFromTo(startsOn, endsOn, workingDays);
  await script.playNext();
  // The members have said hello already: a visitor's first screen shows what is asked today.
  for (const { id } of scenario.members) {
    await rehearsal.standIn.openHome(rehearsal.cast.userIdOf(id), 'messages');
  }
  await moveTo(instantOf(secondDay, promptAt, timeZone));
  script.takeWriters();
  console.log(say('rehearsal-open', { url: `${rehearsal.standIn.url}/` }));
  return rehearsal;
}
