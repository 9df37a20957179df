/**
 * Keeps a server that is asked by few, one at a time, from being filled with silence: whoever comes when it is full takes
 * the place of who came first. A probe is answered within milliseconds, so it is never that.
 */
import type { Server } from 'node:http';
import type { Socket } from 'node:net';

/** Probes and collectors come one at a time. */
const MOST_CONNECTIONS = 200;

export function keepNewest(server: Server): void {
  const open = new Set<Socket>();
  server.on('connection', (socket: Socket) => {
    open.add(socket);
    socket.once('close', () => open.delete(socket));
    const [oldest] = open;
    if (open.size <= MOST_CONNECTIONS || oldest === undefined) return;
    open.delete(oldest);
    oldest.destroy();
  });
}
