/** Whether the database can be reached, is recent enough, up to date and writable, and keeps up with the posts. */
import type { Access, Config } from '../config.ts';
import { type DatabaseFacts, dataFolderFacts, postgresFacts } from '../store/database-facts.ts';
import { StoreError } from '../store/store-error.ts';
import { clockFinding } from './check-machine.ts';
import type { Finding } from './finding.ts';
import { undeliveredByCause } from './undelivered.ts';

/** What one process of the bot opens, and a few more. */
const CONNECTIONS_A_PROCESS = 20;
/** On a busy morning posts wait in the queue, but not this long. */
const OLD_POST_SECONDS = 900;
const READ_ONLY_SQL_STATE = '25006';
const DISK_FULL_SQL_STATE = '53100';

export async function checkDatabase(
  config: Pick<Config, 'databaseUrl' | 'dataFolder'> & Partial<Pick<Config, 'access' | 'databaseCa'>>,
): Promise<Finding[]> {
  try {
    const facts =
      config.databaseUrl === undefined
        ? await dataFolderFacts(config.dataFolder)
        : await postgresFacts({ databaseUrl: config.databaseUrl, databaseCa: config.databaseCa });
    if (!facts) return [{ code: 'database-none' }];
    const aboutKeys = config.access ? checkTokenKeys(config.access, facts.tokenKeyNames) : [];
    return [...judge(facts), ...aboutKeys];
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    return [error.code === 'data-folder-in-use' ? { code: 'database-in-use' } : error.problem];
  }
}

/** What these facts mean for the operator. */
export function judge(facts: DatabaseFacts): Finding[] {
  return [
    { code: 'database-answers', version: String(facts.serverVersion) },
    ...aboutEncryption(facts),
    aboutMigrations(facts),
    aboutWriting(facts),
    ...aboutEncoding(facts),
    ...aboutConnections(facts),
    ...aboutQueue(facts),
    clockFinding('database', facts.databaseNow, facts.ownNow),
  ];
}

const ENCRYPTION = {
  verified: 'way-encrypted',
  'on-this-machine': 'way-on-this-machine',
  'switched-off': 'way-unencrypted',
} as const;

function aboutEncryption({ encryption }: DatabaseFacts): Finding[] {
  return encryption === undefined ? [] : [{ code: ENCRYPTION[encryption] }];
}

function aboutMigrations({ migrations }: DatabaseFacts): Finding {
  if (!migrations) return { code: 'no-tables' };
  const { appliedCount, pendingCount, isAhead, isForeign } = migrations;
  if (isForeign) return { code: 'migrations-changed' };
  if (isAhead) return { code: 'migrations-newer' };
  return pendingCount === 0
    ? { code: 'migrations-applied', count: appliedCount }
    : { code: 'migrations-pending', count: pendingCount };
}

function aboutWriting({ writeRefusal, migrations }: DatabaseFacts): Finding {
  if (writeRefusal === undefined) return { code: 'writable' };
  if (writeRefusal === READ_ONLY_SQL_STATE) return { code: 'read-only' };
  if (writeRefusal === DISK_FULL_SQL_STATE) return { code: 'no-room' };
  return { code: migrations ? 'tables-not-writable' : 'schemas-not-allowed', reason: writeRefusal };
}

function aboutEncoding({ encoding }: DatabaseFacts): Finding[] {
  return encoding === 'UTF8' ? [] : [{ code: 'encoding', encoding }];
}

function aboutConnections({ freeConnections: free }: DatabaseFacts): Finding[] {
  if (free === undefined || free >= CONNECTIONS_A_PROCESS) return [];
  return [{ code: 'few-connections', free, needed: CONNECTIONS_A_PROCESS }];
}

function aboutQueue({ queue, setAside }: DatabaseFacts): Finding[] {
  if (!queue) return [];
  const { waitingCount, oldestSeconds, heldBackCount } = queue;
  return [
    oldestSeconds > OLD_POST_SECONDS
      ? { code: 'posts-late', count: waitingCount, minutes: Math.round(oldestSeconds / 60) }
      : { code: 'posts-waiting', count: waitingCount },
    ...(heldBackCount === 0 ? [] : [{ code: 'posts-held-back', count: heldBackCount } as const]),
    ...undeliveredByCause(setAside).map((group): Finding => ({ code: 'posts-undelivered', ...group })),
  ];
}

/**
 * Whether the settings name the keys with which the tokens of workspaces are stored. Looks at their names only.
 *
 * @param storedNames names of the keys with which tokens are encrypted; undefined when their table isn't there yet
 */
export function checkTokenKeys(access: Access, storedNames: readonly string[] | undefined): Finding[] {
  const stored = storedNames ?? [];
  if (access.kind === 'one-workspace') return stored.length === 0 ? [] : [{ code: 'tokens-unused' }];
  const given = access.tokenKeys.map(({ name }) => name);
  const missing = stored.filter((name) => !given.includes(name));
  if (missing.length > 0) return [{ code: 'keys-missing', names: missing }];
  const former = stored.filter((name) => name !== given[0]);
  return [former.length > 0 ? { code: 'keys-former', names: former } : { code: 'keys-fine' }];
}
