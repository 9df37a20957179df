/** What the database's refusals mean that have nothing to do with what was asked of it. */
import { StoreTrouble, type StoreTroubleCode } from '../app/ports/store-trouble.ts';
import { SQL_STATE, sqlErrorOf } from './sql-error.ts';

/** PostgreSQL's Appendix A. */
const TROUBLES: ReadonlyMap<string, StoreTroubleCode> = new Map([
  [SQL_STATE.diskFull, 'database-full'],
  [SQL_STATE.readOnly, 'database-read-only'],
  [SQL_STATE.tooManyConnections, 'database-busy'],
]);

/** Undefined when the error says something else. */
export type TroubleOf = (error: unknown) => StoreTroubleCode | undefined;

/** As a server says it. */
export const troubleOfServer: TroubleOf = (error) =>
  error instanceof StoreTrouble ? error.code : troubleOfState(sqlErrorOf(error)?.sqlState);

export function troubleOfState(sqlState: string | undefined): StoreTroubleCode | undefined {
  return sqlState === undefined ? undefined : TROUBLES.get(sqlState);
}
