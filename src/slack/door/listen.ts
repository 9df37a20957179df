/** Opens a server's port. */
import { once } from 'node:events';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';

/**
 * @param host an address of this machine; undefined: all of them
 * @returns the port that is listened on
 */
export async function listen(server: Server, port: number, host?: string): Promise<number> {
  server.listen(port, host);
  await once(server, 'listening');
  return (server.address() as AddressInfo).port;
}
