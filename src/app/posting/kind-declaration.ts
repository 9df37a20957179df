/** How a kind of post is declared: the fields that it is about, and how what it says is looked up when it is due. */
import type { Day } from '../../sprint/calendar.ts';
import type { Advice } from '../advice/advice.ts';
import { statesOf } from '../cards/card-line.ts';
import type { Transaction } from '../ports/store.ts';
import { todayOf } from '../team/place.ts';
import type { Sprint, SprintRecords, Team } from '../team/team.ts';
import { waitForAll } from '../wait-for-all.ts';
import type { TeamSprint } from '../watching/team-sprint.ts';
import type { Post, SubjectFields } from './posts.ts';

/** What to draw beside the words: the burndown of a sprint, or the picture of an answer. */
export type ChartWanted = TeamSprint | { readonly advice: Advice };

/** What a post says and draws. Undefined: there is nothing to say any more. */
type Made<Content> = { readonly content: Content; readonly chart?: ChartWanted } | undefined;

/** A post that is due, and how to look up what it is about. */
export interface Occasion<Field extends keyof SubjectFields> {
  readonly tx: Transaction;
  readonly post: Post;
  readonly subject: Pick<SubjectFields, Field>;
  readonly now: Date;
}

export interface KindDeclaration<Field extends keyof SubjectFields, Content> {
  /** What a post of the kind is about. */
  readonly fields: readonly Field[];
  /** Nobody needs it brought up to date: what the message that can't be changed says is not wrong, only old. */
  readonly mayStayAsItIs?: true;
  make(occasion: Occasion<Field>): Promise<Made<Content>>;
}

/** About no team, and so about nothing that anybody else could read of. */
export function aboutNothing<Field extends keyof SubjectFields, Content>(
  fields: readonly Field[],
  make: KindDeclaration<Field, Content>['make'],
): KindDeclaration<Field, Content> {
  return { fields, make };
}

export function aboutTeam<Field extends keyof SubjectFields, Content>(
  fields: readonly Field[],
  make: (found: Occasion<Field | 'teamId'> & { readonly team: Team }) => Promise<Made<Content>>,
): KindDeclaration<Field | 'teamId', Content> {
  return {
    fields: ['teamId', ...fields],
    async make(occasion) {
      const team = await occasion.tx.read.teamById(occasion.subject.teamId);
      return team && isOurs(occasion.post, team) ? make({ ...occasion, team }) : undefined;
    },
  };
}

interface FoundSprint extends TeamSprint {
  readonly records: SprintRecords;
}

export function aboutSprint<Field extends keyof SubjectFields, Content>(
  fields: readonly Field[],
  make: (found: Occasion<Field | 'sprintId'> & FoundSprint) => Promise<Made<Content>>,
): KindDeclaration<Field | 'sprintId', Content> {
  return {
    fields: ['sprintId', ...fields],
    async make(occasion) {
      const { sprintId } = occasion.subject;
      const { read } = occasion.tx;
      const [found, records] = await waitForAll([read.sprintWithTeam(sprintId), read.recordsOf(sprintId)]);
      if (!found || !isOurs(occasion.post, found.team)) return undefined;
      return make({ ...occasion, ...found, records, states: statesOf(records) });
    },
  };
}

/** What was to be said on a day is not said on another, nor of a sprint that is over. */
export function isLate(team: Team, sprint: Sprint, day: Day, now: Date): boolean {
  return sprint.state !== 'open' || todayOf(team, now) !== day;
}

/** Nothing of one workspace is shown in another, even if a record says otherwise. */
export function isOurs(post: Post, team: Team): boolean {
  return team.workspaceId === post.workspaceId;
}
