/** What a post is about, between the typed value of the use cases and the columns of the table. */
import { POST_KINDS, type PostKind } from '../../app/posting/post-kinds.ts';
import type { PostSubject, SubjectFields } from '../../app/posting/posts.ts';
import { type posts, SUBJECT_COLUMNS } from '../schema/posts.ts';

type Row = typeof posts.$inferSelect;

export type SubjectColumns = Pick<Row, 'kind' | (typeof SUBJECT_COLUMNS)[keyof SubjectFields]>;

const NO_SUBJECT = Object.fromEntries(Object.values(SUBJECT_COLUMNS).map((column) => [column, null]));

/** Columns that do not belong to the kind are null. */
export function columnsOf(subject: PostSubject): SubjectColumns {
  const { kind, ...fields } = subject;
  const filled = Object.entries(fields).map(([name, value]) => [
    SUBJECT_COLUMNS[name as keyof SubjectFields],
    value,
  ]);
  return { kind, ...NO_SUBJECT, ...Object.fromEntries(filled) } as SubjectColumns;
}

/** The check constraint `posts_subject_complete` promises that what the kind needs is there. */
export function subjectOf(row: SubjectColumns): PostSubject {
  const fields: readonly (keyof SubjectFields)[] = POST_KINDS[row.kind as PostKind].fields;
  const filled = fields.map((name) => [name, row[SUBJECT_COLUMNS[name]]]);
  return { kind: row.kind, ...Object.fromEntries(filled) } as PostSubject;
}
