/** What a post is about, between the typed value of the use cases and the columns of the table. */
import type { AdviceQuestion } from '../../app/advice/advice.ts';
import type { PostSubject } from '../../app/posting/posts.ts';
import type { posts } from '../schema.ts';

export type SubjectColumns = Pick<
  typeof posts.$inferSelect,
  'kind' | 'sprintId' | 'teamId' | 'subjectUserId' | 'subjectDay' | 'byUserId' | 'reason' | 'question'
>;

/** Columns that do not belong to the kind are null. */
export function columnsOf(subject: PostSubject): SubjectColumns {
  const given = subject as Partial<Record<string, string>>;
  return {
    kind: subject.kind,
    sprintId: given.sprintId ?? null,
    teamId: given.teamId ?? null,
    subjectUserId: given.userId ?? null,
    subjectDay: given.day ?? given.on ?? null,
    byUserId: given.byUserId ?? null,
    reason: given.reason ?? null,
    question: 'question' in subject ? subject.question : null,
  };
}

/** The check constraint `posts_subject_complete` promises that what the kind needs is there. */
export function subjectOf(row: SubjectColumns): PostSubject {
  const { kind } = row;
  const sprintId = row.sprintId as string;
  const day = row.subjectDay as string;
  const byUserId = row.byUserId as string;
  switch (kind) {
    case 'daily-prompt':
    case 'reminder':
    case 'last-call':
      return { kind, sprintId, userId: row.subjectUserId as string, day };
    case 'team-set-up':
      return { kind, teamId: row.teamId as string, byUserId };
    case 'plan':
      return { kind, sprintId, byUserId };
    case 'verdict':
    case 'owner-needed':
      return { kind, sprintId };
    case 'shared-status':
      return { kind, sprintId, byUserId, on: day };
    case 'shared-advice': {
      const question = row.question as AdviceQuestion;
      return { kind, teamId: row.teamId as string, byUserId, on: day, question };
    }
    case 'cancelled':
      return { kind, sprintId, byUserId, reason: row.reason as string };
  }
}
