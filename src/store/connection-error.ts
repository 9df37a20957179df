/** Why Postgres can't be used, and whether a connection was lost. Passwords never get into an error. */
import { codeOf, errorChain } from '../error-chain.ts';
import { SQL_STATE, sqlErrorOf } from './sql-error.ts';
import { StoreError } from './store-error.ts';

/** Where the database is, without user and password. */
function placeOf(databaseUrl: string): string {
  const { hostname, port, pathname } = new URL(databaseUrl);
  return `${hostname || 'localhost'}:${port || '5432'}${pathname}`;
}

/**
 * Checks the form of a database address.
 *
 * @throws StoreError `database-url-invalid`; the address itself stays out of it.
 */
export function checkDatabaseUrl(databaseUrl: string): void {
  const isPostgres = URL.canParse(databaseUrl) && /^postgres(ql)?:$/.test(new URL(databaseUrl).protocol);
  if (!isPostgres) {
    throw new StoreError({ code: 'database-url-invalid' });
  }
}

/** The error for the operator, in place of what the driver threw when it first connected. */
export function connectionError(error: unknown, databaseUrl: string): StoreError {
  if (error instanceof StoreError) return error;
  const place = placeOf(databaseUrl);
  const sqlState = sqlErrorOf(error)?.sqlState;
  // 28xxx: invalid authorisation; 3D000: no such database.
  if (sqlState?.startsWith('28')) return new StoreError({ code: 'database-login-refused', place });
  if (sqlState === '3D000') return new StoreError({ code: 'database-missing', place });
  if (sqlState === SQL_STATE.insufficientPrivilege) {
    return new StoreError({ code: 'database-rights-missing', place }, { cause: error });
  }
  const { code, message } = error as { code?: unknown; message?: unknown };
  const reason = String(code ?? message ?? error);
  return new StoreError({ code: 'database-unreachable', place, reason }, { cause: error });
}

/**
 * Of sockets; of the Postgres driver when it says so itself; and of the server when it shuts down, was shut down by a
 * crash, or takes no connections yet (PostgreSQL's Appendix A, class 57).
 */
const LOST = new Set([
  'ECONNRESET',
  'EPIPE',
  'ETIMEDOUT',
  'CONNECTION_CLOSED',
  'CONNECTION_DESTROYED',
  'CONNECTION_ENDED',
  'CONNECT_TIMEOUT',
  '57P01',
  '57P02',
  '57P03',
]);

/**
 * Whether the error, or what caused it, is a lost connection. Code that waited for an answer on it gets the error itself;
 * when nothing waited, the process can go on, since the driver connects again by itself.
 */
export function isLostConnection(error: unknown): boolean {
  return errorChain(error).some((at) => LOST.has(codeOf(at) ?? ''));
}
