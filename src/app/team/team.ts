/** A team, its people and its sprints, as the use cases know them. */
import type { Day } from '../../sprint/calendar.ts';
import type { Card, CardFact } from '../../sprint/card.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import type { Thresholds } from '../../sprint/thresholds.ts';
import type { OwnCalendar, WorkCalendar } from '../../sprint/work-calendar.ts';
import type { TimeOfDay } from '../clock/local-time.ts';
import type { OwnPrompt } from '../clock/prompt-time.ts';
import type { TeamSettings } from './settings.ts';

/** Who asks: a person in a workspace, as the platform vouched for. */
export interface Actor {
  readonly workspaceId: string;
  readonly userId: string;
}

export interface Team extends TeamSettings, WorkCalendar {
  readonly id: string;
  readonly workspaceId: string;
  /** The channel in which verdicts are posted; one team a channel. */
  readonly channelId: string;
  readonly name: string;
  /** IANA name, e.g. `Europe/Lisbon`. */
  readonly timeZone: string;
  readonly promptAt: TimeOfDay;
  readonly thresholds: Thresholds;
  readonly productOwnerId: string | undefined;
  /** Whether the product owner gets the verdicts in direct messages as well. */
  readonly ownerGetsVerdicts: boolean;
  /**
   * The channel that is shared with another organisation and in which a facilitator wants posts all the same. Says nothing
   * about another channel that the team is in since.
   */
  readonly sharedChannelId?: string | undefined;
  /** The sprint that velocity growth is measured by; undefined: those of the rule. */
  readonly baselineSprintId: string | undefined;
  readonly baselineRule: BaselineRule;
  /** When it was ended; undefined while it goes on. */
  readonly endedAt?: Date | undefined;
  /** When it was taken back last after it had ended: it has as long as a new one to plan a sprint. */
  readonly resumedAt?: Date | undefined;
}

/** The first closed sprint with a velocity, or the median of the first three. */
export type BaselineRule = 'first' | 'first-three';

export interface Member extends OwnCalendar {
  readonly userId: string;
  readonly name: string;
  readonly isFacilitator: boolean;
  /** False for somebody who has no part in the work of each sprint: a facilitator or product owner alone, or a guest. */
  readonly isMember: boolean;
  /** The sprints in which they take part as a guest. */
  readonly guestIn: readonly GuestStay[];
  /** When they want to be asked; undefined: at the team's time. */
  readonly ownPrompt?: OwnPrompt | undefined;
  /** When the morning digest goes to a facilitator; undefined: none is wanted. */
  readonly digestAt?: TimeOfDay | undefined;
  /** False for a guest of the workspace, by what the platform said last; undefined: they may. */
  readonly mayFacilitate?: false | undefined;
  /** Whether the verdicts come to their direct messages as well. */
  readonly getsVerdicts: boolean;
  /** False after leaving the team; their answers stay. */
  readonly isActive: boolean;
}

/** What somebody is on a team. */
export type Role = 'member' | 'facilitator' | 'product-owner';

/** The part of somebody who works in one sprint of the team only. */
export interface GuestStay {
  readonly sprintId: string;
  /** Their first day in it. */
  readonly from: Day;
  /** The first day no more in it; undefined while they belong to it. */
  readonly until: Day | undefined;
}

/** Those who do the team's work now, sprint after sprint; without guests. */
export function activeMembers<Person extends Pick<Member, 'isActive' | 'isMember'>>(
  people: readonly Person[],
): Person[] {
  return people.filter(({ isActive, isMember }) => isActive && isMember);
}

/** Whether the person has a part in the team's work now, as a member or as a guest of an open sprint. */
export function isWorking({ isActive, isMember, guestIn }: Member): boolean {
  return isActive && (isMember || guestIn.some(({ until }) => until === undefined));
}

/** Those who do the work of the sprint now, its guests with the days of their stay. */
export function workersOf(people: readonly Member[], sprintId: string): Member[] {
  return everWorkersOf(people, sprintId).filter(({ isActive }) => isActive);
}

/** The same with those who left since. */
export function everWorkersOf(people: readonly Member[], sprintId: string): Member[] {
  return people.flatMap((person) => inSprint(person, sprintId) ?? []);
}

/** Of those, who is still there or left when it is known. */
export function datedWorkersOf(people: readonly Member[], sprintId: string): Member[] {
  return dated(everWorkersOf(people, sprintId));
}

/** The members of today, and those who left when it is known; without guests. */
export function datedMembers(people: readonly Member[]): Member[] {
  return dated(people.filter(({ isMember }) => isMember));
}

function dated(people: readonly Member[]): Member[] {
  return people.filter(({ isActive, leftOn }) => isActive || leftOn !== undefined);
}

export function worksIn(person: Member, sprintId: string): boolean {
  return workersOf([person], sprintId).length > 0;
}

function inSprint(person: Member, sprintId: string): Member | undefined {
  const stay = person.guestIn.find((one) => one.sprintId === sprintId);
  if (!stay) return person.isMember ? person : undefined;
  const { from, until } = stay;
  const { isMember, isActive, joinedOn } = person;
  // A guest who became a member in the sprint has been there since they came as a guest.
  if (isMember) return { ...person, joinedOn: joinedOn && [joinedOn, from].sort()[0] };
  return {
    ...person,
    isMember: true,
    isActive: isActive && until === undefined,
    joinedOn: from,
    leftOn: until,
  };
}

/** Whether they hear of the team's sprints by themselves. */
export function wantsDigest<Person extends Member>(
  person: Person,
): person is Person & { readonly digestAt: TimeOfDay } {
  return person.isActive && person.isFacilitator && person.digestAt !== undefined;
}

/** Whether the clock looks at the team's running sprints, to speak of them by itself. */
export function isWatched({ weeklyLine }: Pick<Team, 'weeklyLine'>, people: readonly Member[]): boolean {
  return weeklyLine || people.some(wantsDigest);
}

/** `open` from planning until it is closed; a reopened sprint is open again. */
export type SprintState = 'open' | 'closed' | 'cancelled';

export type GoalMet = 'yes' | 'partly' | 'no';

/** Whether the sprint's goal was met, in the view of its product owner or a facilitator. */
export interface GoalOutcome {
  readonly met: GoalMet;
  /** In their words; may be empty. */
  readonly note: string;
  readonly saidBy: string;
  readonly saidAt: Date;
}

export interface Sprint {
  readonly id: string;
  readonly teamId: string;
  readonly name: string;
  readonly goal: string;
  readonly startsOn: Day;
  readonly endsOn: Day;
  readonly closesAt: TimeOfDay;
  /** The instant at which it closes by itself; moves when the sprint is reopened. */
  readonly closesAtInstant: Date;
  readonly state: SprintState;
  /** When it was first closed or cancelled; undefined while it never was. */
  readonly closedAt: Date | undefined;
  /** When it was last reopened; undefined if never. */
  readonly reopenedAt: Date | undefined;
  /** What the clock does next with this sprint; undefined: nothing more. */
  readonly nextPromptAt: Date | undefined;
  readonly nextReminderAt: Date | undefined;
  readonly lastCallAt: Date | undefined;
  /**
   * Days off and away of all members together that its plan names, recorded ones and holidays among them; undefined: none.
   */
  readonly awayDays?: number | undefined;
  /** When its plan was committed to. */
  readonly plannedAt?: Date | undefined;
  /** When it was imported; undefined for a sprint that Loadline ran itself. An imported one is closed and stays so. */
  readonly importedAt: Date | undefined;
  /** Undefined while nobody has said. */
  readonly goalOutcome?: GoalOutcome | undefined;
}

/** What names a sprint at the head of a message or form. */
export interface SprintHeading {
  readonly team: Pick<Team, 'id' | 'name' | 'timeZone'>;
  readonly sprint: Pick<
    Sprint,
    'id' | 'name' | 'goal' | 'startsOn' | 'endsOn' | 'closesAt' | 'closesAtInstant' | 'state'
  >;
}

export interface SprintCard extends Card {
  /** A web address, as `cardLink` makes it. */
  readonly link?: string | undefined;
  readonly sprintId: string;
  /** What people call the card by in a command: 1, 2, 3, … in the order of entering. */
  readonly number: number;
  readonly addedBy: string;
}

/** A fact with its record: who said it when and how, and which earlier one it corrects. */
export type RecordedFact = CardFact & {
  readonly id: string;
  readonly recordedAt: Date;
  readonly note: string;
  /** For an answer that corrects one: the id of the answer that it takes the place of. */
  readonly supersedesId: string | undefined;
};

/** A fact before the store has given it its place in the order. */
export type NewFact = RecordedFact extends infer F
  ? F extends RecordedFact
    ? Omit<F, 'order'>
    : never
  : never;

/** Cards and facts of one sprint. */
export interface SprintRecords {
  readonly cards: readonly SprintCard[];
  readonly facts: readonly RecordedFact[];
}

/** How a member met a day's prompt. `asked`: not answered yet. */
export type PromptState = 'asked' | 'answered' | 'unchanged' | 'away';

export interface Prompt {
  readonly sprintId: string;
  readonly userId: string;
  readonly day: Day;
  readonly state: PromptState;
  /** The post that asked; undefined when the member spoke up before being asked. */
  readonly postId: string | undefined;
  /** The post that reminded of it, and the one that called last; undefined: none did. */
  readonly reminderPostId?: string | undefined;
  readonly lastCallPostId?: string | undefined;
  readonly answeredAt: Date | undefined;
}

/** The numbers of a sprint as they were posted. A later closing adds a version, it edits none. */
export interface SprintResult {
  readonly sprintId: string;
  readonly version: number;
  readonly recordedAt: Date;
  readonly cancelled: boolean;
  readonly summary: SprintSummary;
}
