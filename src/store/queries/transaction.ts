/** Composes the query modules into the one object that the use cases see. */
import type { Transaction } from '../../app/ports/store.ts';
import type { JobSender } from '../queue/job-sender.ts';
import { cardQueries } from './card-queries.ts';
import { clockQueries } from './clock-queries.ts';
import { draftQueries } from './draft-queries.ts';
import { erasureQueries } from './erasure-queries.ts';
import { eventQueries } from './event-queries.ts';
import { historyQueries } from './history-queries.ts';
import { installationQueries } from './installation-queries.ts';
import { personQueries } from './person-queries.ts';
import { postQueries } from './post-queries.ts';
import { promptQueries } from './prompt-queries.ts';
import { reductionQueries } from './reduction-queries.ts';
import { resultQueries } from './result-queries.ts';
import { sprintQueries } from './sprint-queries.ts';
import type { SqlSession } from './sql-session.ts';
import { teamQueries } from './team-queries.ts';

export function transactionOver(session: SqlSession, sender: JobSender): Transaction {
  return {
    ...teamQueries(session),
    ...sprintQueries(session),
    ...resultQueries(session),
    ...historyQueries(session),
    ...cardQueries(session),
    ...promptQueries(session),
    ...clockQueries(session),
    ...postQueries(session, sender),
    ...draftQueries(session),
    ...eventQueries(session),
    ...personQueries(session),
    ...erasureQueries(session),
    ...reductionQueries(session),
    ...installationQueries(session, sender),
  };
}
