/**
 * Takes days off that people say in advance: a member their own, for all of their teams; a facilitator the team's. No reason
 * is asked. From then on nobody is asked on these days, and working time counts without them.
 */
import { type Day, daysFromTo } from '../../sprint/calendar.ts';
import { type DayShare, type DaysOff, memberShareOf, withDaysOff } from '../../sprint/work-calendar.ts';
import { resetClocks } from '../clock/sprint-clock.ts';
import { type FarDay, whyTooFar } from '../far-day.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import { Refusal } from '../refusal.ts';
import { membershipAt, membershipInTeam, type Place, requireFacilitator, todayOf } from '../team/place.ts';
import { type Actor, isWorking, type Member, type Team } from '../team/team.ts';
import { type DaySpan, type DaysOffProblem, readDaysOff, whoseDaysOff, whyNotSpan } from './read-days-off.ts';

export interface DaysOffSaid {
  readonly whose: 'own' | 'team';
  /** The teams that the days count for. */
  readonly teams: readonly Team[];
  readonly spans: readonly DaySpan[];
  /** How much of these days is worked; 1: they are taken back. */
  readonly share: DayShare;
  readonly today: Day;
}

/** @throws Refusal `bad-argument`, `not-a-facilitator`, `no-work-to-be-off`, and those of finding the team. */
export async function sayDaysOff(
  deps: AppDependencies,
  actor: Actor,
  { place, words }: { readonly place: Place; readonly words: string },
): Promise<DaysOffSaid> {
  const now = deps.clock.now();
  return deps.store.transaction(async (tx) => {
    const own = await lockedOwnTeams(tx, actor);
    const isOwn = whoseDaysOff(words) === 'own';
    const ofOne = isOwn ? own[0]?.team : undefined;
    const team = ofOne ?? (await membershipAt(tx.read, actor, place)).team;
    const earliest = await firstDayToTake(tx.read, team, now);
    const reading = readDaysOff(words, todayOf(team, now), earliest);
    if ('problem' in reading) throw unread(reading.problem);
    return isOwn ? takeOwn(tx, own, reading.read, now) : takeTeams(tx, actor, team.id, reading.read, now);
  });
}

/** The same for a form that has read the days. The person's teams are locked. */
export async function takeDaysOff(
  tx: Transaction,
  actor: Actor,
  teamId: string,
  { whose, ...taken }: Omit<DaysOffSaid, 'teams' | 'today'>,
  now: Date,
): Promise<DaysOffSaid> {
  const own = await lockedOwnTeams(tx, actor);
  return whose === 'own' ? takeOwn(tx, own, taken, now) : takeTeams(tx, actor, teamId, taken, now);
}

type Taken = Pick<DaysOffSaid, 'spans' | 'share'>;

/** A team on which the person works. */
interface OwnTeam {
  readonly team: Team;
  readonly member: Member;
}

/** The teams on which the person works. */
export async function ownTeams(read: Reading, actor: Actor): Promise<OwnTeam[]> {
  const own: OwnTeam[] = [];
  for (const team of await read.teamsOf(actor)) {
    const member = (await read.membersOf(team.id)).find(({ userId }) => userId === actor.userId);
    if (member && isWorking(member)) own.push({ team, member });
  }
  return own;
}

/** The same, all of the person's teams locked. */
export async function lockedOwnTeams(tx: Transaction, actor: Actor): Promise<OwnTeam[]> {
  await tx.lock.teamsOfPerson(actor);
  return ownTeams(tx.read, actor);
}

async function takeOwn(
  tx: Transaction,
  own: readonly OwnTeam[],
  { spans, share }: Taken,
  now: Date,
): Promise<DaysOffSaid> {
  if (own.length === 0) throw new Refusal('no-work-to-be-off', {});
  let taken: readonly DaySpan[] = [];
  for (const { team, member } of own) {
    taken = await spansToTake(tx, team, { spans, share }, now);
    const daysOff = withSpans(member.daysOff, taken, share);
    await tx.write.teams.saveMembers(team.id, [{ ...member, daysOff }]);
    await freeToday(tx, team, [{ ...member, daysOff }], now);
  }
  const teams = own.map(({ team }) => team);
  return { whose: 'own', teams, spans: taken, share, today: todayOf(teams[0] as Team, now) };
}

async function takeTeams(
  tx: Transaction,
  actor: Actor,
  teamId: string,
  { spans, share }: Taken,
  now: Date,
): Promise<DaysOffSaid> {
  await tx.lock.team(teamId);
  const membership = await membershipInTeam(tx.read, actor, teamId);
  requireFacilitator(membership, 'days-off');
  const { members } = membership;
  const taken = await spansToTake(tx, membership.team, { spans, share }, now);
  const team = { ...membership.team, daysOff: withSpans(membership.team.daysOff, taken, share) };
  await tx.write.teams.save(team);
  await resetClocks(tx, team, now);
  await freeToday(tx, team, members, now);
  return { whose: 'team', teams: [team], spans: taken, share, today: todayOf(team, now) };
}

function withSpans(daysOff: DaysOff, spans: readonly DaySpan[], share: DayShare): DaysOff {
  return withDaysOff(
    daysOff,
    spans.flatMap(({ from, to }) => daysFromTo(from, to)),
    share,
  );
}

/** Today, or the first day of a sprint that is open: somebody may say afterwards that they were off on a day of it. */
export async function firstDayToTake(read: Reading, team: Team, now: Date): Promise<Day> {
  const starts = (await read.openSprintsOf(team.id)).map(({ startsOn }) => startsOn);
  return [todayOf(team, now), ...starts].sort()[0] as Day;
}

/**
 * The spans, checked, from the first day on that still matters.
 *
 * @throws Refusal `bad-argument`
 */
async function spansToTake(
  tx: Transaction,
  team: Team,
  { spans, share }: Taken,
  now: Date,
): Promise<DaySpan[]> {
  const earliest = await firstDayToTake(tx.read, team, now);
  return spans.map((span) => {
    const problem = whyNotSpan(span);
    // What was taken off before can be taken back, wherever it lies.
    const far = share === 1 ? undefined : whyTooFar(span.to, todayOf(team, now));
    if (problem) throw unread(problem);
    if (far) throw unread(far);
    if (span.to < earliest) throw unread({ code: 'off-gone-by', last: span.to });
    return span.from < earliest ? { ...span, from: earliest } : span;
  });
}

function unread(problem: DaysOffProblem | FarDay): Refusal {
  return new Refusal('bad-argument', { command: 'off', problem, example: undefined });
}

/** Those who are off today and were asked already are taken for away: their question waits for no answer any more. */
async function freeToday(tx: Transaction, team: Team, members: readonly Member[], now: Date): Promise<void> {
  const day = todayOf(team, now);
  const off = new Set(
    members.filter((member) => memberShareOf(team, member, day) === 0).map(({ userId }) => userId),
  );
  const sprints = await tx.read.openSprintsOf(team.id);
  const prompts = await tx.read.promptsOf(sprints.map(({ id }) => ({ sprintId: id, day })));
  for (const prompt of prompts) {
    if (prompt.state !== 'asked' || !off.has(prompt.userId)) continue;
    await tx.write.prompts.setState(prompt, 'away', now);
  }
}
