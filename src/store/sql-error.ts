/** Reads what the database said out of what the drivers and drizzle wrap it in. */
import { codeOf, errorChain } from '../error-chain.ts';

/** A refusal by the database. */
interface SqlError {
  /** Five characters, e.g. `23505` for a unique key. */
  readonly sqlState: string;
  /** The constraint or trigger that refused; undefined when none did. */
  readonly constraint: string | undefined;
}

export const SQL_STATE = {
  uniqueViolation: '23505',
  insufficientPrivilege: '42501',
  serializationFailure: '40001',
  deadlockDetected: '40P01',
  lockNotAvailable: '55P03',
  readOnly: '25006',
  tooManyConnections: '53300',
  diskFull: '53100',
} as const;

/** The database's refusal within the error or its causes; undefined when the error is something else. */
export function sqlErrorOf(error: unknown): SqlError | undefined {
  for (const at of errorChain(error)) {
    const code = codeOf(at);
    // Node's own codes (ECONNRESET and the like) are no SQLSTATE.
    if (code !== undefined && /^[0-9A-Z]{5}$/.test(code) && /[0-9]/.test(code)) {
      const { constraint, constraint_name } = at as Error & Record<string, unknown>;
      const name = constraint ?? constraint_name;
      return { sqlState: code, constraint: typeof name === 'string' ? name : undefined };
    }
  }
  return undefined;
}
