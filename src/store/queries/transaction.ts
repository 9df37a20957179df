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

type Maker<Of> = (session: SqlSession, sender: JobSender) => Partial<Of>;

/**
 * The methods of all makers over a session. Each maker runs when one of its methods is asked for: most transactions need a few
 * of the hundreds, and to make all of them took a twentieth of an answer.
 */
function onDemand<Of extends object>(
  makers: readonly Maker<Of>[],
): (session: SqlSession, sender?: JobSender) => Of {
  const makerOf = new Map(
    makers.flatMap((make) =>
      Object.keys(make(undefined as never, undefined as never)).map((name) => [name, make]),
    ),
  );
  // What is spread must have the names.
  const named = Object.fromEntries([...makerOf.keys()].map((name) => [name, undefined]));
  return (session, sender) => {
    const made = new Map<Maker<Of>, Partial<Of>>();
    return new Proxy(named, {
      get(_, name) {
        const make = makerOf.get(name as string);
        if (!make) return undefined;
        const methods = made.get(make) ?? make(session, sender as JobSender);
        made.set(make, methods);
        return Reflect.get(methods, name);
      },
    }) as Of;
  };
}

const reading = onDemand<Reading>([
  teamReading,
  endedTeamReading,
  sprintReading,
  resultReading,
  historyReading,
  experimentReading,
  bodyReading,
  cardReading,
  promptReading,
  postReading,
  peopleReading,
  installationReading,
  draftReading,
  eventReading,
  visitReading,
]);

const writing = onDemand<Writing>([
  (session) => ({ teams: teamWriting(session) }),
  (session) => ({ sprints: sprintWriting(session) }),
  (session) => ({ watches: watchWriting(session) }),
  (session) => ({ results: resultWriting(session) }),
  (session) => ({ history: historyWriting(session) }),
  (session) => ({ experiments: experimentWriting(session) }),
  (session) => ({ bodies: bodyWriting(session) }),
  (session) => ({ cards: cardWriting(session) }),
  (session, sender) => ({ prompts: promptWriting(session, sender) }),
  (session, sender) => ({ posts: postWriting(session, sender) }),
  (session) => ({ people: peopleWriting(session) }),
  (session) => ({ retention: retentionWriting(session) }),
  (session) => ({ removals: removalWriting(session) }),
  (session) => ({ installations: installationWriting(session) }),
  (session) => ({ imports: importWriting(session) }),
]);

export function readingOver(session: SqlSession): Reading {
  return reading(session);
}

export function transactionOver(session: SqlSession, sender: JobSender): Transaction {
  return {
    read: readingOver(session),
    lock: locks(session),
    claim: claims(session),
    write: writing(session, sender),
    drafts: drafts(session),
    events: eventMemory(session),
    visits: visitMemory(session),
    aside: importsAside(session),
  };
}
