/**
 * What the clock makes happen: daily prompts, one reminder, the last call, and closing. Each reads what is
 * due from the database and claims it, so that any number of processes share the work, a missed hour is
 * caught up with, and a missed day is not asked about afterwards.
 */
import type { Day } from '../../sprint/calendar.ts';
import { memberShareOf } from '../../sprint/work-calendar.ts';
import { needsNoLastCall } from '../answering/prompt-content.ts';
import { isOpenCard, statesOf } from '../cards/card-line.ts';
import { goalQuestions } from '../closing/ask-goal.ts';
import { closeNow } from '../closing/end-sprint.ts';
import { valueQuestions } from '../history/ask-value.ts';
import { type Claiming, failAtOnce, type NotePassedOver, portions } from '../in-portions.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { DueSprint } from '../ports/locks.ts';
import type { AskedPrompt } from '../ports/sprints.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import { directPost } from '../posting/post-kinds.ts';
import type { NewPost } from '../posting/posts.ts';
import { todayOf } from '../team/place.ts';
import { type Member, type Sprint, type SprintRecords, type Team, workersOf } from '../team/team.ts';
import { lookPeopleUp } from './look-people-up.ts';
import { promptInstant } from './prompt-time.ts';
import { earliest, nextPromptAt, reminderAt, sprintDays } from './sprint-clock.ts';
import { WATCHING_BATCH, watchDueSprints } from './watch-sprints.ts';

/** How many sprints one transaction takes: a batch costs the same few statements as one sprint. */
const BATCH = 500;

/** A message has room for so many; who is on more teams gets a second one. */
const TEAMS_PER_MESSAGE = 3;

/** Closing writes results one by one; a small batch keeps its transaction short. */
const CLOSING_BATCH = 20;

type Ports = Pick<AppDependencies, 'store' | 'clock'>;

/**
 * Does all that is due now. Returns how many sprints were served.
 *
 * @param note hears of each sprint that can't be served, which holds up no other
 */
export async function runDueWork(
  ports: Ports & Pick<AppDependencies, 'directory'>,
  note: NotePassedOver = failAtOnce,
): Promise<number> {
  let served = 0;
  const all = async (mostAtOnce: number, serve: typeof closeDueSprints): Promise<void> => {
    const next = portions(ports.store, mostAtOnce, (claiming) => serve(ports, claiming), note);
    for (let claimed = await next(); claimed > 0; claimed = await next()) served += claimed;
  };
  // Closing first: nobody is asked about a sprint that is over. Asking last: those who
  // are asked only now, because the bot was down, need no reminder as well.
  await all(CLOSING_BATCH, closeDueSprints);
  await all(BATCH, remindDueMembers);
  await all(BATCH, sendDueLastCalls);
  await all(WATCHING_BATCH, watchDueSprints);
  await lookPeopleUp(ports, note);
  await all(BATCH, askDueMembers);
  return served;
}

/** Closes the sprints whose time has come. Returns how many were claimed. */
async function closeDueSprints({ store, clock }: Ports, { portion, claimed }: Claiming): Promise<number> {
  return store.transaction(async (tx) => {
    const now = clock.now();
    const due = await tx.claim.closingsDue(now, portion);
    claimed(due.map(({ sprint }) => sprint.id));
    for (const { team, sprint } of due) {
      await tx.lock.team(team.id);
      await closeNow(tx, team, sprint, now);
    }
    return due.length;
  });
}

/** Asks the members whose prompt time has come. Returns how many sprints were claimed. */
async function askDueMembers({ store, clock }: Ports, { portion, claimed }: Claiming): Promise<number> {
  return store.transaction(async (tx) => {
    const now = clock.now();
    const due = await tx.claim.promptsDue(now, portion);
    claimed(due.map(({ sprint }) => sprint.id));
    if (due.length === 0) return 0;
    const people = await tx.read.peopleOf(due.map(({ team }) => team.id));
    const peopleOf = ({ id }: Team): readonly Member[] => people.get(id) ?? [];
    const asking = due.filter(({ team, sprint }) => isAskingDay(team, sprint, now));
    const busy = (await membersWithOpenCards(tx.read, asking, people, now)).filter(
      ({ team, sprint, member }) => isTurnOf(team, sprint, member, now),
    );
    const wanted = messagesAbout('daily-prompt', busy);
    const fresh = await tx.write.prompts.insert(wanted.prompts);
    const freshIds = new Set(fresh.map(({ postId }) => postId));
    const asks = wanted.posts.filter((post) => freshIds.has(post.id));
    const posts = [...asks, ...(await valueQuestions(tx.read, asking, now))];
    if (posts.length > 0) await tx.write.posts.add(posts);
    const asked = new Set(asking.map(({ sprint }) => sprint.id));
    await tx.write.sprints.updateClocks(
      due.map(({ team, sprint }) => {
        // All others are asked and reminded together, at the team's time.
        const withOwnTime = peopleOf(team).filter(({ ownPrompt }) => ownPrompt !== undefined);
        const reminders = [undefined, ...withOwnTime]
          .filter((member) => asked.has(sprint.id) && isTurnOf(team, sprint, member, now))
          .map((member) => reminderAt(team, sprint, now, member));
        return {
          id: sprint.id,
          nextPromptAt: nextPromptAt(team, peopleOf(team), sprint, now),
          nextReminderAt: earliest([sprint.nextReminderAt, ...reminders]),
          lastCallAt: sprint.lastCallAt,
        };
      }),
    );
    return due.length;
  });
}

/** A prompt is for its own day: after days of standing still only today's is asked. */
function isAskingDay(team: Team, sprint: Sprint, now: Date): boolean {
  return sprintDays(team, sprint).includes(todayOf(team, now)) && now < sprint.closesAtInstant;
}

/** Whether the member's time has come since the sprint's members were last asked; undefined: the team's time. */
function isTurnOf(team: Team, sprint: Sprint, member: Member | undefined, now: Date): boolean {
  const at = promptInstant(team, member, todayOf(team, now));
  return sprint.nextPromptAt !== undefined && sprint.nextPromptAt <= at && at <= now;
}

/** A member who works today and has open cards. */
interface BusyMember {
  readonly team: Team;
  readonly sprint: Sprint;
  readonly userId: string;
  readonly member: Member;
  readonly day: Day;
  readonly records: SprintRecords;
}

interface Messages {
  readonly posts: NewPost[];
  /** With the post that each is asked about by. */
  readonly prompts: AskedPrompt[];
}

/** One message for each person, even if it is about the sprints of several of their teams. */
function messagesAbout(
  kind: 'daily-prompt' | 'reminder' | 'last-call',
  days: readonly Pick<BusyMember, 'team' | 'sprint' | 'userId' | 'day'>[],
): Messages {
  const sameDay = ({ team, userId, day }: (typeof days)[number]): string =>
    `${team.workspaceId} ${userId} ${day}`;
  const posts: NewPost[] = [];
  const prompts: AskedPrompt[] = [];
  for (const ofPerson of Map.groupBy(days, sameDay).values()) {
    for (const [i, { team, sprint, userId, day }] of ofPerson.entries()) {
      if (i % TEAMS_PER_MESSAGE === 0)
        posts.push(directPost(team, userId, { kind, sprintId: sprint.id, userId, day }));
      prompts.push({ sprintId: sprint.id, userId, day, postId: posts.at(-1)?.id });
    }
  }
  return { posts, prompts };
}

async function membersWithOpenCards(
  read: Reading,
  due: readonly DueSprint[],
  people: ReadonlyMap<string, readonly Member[]>,
  now: Date,
): Promise<BusyMember[]> {
  const records = await read.recordsOfMany(due.map(({ sprint }) => sprint.id));
  return due.flatMap(({ team, sprint }) => {
    const day = todayOf(team, now);
    const own = records.get(sprint.id) ?? { cards: [], facts: [] };
    const working = workingOn(team, sprint, people.get(team.id), day);
    return ownersOfOpenCards(own, day).flatMap((userId) => {
      const member = working.get(userId);
      return member ? [{ team, sprint, userId, member, day, records: own }] : [];
    });
  });
}

/** Those who work on the sprint on the day, if only half of it, by their ids. */
function workingOn(
  team: Team,
  sprint: Sprint,
  people: readonly Member[] = [],
  day: Day,
): Map<string, Member> {
  const working = workersOf(people, sprint.id).filter((member) => memberShareOf(team, member, day) > 0);
  return new Map(working.map((member) => [member.userId, member]));
}

function ownersOfOpenCards(records: SprintRecords, day: Day): string[] {
  const open = statesOf(records).filter((state) => isOpenCard(state) && state.card.enteredOn <= day);
  return [...new Set(open.flatMap(({ card }) => card.ownerIds))];
}

/** Reminds, once, those who have not met today's prompt. */
async function remindDueMembers({ store, clock }: Ports, { portion, claimed }: Claiming): Promise<number> {
  return store.transaction(async (tx) => {
    const now = clock.now();
    const due = await tx.claim.remindersDue(now, portion);
    claimed(due.map(({ sprint }) => sprint.id));
    if (due.length === 0) return 0;
    // A last call that is due as well says the same and more.
    const inTime = due.filter(
      ({ team, sprint }) =>
        sprint.nextReminderAt &&
        todayOf(team, sprint.nextReminderAt) === todayOf(team, now) &&
        !(sprint.lastCallAt && sprint.lastCallAt <= now),
    );
    const next = await remindUnanswered(tx, inTime, now);
    await tx.write.sprints.updateClocks(
      due.map(({ sprint }) => ({ ...sprint, nextReminderAt: next.get(sprint.id) })),
    );
    return due.length;
  });
}

/**
 * Asks everybody with open cards, before closing on the last day, whether what they said still holds. Not those who said so
 * in the hour before, and not together with a prompt that is late. With it goes the question whether the goal was met.
 */
async function sendDueLastCalls({ store, clock }: Ports, { portion, claimed }: Claiming): Promise<number> {
  return store.transaction(async (tx) => {
    const now = clock.now();
    const due = await tx.claim.lastCallsDue(now, portion);
    claimed(due.map(({ sprint }) => sprint.id));
    if (due.length === 0) return 0;
    const closing = due.filter(({ sprint }) => now < sprint.closesAtInstant);
    const people = await tx.read.peopleOf(closing.map(({ team }) => team.id));
    const busy = (await membersWithOpenCards(tx.read, closing, people, now)).filter(
      ({ team, sprint, member }) => !isTurnOf(team, sprint, member, now),
    );
    const prompts = await tx.read.promptsOf(
      closing.map(({ team, sprint }) => ({ sprintId: sprint.id, day: todayOf(team, now) })),
    );
    const promptOf = new Map(prompts.map((prompt) => [`${prompt.sprintId} ${prompt.userId}`, prompt]));
    const calls = messagesAbout(
      'last-call',
      busy.filter(({ team, sprint, userId, records }) => {
        const prompt = promptOf.get(`${sprint.id} ${userId}`);
        return !needsNoLastCall(team, sprint, userId, records, prompt);
      }),
    );
    const posts = [...calls.posts, ...(await goalQuestions(tx.read, closing, now))];
    if (posts.length > 0) await tx.write.posts.add(posts);
    await tx.write.prompts.called('last-call', calls.prompts);
    await tx.write.sprints.updateClocks(due.map(({ sprint }) => ({ ...sprint, lastCallAt: undefined })));
    return due.length;
  });
}

/** Returns when the next ones of each sprint are due, who were asked later. */
async function remindUnanswered(
  tx: Transaction,
  due: readonly DueSprint[],
  now: Date,
): Promise<Map<string, Date>> {
  const next = new Map<string, Date>();
  if (due.length === 0) return next;
  const sprintOf = new Map(due.map((entry) => [entry.sprint.id, entry]));
  const days = due.map(({ team, sprint }) => ({ sprintId: sprint.id, day: todayOf(team, now) }));
  const people = await tx.read.peopleOf(due.map(({ team }) => team.id));
  const unmet: Pick<BusyMember, 'team' | 'sprint' | 'userId' | 'day'>[] = [];
  for (const { state, sprintId, userId, day, postId, reminderPostId } of await tx.read.promptsOf(days)) {
    const { team, sprint } = sprintOf.get(sprintId) as DueSprint;
    const member = workingOn(team, sprint, people.get(team.id), day).get(userId);
    const isUnanswered = state === 'asked' && postId !== undefined && reminderPostId === undefined;
    if (!isUnanswered || !member) continue;
    const at = reminderAt(team, sprint, promptInstant(team, member, day), member);
    if (at === undefined) continue;
    if (at > now) next.set(sprintId, earliest([next.get(sprintId), at]) as Date);
    else unmet.push({ team, sprint, userId, day });
  }
  const reminders = messagesAbout('reminder', unmet);
  if (reminders.posts.length > 0) await tx.write.posts.add(reminders.posts);
  await tx.write.prompts.called('reminder', reminders.prompts);
  return next;
}
