/** Whether the database can be used: reached, recent enough, up to date, writable, keeping up. */
import type { Config } from '../config.ts';
import { type DatabaseFacts, dataFolderFacts, postgresFacts } from '../store/database-facts.ts';
import { StoreError } from '../store/store-error.ts';
import { clockFinding } from './check-clock.ts';
import { checkTokenKeys } from './check-token-keys.ts';
import { type Finding, findingsOf } from './finding.ts';

const { ok, warning, mend } = findingsOf('database');

/** What one process of the bot opens, with some to spare. */
const CONNECTIONS_A_PROCESS = 20;
/** A post that waits longer than this is not merely in a queue of a busy morning. */
const OLD_POST_SECONDS = 900;
const READ_ONLY_SQL_STATE = '25006';

export async function checkDatabase(
  config: Pick<Config, 'databaseUrl' | 'dataFolder'> & Partial<Pick<Config, 'access'>>,
): Promise<Finding[]> {
  try {
    const facts =
      config.databaseUrl === undefined
        ? await dataFolderFacts(config.dataFolder)
        : await postgresFacts(config.databaseUrl);
    if (!facts) return [ok('None yet; the first start makes it in the data folder.')];
    const ofKeys = config.access ? checkTokenKeys(config.access, facts.tokenKeyNames) : [];
    return [...judge(facts), ...ofKeys];
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    if (error.code === 'data-folder-in-use') {
      return [ok('In use by a running bot, as it should be; stop the bot to look into it.')];
    }
    return [mend(error.message, error.mend)];
  }
}

/** Pure part: what is to be said of these facts. */
export function judge(facts: DatabaseFacts): Finding[] {
  return [
    ok(`Postgres ${facts.serverVersion} answers.`),
    ...aboutMigrations(facts),
    ...aboutWriting(facts),
    ...aboutEncoding(facts),
    ...aboutConnections(facts),
    ...aboutQueue(facts),
    clockFinding('the database', facts.databaseNow, facts.ownNow),
  ];
}

function aboutMigrations({ migrations }: DatabaseFacts): Finding[] {
  if (!migrations) return [ok('No tables yet; the first start makes them.')];
  const { appliedCount, pendingCount, isAhead, isForeign } = migrations;
  if (isForeign) {
    return [
      mend(
        'The migrations that were applied are not those of this version: one of the two was changed.',
        'Run an unchanged release of Loadline, or restore the database from a backup.',
      ),
    ];
  }
  if (isAhead) {
    return [
      warning(
        'A newer version of Loadline has brought the database up to date.',
        'Run that version; an older one may run beside it during an upgrade, but not for good.',
      ),
    ];
  }
  return pendingCount === 0
    ? [ok(`All ${appliedCount} migrations are applied.`)]
    : [
        warning(
          `Migrations that wait to be applied: ${pendingCount}.`,
          'Start this version; it applies them.',
        ),
      ];
}

function aboutWriting({ writeRefusal, migrations }: DatabaseFacts): Finding[] {
  if (writeRefusal === undefined) return [ok('It can be written to.')];
  if (writeRefusal === READ_ONLY_SQL_STATE) {
    return [
      mend(
        'The database only lets itself be read.',
        'Point DATABASE_URL at the primary server, not at a replica.',
      ),
    ];
  }
  return [
    mend(
      `The database user may not ${migrations ? 'write to the tables' : 'create schemas'} (${writeRefusal}).`,
      'Make the user the owner of the database and of the schemas loadline and pgboss.',
    ),
  ];
}

function aboutEncoding({ encoding }: DatabaseFacts): Finding[] {
  if (encoding === 'UTF8') return [];
  return [
    mend(
      `The database is encoded in ${encoding}, which can't hold everybody's words.`,
      'Make a database with ENCODING UTF8, and restore a backup into it.',
    ),
  ];
}

function aboutConnections({ freeConnections }: DatabaseFacts): Finding[] {
  if (freeConnections === undefined || freeConnections >= CONNECTIONS_A_PROCESS) return [];
  return [
    warning(
      `The server has ${freeConnections} connections left; one process of the bot needs up to ${CONNECTIONS_A_PROCESS}.`,
      "Raise the server's max_connections, or run fewer processes on it.",
    ),
  ];
}

function aboutQueue({ queue, refusedCount }: DatabaseFacts): Finding[] {
  if (!queue) return [];
  const { waitingCount, oldestSeconds, givenUpCount } = queue;
  const isOld = oldestSeconds > OLD_POST_SECONDS;
  return [
    isOld
      ? warning(
          `${waitingCount} posts wait to be delivered, one of them for ${Math.round(oldestSeconds / 60)} minutes.`,
          'See that the bot runs and the platform answers; the log says why deliveries fail.',
        )
      : ok(`${waitingCount} posts wait to be delivered.`),
    ...(givenUpCount === 0
      ? []
      : [
          warning(
            `${givenUpCount} posts were given up after they failed for the last time.`,
            'Look for "post given up" in the log; npm run posts -- list names them, and docs/operating.md says how to send them again.',
          ),
        ]),
    ...(refusedCount === 0
      ? []
      : [
          warning(
            `${refusedCount} posts were refused by the platform for good.`,
            'npm run posts -- list says why: mend the cause and send them again, or drop them.',
          ),
        ]),
  ];
}
