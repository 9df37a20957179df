/** Why posts were not delivered, so that the operator reads what to do about all of one cause together. */
import { classOf } from '../slack/sending/error-classes.ts';
import type { SetAsidePost } from '../store/queue/set-aside-posts.ts';
import type { Messages } from '../words/message-arguments.ts';

type Undelivered = Messages['operator-undelivered'];

/** A group for each cause, in the order in which the causes first appeared. */
export function undeliveredByCause(posts: readonly SetAsidePost[]): Undelivered[] {
  const groups = Map.groupBy(posts, causeOf);
  return [...groups].map(([cause, ofCause]) => ({
    cause,
    count: ofCause.length,
    codes: [...new Set(ofCause.map(({ lastError }) => lastError ?? '?'))].toSorted(),
  }));
}

function causeOf({ reason, lastError = '' }: SetAsidePost): Undelivered['cause'] {
  const known = reason === 'refused' ? classOf(lastError) : undefined;
  return known === undefined || known === 'try-later' || known === 'platform-trouble'
    ? 'tries-failed'
    : known;
}
