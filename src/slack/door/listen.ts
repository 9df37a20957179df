/** Opens a server's port. */
import { once } from 'node:events';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';

/** @returns the port that is listened on */
export async function listen(server: Server, port: number): Promise<number> {
  server.listen(port);
  await once(server, 'listening');
  return (server.address() as AddressInfo).port;
}
