import { createServer } from 'node:http';
import { connect } from 'node:net';
import { afterEach, expect, it } from 'vitest';
import { HealthDoor } from '../../../src/slack/door/health-door.ts';
import { listen } from '../../../src/slack/door/listen.ts';

const stops: (() => Promise<unknown> | unknown)[] = [];
afterEach(async () => {
  await Promise.all(stops.splice(0).map((stop) => stop()));
});

function isOpen(host: string, port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(port, host);
    socket.once('error', () => resolve(false));
    socket.once('connect', () => {
      socket.destroy();
      resolve(true);
    });
  });
}

it('a port is open to one address of the machine when one is named, and else to all', async () => {
  const server = createServer();
  stops.push(() => server.close());
  const everywhere = await listen(server, 0);
  expect(await isOpen('127.0.0.1', everywhere)).toBe(true);
  const door = new HealthDoor({ port: 0, host: '127.0.0.1', readiness: async () => [] });
  stops.push(() => door.stop());
  const here = await door.start();
  expect(await isOpen('127.0.0.1', here)).toBe(true);
  // Both are this machine as well, where it has them.
  expect([await isOpen('127.0.0.2', here), await isOpen('::1', here)]).toEqual([false, false]);
});
