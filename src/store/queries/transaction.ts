/** Composes the query modules into what the use cases see. */
import type { Reading, Transaction, Writing } from '../../app/ports/store.ts';
import type { JobSender } from '../queue/job-sender.ts';
import { bodyReading, bodyWriting } from './body-queries.ts';
import { cardReading, cardWriting } from './card-queries.ts';
import { endedTeamReading } from './ended-team-queries.ts';
import { peopleWriting } from './erasure-queries.ts';
import { experimentReading, experimentWriting } from './experiment-queries.ts';
import { historyReading, historyWriting } from './history-queries.ts';
import { importsAside, importWriting } from './import-queries.ts';
import { installationReading, installationWriting } from './installation-queries.ts';
import { claims, locks } from './lock-queries.ts';
import { peopleReading } from './person-queries.ts';
import { postReading, postWriting } from './post-queries.ts';
import { promptReading, promptWriting } from './prompt-queries.ts';
import { removalWriting } from './removal-queries.ts';
import {
  draftReading,
  drafts,
  eventMemory,
  eventReading,
  visitMemory,
  visitReading,
} from './repeatable-queries.ts';
import { resultReading, resultWriting } from './result-queries.ts';
import { retentionWriting } from './retention-queries.ts';
import { sprintReading, sprintWriting } from './sprint-queries.ts';
import type { SqlSession } from './sql-session.ts';
import { teamReading, teamWriting } from './team-queries.ts';
import { watchWriting } from './watch-queries.ts';

export function readingOver(session: SqlSession): Reading {
  return {
    ...teamReading(session),
    ...endedTeamReading(session),
    ...sprintReading(session),
    ...resultReading(session),
    ...historyReading(session),
    ...experimentReading(session),
    ...bodyReading(session),
    ...cardReading(session),
    ...promptReading(session),
    ...postReading(session),
    ...peopleReading(session),
    ...installationReading(session),
    ...draftReading(session),
    ...eventReading(session),
    ...visitReading(session),
  };
}

export function transactionOver(session: SqlSession, sender: JobSender): Transaction {
  let write: Writing | undefined;
  return {
    read: readingOver(session),
    lock: locks(session),
    claim: claims(session),
    // Most transactions only read.
    get write() {
      write ??= writingOver(session, sender);
      return write;
    },
    drafts: drafts(session),
    events: eventMemory(session),
    visits: visitMemory(session),
    aside: importsAside(session),
  };
}

function writingOver(session: SqlSession, sender: JobSender): Writing {
  return {
    teams: teamWriting(session),
    sprints: sprintWriting(session),
    watches: watchWriting(session),
    results: resultWriting(session),
    history: historyWriting(session),
    experiments: experimentWriting(session),
    bodies: bodyWriting(session),
    cards: cardWriting(session),
    prompts: promptWriting(session, sender),
    posts: postWriting(session, sender),
    people: peopleWriting(session),
    retention: retentionWriting(session),
    removals: removalWriting(session),
    installations: installationWriting(session),
    imports: importWriting(session),
  };
}
