/**
 * Sockets to a Postgres server that notice when the other side is gone without a word, as when a machine loses its power
 * or a router forgets the connection. The operating system alone would wait a quarter of an hour for an answer, and people
 * with it; like this they hear after 40 seconds that it failed.
 */
import { connect, type Socket } from 'node:net';
import type postgres from 'postgres';

/** What the driver hands over of what it has read from the address. */
interface Address {
  readonly host: readonly string[];
  readonly port: readonly number[];
  /** Of a Unix socket. */
  readonly path: string | false | undefined;
}

/** How often a socket is looked at in the time in which it must not be silent. */
const LOOKS = 8;

interface WatchedOptions {
  /** The driver's own option, which its types leave out; it is to give a socket, connected or connecting. */
  readonly socket?: (address: Address) => Promise<Socket>;
}

/**
 * Options for the driver, by which a connection that was silent for so long is given up: a query that waits on it fails,
 * and the next query connects again. The server must end what takes longer than that by itself (`statement_timeout`). With several hosts in the address the driver makes its own sockets, since
 * it alone knows whose turn it is; then nothing is watched.
 *
 * @param address of the server, as the driver would be given it
 */
export function givingUpSilence(address: string, silenceLimitMs: number): postgres.Options<never> {
  const hosts = new URL(address).hostname || process.env.PGHOST;
  const isOneHost = !hosts?.includes(',');
  const options: WatchedOptions = isOneHost ? { socket: (to) => watchedSocket(to, silenceLimitMs) } : {};
  return options as postgres.Options<never>;
}

async function watchedSocket({ host, port, path }: Address, silenceLimitMs: number): Promise<Socket> {
  // In the same run of microtasks as the driver then hears the socket's errors, which may come at once.
  await undefined;
  const [onlyHost, onlyPort] = [host[0] as string, port[0] as number];
  const socket = path ? connect(path) : connect(onlyPort, onlyHost);
  destroyWhenSilent(socket, silenceLimitMs);
  // The driver's errors name them.
  return Object.assign(socket, { host: onlyHost, port: onlyPort });
}

/**
 * Counts looks, not time: in a process that was busy for long the answer may be there and not yet read.
 * The socket's own timeout would not do: the driver takes away all listeners before it encrypts.
 */
function destroyWhenSilent(socket: Socket, silenceLimitMs: number): void {
  let [bytes, silentLooks] = [0, 0];
  const watch = setInterval(() => {
    const nowBytes = socket.bytesRead + socket.bytesWritten;
    [bytes, silentLooks] = [nowBytes, nowBytes === bytes ? silentLooks + 1 : 0];
    if (silentLooks >= LOOKS) socket.destroy();
    if (socket.destroyed) clearInterval(watch);
  }, silenceLimitMs / LOOKS);
  watch.unref();
}
