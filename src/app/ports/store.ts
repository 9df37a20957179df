/** What the use cases need of the store. */
import type { Day } from '../../sprint/calendar.ts';
import type { HistoryQueries } from '../history/history-ports.ts';
import type { PlanInput } from '../planning/plan-input.ts';
import type { NewPost, Post, PostedAt, PostState } from '../posting/posts.ts';
import type { PeopleQueries } from '../privacy/privacy-ports.ts';
import type {
  Actor,
  Member,
  NewFact,
  Prompt,
  PromptState,
  RecordedFact,
  Sprint,
  SprintCard,
  SprintRecords,
  SprintResult,
  Team,
} from '../team/team.ts';
import type { InstallationQueries } from '../workspaces/installation-ports.ts';

/** An open sprint for which the clock has something to do, with its team. The row is locked. */
export interface DueSprint {
  readonly team: Team;
  readonly sprint: Sprint;
}

/** A sprint that was closed or cancelled, with its latest result. */
export interface FinishedSprint {
  readonly sprint: Sprint;
  readonly result: SprintResult;
}

/** Everything inside one transaction. All of it happens or none of it does. */
export interface Transaction extends HistoryQueries, InstallationQueries, PeopleQueries {
  // Teams and members.
  teamById(teamId: string): Promise<Team | undefined>;
  teamByChannel(workspaceId: string, channelId: string): Promise<Team | undefined>;
  /** The channel's team with all members, those who left included, in order of name, and its open sprints, earliest first. */
  teamInChannel(
    workspaceId: string,
    channelId: string,
  ): Promise<{ team: Team; members: Member[]; openSprints: Sprint[] } | undefined>;
  /** Teams of which the person is an active member. */
  teamsOf(actor: Actor): Promise<Team[]>;
  /** Teams of which the person is the product owner, whether a member or not. */
  teamsOwnedBy(actor: Actor): Promise<Team[]>;
  /** Waits until no other transaction holds this team, and holds it until this one ends. */
  lockTeam(teamId: string): Promise<void>;
  /**
   * Inserts the team or replaces its settings (by id).
   * @throws Refusal `channel-has-a-team` when another team has the channel.
   */
  saveTeam(team: Team): Promise<void>;
  /** All members, those who left included, in order of name. */
  membersOf(teamId: string): Promise<Member[]>;
  /** The ids of the active members of each of these teams, in one statement. */
  activeMemberIds(teamIds: readonly string[]): Promise<Map<string, ReadonlySet<string>>>;
  /** Inserts or updates these members; the others stay as they are. */
  saveMembers(teamId: string, members: readonly Member[]): Promise<void>;

  // Sprints.
  /** The sprint with its team and all members of it, those who left included, in order of name. */
  sprintWithTeam(sprintId: string): Promise<{ sprint: Sprint; team: Team; members: Member[] } | undefined>;
  /** The same, with the team locked as by `lockTeam`: what is asked for after it, even beside it, is read under the lock. */
  lockSprintWithTeam(sprintId: string): ReturnType<Transaction['sprintWithTeam']>;
  sprintById(sprintId: string): Promise<Sprint | undefined>;
  /** All sprints of the team, whatever their state, earliest first. */
  sprintsOf(teamId: string): Promise<Sprint[]>;
  /** Open sprints of the team, earliest first. */
  openSprintsOf(teamId: string): Promise<Sprint[]>;
  /** The closed or cancelled sprint with the latest last day. */
  latestFinishedSprint(teamId: string): Promise<Sprint | undefined>;
  insertSprint(sprint: Sprint): Promise<void>;
  updateSprint(sprint: Sprint): Promise<void>;
  /** Writes the clock's fields of many sprints in one statement. */
  updateSprintClocks(
    sprints: readonly Pick<Sprint, 'id' | 'nextPromptAt' | 'nextReminderAt' | 'lastCallAt'>[],
  ): Promise<void>;
  insertResult(result: SprintResult): Promise<void>;
  latestResult(sprintId: string): Promise<SprintResult | undefined>;
  /** Closed (not cancelled) sprints with their latest result, by last day, oldest first. */
  closedSprintsOf(teamId: string): Promise<FinishedSprint[]>;
  /**
   * Velocity of the team's baseline sprint: the named one, else the first closed one with a velocity
   * above 0; never `exceptSprintId`. Undefined when there is none.
   */
  baselineVelocityPoints(team: Team, exceptSprintId: string): Promise<number | undefined>;

  // Cards and what was said of them.
  recordsOf(sprintId: string): Promise<SprintRecords>;
  /** The records of many sprints in as few statements as of one. */
  recordsOfMany(sprintIds: readonly string[]): Promise<Map<string, SprintRecords>>;
  insertCards(cards: readonly SprintCard[]): Promise<void>;
  addOwner(cardId: string, userId: string): Promise<void>;
  /** Gives the facts back with their places in the order. */
  insertFacts(facts: readonly NewFact[]): Promise<RecordedFact[]>;

  // Prompts.
  /** Inserts prompts in state `asked`; gives back those that did not exist yet. */
  insertPrompts(
    prompts: readonly Pick<Prompt, 'sprintId' | 'userId' | 'day' | 'postId'>[],
  ): Promise<Pick<Prompt, 'sprintId' | 'userId' | 'day' | 'postId'>[]>;
  promptOf(sprintId: string, userId: string, day: Day): Promise<Prompt | undefined>;
  /** The prompts of these days of these sprints. */
  promptsOf(days: readonly { sprintId: string; day: Day }[]): Promise<Prompt[]>;
  /** Inserts the prompt or sets its state. Gives back the post that asked, if one did. */
  setPromptState(
    prompt: Pick<Prompt, 'sprintId' | 'userId' | 'day'>,
    state: PromptState,
    answeredAt: Date,
  ): Promise<string | undefined>;
  /** The prompt that a delivered post asked. */
  promptByPost(workspaceId: string, at: PostedAt): Promise<Prompt | undefined>;

  // The clock. Rows that another process holds are passed over, so none is done twice.
  claimPromptsDue(now: Date, limit: number): Promise<DueSprint[]>;
  claimRemindersDue(now: Date, limit: number): Promise<DueSprint[]>;
  claimLastCallsDue(now: Date, limit: number): Promise<DueSprint[]>;
  claimClosingsDue(now: Date, limit: number): Promise<DueSprint[]>;

  /** When the clock has something to do next; undefined: nothing is planned. */
  nextDueAt(): Promise<Date | undefined>;

  // Posts.
  /** Records the posts and queues their delivery, in this transaction. */
  addPosts(posts: readonly NewPost[]): Promise<void>;
  /** Raises the wanted version of a post and queues its delivery. */
  refreshPost(postId: string): Promise<void>;
  /** How many posts still have to be delivered or brought up to date. */
  countUnsentPosts(): Promise<number>;
  postById(postId: string): Promise<Post | undefined>;
  /** The latest post about the sprint of this kind. */
  postAbout(sprintId: string, kind: Post['subject']['kind']): Promise<Post | undefined>;
  /**
   * Locks the post until the transaction ends. Undefined when another deliverer has it: the row is locked,
   * or it is `sending` since less than a minute by the database's own clock.
   */
  claimPost(postId: string): Promise<Post | undefined>;
  updatePost(
    postId: string,
    change: {
      readonly state: PostState;
      readonly postedAt?: PostedAt;
      readonly sentVersion?: number;
      readonly firstAttemptAt?: Date;
      readonly lastError?: string;
    },
  ): Promise<void>;

  // Drafts: what somebody typed into the plan form and has not committed to yet. One a team and person.
  saveDraft(teamId: string, userId: string, draft: PlanInput): Promise<void>;
  draftOf(teamId: string, userId: string): Promise<PlanInput | undefined>;
  deleteDraft(teamId: string, userId: string): Promise<void>;

  /** Remembers an incoming event's id; false when it has been seen before. */
  rememberEvent(eventId: string, at: Date): Promise<boolean>;
  /** Whether it was remembered. */
  knowsEvent(eventId: string): Promise<boolean>;
}

export interface Store {
  transaction<T>(work: (tx: Transaction) => Promise<T>): Promise<T>;
  /** What is one statement, which is carried out whole or not at all without a transaction around it. */
  readonly single: Pick<Transaction, 'rememberEvent' | 'updatePost'>;
}
