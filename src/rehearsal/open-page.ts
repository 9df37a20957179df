/** Serves the rehearsal's web page: the workspace, a calendar to move, and a preloaded sprint to play on. */
import { addDays } from 'date-fns/addDays';
import { addHours } from 'date-fns/addHours';
import { dayAt, instantOf } from '../app/clock/local-time.ts';
import { currentSprint } from '../app/team/place.ts';
import type { Logger } from '../logger.ts';
import { SHORTCUTS } from '../slack/ids.ts';
import { dayPlus } from '../sprint/calendar.ts';
import { say } from '../words/say.ts';
import { TEAM_CHANNEL_ID } from './cast.ts';
import { Player } from './player.ts';
import { type Rehearsal, startRehearsal } from './rehearsal.ts';
import type { Scenario } from './scenario.ts';
import type { PageRoute } from './stand-in/stand-in-options.ts';

export interface PageOptions {
  readonly scenario: Scenario;
  readonly logger: Logger;
  readonly port: number;
}

/** Steps played before the page opens: set-up, plan, the first day with its answers, and the second morning's prompts. */
const PRELOADED_STEPS = 5;

export async function openPage({ scenario, logger, port }: PageOptions): Promise<Rehearsal> {
  let underWay: Promise<unknown> = Promise.resolve();
  /** One move of the calendar at a time, however often the buttons are pressed. */
  const inTurn = <T>(move: () => Promise<T>): Promise<T> => {
    const result = underWay.then(move);
    underWay = result.catch(() => undefined);
    return result;
  };
  let isDone = false;
  const routes: Record<string, PageRoute> = {
    'GET /page/about': () => ({
      teamName: scenario.team.name,
      scenario: scenario.sprints.map(({ name }) => name).join(', '),
      hint: say('rehearsal-hint'),
      canPlayOn: !isDone,
      timeZone: scenario.team.timeZone,
      roles: rehearsal.cast.roles,
      shortcuts: [{ callbackId: SHORTCUTS.answerForMyCards, name: say('rehearsal-shortcut-answer') }],
      examples: ['/loadline', '/loadline status', '/loadline cards', '/loadline help'],
    }),
    'POST /page/forward': ({ by }) => inTurn(() => forward(rehearsal, scenario, by)),
    'POST /page/play-on': () => inTurn(playOn),
  };
  const rehearsal = await startRehearsal({ scenario, logger, routes, port });
  rehearsal.standIn.on('change', () => void inTurn(() => rehearsal.settle()));
  const steps = new Player(rehearsal, scenario).steps();

  async function playOn(): Promise<{ did: string; done: boolean }> {
    const step = await steps.next();
    isDone = step.done === true;
    return step.done ? { did: say('rehearsal-over'), done: true } : { did: step.value.did, done: false };
  }

  for (let i = 0; i < PRELOADED_STEPS; i += 1) await playOn();
  console.log(say('rehearsal-open', { url: `${rehearsal.standIn.url}/` }));
  return rehearsal;
}

/** Moves the calendar on; the bot does on the way what is due. */
async function forward(rehearsal: Rehearsal, scenario: Scenario, by: unknown): Promise<{ now: string }> {
  const { timeZone, promptAt } = scenario.team;
  const now = rehearsal.deps.clock.now();
  const today = dayAt(now, timeZone);
  if (by === 'hour') await rehearsal.moveTo(addHours(now, 1));
  else if (by === 'day') {
    // To the next morning's prompt, where a day begins for a member.
    const next = [today, dayPlus(today, 1)]
      .map((day) => instantOf(day, promptAt, timeZone))
      .find((at) => at > now);
    await rehearsal.moveTo(next ?? addDays(now, 1));
  } else if (by === 'week') await rehearsal.moveTo(addDays(now, 7));
  else if (by === 'close') await rehearsal.moveTo(await closingTime(rehearsal, today));
  else throw new Error('The calendar moves on by hour, day, week or close.');
  return { now: rehearsal.deps.clock.now().toISOString() };
}

async function closingTime({ deps, workspaceId }: Rehearsal, today: string): Promise<Date> {
  const sprint = await deps.store.read(async (read) => {
    const team = await read.teamByChannel(workspaceId, TEAM_CHANNEL_ID);
    return team && currentSprint(await read.openSprintsOf(team.id), today);
  });
  if (!sprint) throw new Error(say('rehearsal-no-sprint'));
  return sprint.closesAtInstant;
}
