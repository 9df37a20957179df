/**
 * The use cases on a real Postgres, with an invented team, a clock that tests set, and a platform that only remembers.
 * Every harness begins with an empty database.
 */
import { sql } from 'drizzle-orm';
import { beforeEach } from 'vitest';
import type { TypedAnswer } from '../../src/app/answering/read-answers.ts';
import type { AnswerOutcome } from '../../src/app/answering/record-answers.ts';
import { recordAnswers } from '../../src/app/answering/record-answers.ts';
import { runDueWork } from '../../src/app/clock/ask-members.ts';
import { decoded } from '../../src/app/csv/given-file.ts';
import type { PlanContent } from '../../src/app/planning/plan-content.ts';
import type { PlanInput } from '../../src/app/planning/plan-input.ts';
import { commitPlan, previewPlan } from '../../src/app/planning/plan-sprint.ts';
import type { AppDependencies } from '../../src/app/ports/app-dependencies.ts';
import type { Reading, Transaction } from '../../src/app/ports/store.ts';
import { deliverPost } from '../../src/app/posting/deliver.ts';
import type { MessageContent } from '../../src/app/posting/post-kinds.ts';
import type { RefusalCode, RefusalDetails } from '../../src/app/refusal.ts';
import { Refusal } from '../../src/app/refusal.ts';
import type { Place } from '../../src/app/team/place.ts';
import type { SetupInput } from '../../src/app/team/set-up-team.ts';
import { setUpTeam } from '../../src/app/team/set-up-team.ts';
import type { Actor, Sprint, SprintRecords, Team } from '../../src/app/team/team.ts';
import { publicHolidays } from '../../src/calendars/public-holidays.ts';
import { readCalendarFile } from '../../src/calendars/read-calendar-file.ts';
import type { Database } from '../../src/store/database.ts';
import { problemWords } from '../../src/words/problems.ts';
import { emptyDatabase } from './databases.ts';
import { FakeDirectory, RecordingCharts, RecordingMessenger } from './fake-platform.ts';
import { readHere } from './read-here.ts';
import { rowsOf } from './rows-of.ts';

export const WORKSPACE = 'W1';

/** Ana facilitates, Ben and Chi are members, Dayo is a stranger in the same workspace. */
export const PEOPLE = { ana: 'UANA', ben: 'UBEN', chi: 'UCHI', dayo: 'UDAYO' } as const;
export type PersonName = keyof typeof PEOPLE;

const NAMES = { ana: 'Ana Lima', ben: 'Ben Ode', chi: 'Chi Wen', dayo: 'Dayo Okoro' } as const;

export const CHANNEL: Place = { channelId: 'C1', isDirect: false };

export function actorOf(name: PersonName, workspaceId: string = WORKSPACE): Actor {
  return { workspaceId, userId: PEOPLE[name] };
}

export function directMessagesOf(name: PersonName): Place {
  return { channelId: `D-${PEOPLE[name]}`, isDirect: true };
}

/** A card's answer as typed; what is left out was not given. */
type ShortAnswer = { readonly left: string } & Partial<Omit<TypedAnswer, 'cardId' | 'left'>>;

export class Harness {
  readonly database: Database;
  readonly messenger = new RecordingMessenger();
  readonly charts = new RecordingCharts();
  readonly directory: FakeDirectory;
  readonly deps: AppDependencies;
  #now: Date;

  constructor(database: Database, now: string) {
    this.database = database;
    this.#now = new Date(now);
    this.directory = new FakeDirectory(
      Object.entries(PEOPLE).map(([name, userId]) => ({
        userId,
        name: NAMES[name as PersonName],
        timeZone: 'Europe/Lisbon',
        isBot: false,
        isDeactivated: false,
        isGuest: false,
        isOutsider: false,
        isAdmin: false,
      })),
    );
    this.deps = {
      store: database.store,
      clock: { now: () => this.#now },
      directory: this.directory,
      calendars: {
        read: async (file, window) => readCalendarFile(decoded(file).text, window),
        holidays: async (typed, window) => publicHolidays(typed, window),
      },
      files: readHere,
      charts: this.charts,
      messenger: this.messenger,
    };
  }

  /** Sets the clock, without anything being done about it. */
  set(now: string): void {
    this.#now = new Date(now);
  }

  /** Sets the clock, does what is due, and delivers. */
  async pass(to: string): Promise<void> {
    this.set(to);
    await this.tick();
    await this.drain();
  }

  async tick(): Promise<number> {
    return runDueWork(this.deps);
  }

  /** Delivers every post that is not up to date, in the order of their recording. */
  async drain(): Promise<void> {
    for (const id of await this.owedPostIds()) await deliverPost(this.deps, id);
  }

  async owedPostIds(): Promise<string[]> {
    const owed = await rowsOf<{ id: string }>(
      this.database,
      sql`select id from loadline.posts where sent_version < wanted_version
        and state not in ('dead', 'skipped') order by entry_order`,
    );
    return owed.map(({ id }) => id);
  }

  async owedKinds(): Promise<string[]> {
    const ids = await this.owedPostIds();
    return this.read(async (read) => {
      const kinds: string[] = [];
      for (const id of ids) kinds.push((await read.postById(id))?.subject.kind ?? 'no such post');
      return kinds;
    });
  }

  read<T>(work: (read: Reading) => Promise<T>): Promise<T> {
    return this.deps.store.read(work);
  }

  write<T>(work: (tx: Transaction) => Promise<T>): Promise<T> {
    return this.deps.store.transaction(work);
  }

  /** Sets the team up, or changes it. */
  saveTeam(change: Partial<SetupInput> = {}, by: Actor = actorOf('ana')): Promise<Team> {
    return setUpTeam(this.deps, by, {
      channelId: CHANNEL.channelId,
      name: 'Tugboats',
      timeZone: 'Europe/Lisbon',
      promptAt: '09:15',
      workingDays: [1, 2, 3, 4, 5],
      memberIds: [PEOPLE.ana, PEOPLE.ben, PEOPLE.chi],
      facilitatorIds: [PEOPLE.ana],
      productOwnerId: undefined,
      ...change,
    });
  }

  /** The same, and forgets the post that says so. */
  async setUpTeam(change: Partial<SetupInput> = {}, by: Actor = actorOf('ana')): Promise<Team> {
    const team = await this.saveTeam(change, by);
    await this.drain();
    this.messenger.messages.length = 0;
    return team;
  }

  /** Two working weeks from Monday 2 November 2026 unless given otherwise. */
  planInput(team: Team, change: Partial<PlanInput> = {}): PlanInput {
    return {
      teamId: team.id,
      name: 'Harbour 12',
      goal: 'Ferries berth by themselves',
      startsOn: '2026-11-02',
      endsOn: '2026-11-13',
      closesAt: '17:00',
      awayDays: '',
      cards: 'Tide table, 5, @Ben\nCrane log, 3, @Chi\nPilot roster, 2, @Ben @Chi',
      ...change,
    };
  }

  async plan(team: Team, change: Partial<PlanInput> = {}): Promise<PlanContent & { sprint: Sprint }> {
    await previewPlan(this.deps, actorOf('ana'), this.planInput(team, change));
    const plan = await commitPlan(this.deps, actorOf('ana'), { teamId: team.id });
    return { ...plan, sprint: await this.sprint(plan.sprint.id) };
  }

  async sprint(sprintId: string): Promise<Sprint> {
    return (await this.read((read) => read.sprintById(sprintId))) as Sprint;
  }

  async records(sprintId: string): Promise<SprintRecords> {
    return this.read((read) => read.recordsOf(sprintId));
  }

  /** Answers for cards by their number in the sprint. */
  async answer(
    who: PersonName,
    sprintId: string,
    day: string,
    byNumber: Readonly<Record<number, ShortAnswer>>,
  ): Promise<AnswerOutcome> {
    const { cards } = await this.records(sprintId);
    const answers = Object.entries(byNumber).map(([number, given]) => ({
      cardId: cards.find((card) => card.number === Number(number))?.id ?? 'no such card',
      worked: '',
      surprise: '',
      note: '',
      ...given,
    }));
    return recordAnswers(this.deps, actorOf(who), { sprintId, day, answers });
  }

  /** What is in somebody's direct messages, or in a channel, oldest first. */
  messagesTo(where: PersonName | Place): MessageContent[] {
    const channelId = typeof where === 'string' ? `D-${PEOPLE[where]}` : where.channelId;
    return this.messenger.messages
      .filter(({ at }) => at.channelId === channelId)
      .map(({ content }) => content);
  }

  kindsTo(where: PersonName | Place): string[] {
    return this.messagesTo(where).map(({ kind }) => kind);
  }
}

/** A harness over the worker's Postgres database, emptied. */
export async function openHarness({ now }: { readonly now: string }): Promise<Harness> {
  return new Harness(await emptyDatabase('Postgres'), now);
}

/** Gives every test of the file a harness of its own, set to `now`. */
export function harnessForEach(now: string): () => Harness {
  let harness: Harness;
  beforeEach(async () => {
    harness = await openHarness({ now });
  });
  return () => harness;
}

/** The refusal that a use case answers with; fails when it answers with anything else. */
export async function refusalOf<Code extends RefusalCode>(
  attempt: Promise<unknown>,
  code: Code,
): Promise<RefusalDetails[Code]> {
  const outcome = await attempt.then(
    (value) => ({ value }),
    (error: unknown) => ({ error }),
  );
  if (!('error' in outcome)) throw new Error(`expected the refusal ${code}, but it was done`);
  const { error } = outcome;
  if (!(error instanceof Refusal)) throw error;
  if (error.code !== code) {
    throw new Error(`expected the refusal ${code}, not ${error.code}: ${JSON.stringify(error.details)}`);
  }
  return error.details as RefusalDetails[Code];
}

/** The fields that a refused form complains of, with what it says about each. */
export async function problemsOf(attempt: Promise<unknown>): Promise<Record<string, string>> {
  const { problems } = await refusalOf(attempt, 'bad-input');
  return Object.fromEntries(problems.map(({ field, problem }) => [field, problemWords(problem)]));
}
