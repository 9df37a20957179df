/** Tells a connection that was lost from a failure of our own. */
import { codeOf, errorChain } from '../error-chain.ts';

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
 * Whether the error, or what caused it, is a connection that was lost. Whoever was waiting for an answer on it has been
 * told; what nobody was waiting for is no reason to end the process, since the next connection is made by itself.
 */
export function isLostConnection(error: unknown): boolean {
  return errorChain(error).some((at) => LOST.has(codeOf(at) ?? ''));
}
