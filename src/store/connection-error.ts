/** Why Postgres can't be used, and whether a connection was lost. Passwords never get into an error. */
import { codeOf, errorChain } from '../error-chain.ts';
import { troubleOfServer } from './database-trouble.ts';
import { SQL_STATE, sqlErrorOf } from './sql-error.ts';
import { StoreError } from './store-error.ts';

/** Where the database is, without user and password. */
function placeOf(databaseUrl: string): string {
  const { hostname, port, pathname } = new URL(databaseUrl);
  return `${hostname || 'localhost'}:${port || '5432'}${pathname}`;
}

/** As OpenSSL and Node.js name what they find wrong with a certificate (Node.js's documentation of `tls`). */
const CERTIFICATE_REFUSED = /^(?:CERT_|CRL_|DEPTH_ZERO_|ERR_TLS_CERT_|INVALID_CA|SELF_SIGNED_|UNABLE_TO_)/;
/** Node.js' words when the other side closes instead of encrypting; the code is that of any lost connection. */
const CLOSED_INSTEAD = /before secure TLS connection was established/;

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
  const trouble = troubleOfServer(error);
  if (trouble !== undefined) return new StoreError({ code: trouble, place }, { cause: error });
  const { code, message } = error as { code?: unknown; message?: unknown };
  const reason = String(code ?? message ?? error);
  if (CERTIFICATE_REFUSED.test(reason)) {
    return new StoreError({ code: 'database-certificate-refused', place, reason }, { cause: error });
  }
  if (CLOSED_INSTEAD.test(String(message))) {
    return new StoreError({ code: 'database-unencrypted', place }, { cause: error });
  }
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
