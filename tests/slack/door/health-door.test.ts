/** The port of the health routes alone: a probe is answered, whatever others do there. */
import { afterEach, beforeEach, expect, it } from 'vitest';
import { HealthDoor } from '../../../src/slack/door/health-door.ts';
import { exchange, withSilence } from '../../fuzz/raw-http.ts';

let door: HealthDoor;
let port: number;
beforeEach(async () => {
  door = new HealthDoor({ port: 0, host: '127.0.0.1', readiness: async () => [] });
  port = await door.start();
});
afterEach(() => door.stop());

const probe = (path: string) => exchange(port, Buffer.from(`GET ${path} HTTP/1.1\r\nhost: b\r\n\r\n`), 'end');

it('answers its two routes and nothing else', async () => {
  expect((await probe('/healthz')).statuses).toEqual([200]);
  expect((await probe('/readyz')).statuses).toEqual([200]);
  expect((await probe('/slack/events')).statuses).toEqual([404]);
});

it('answers a probe while others hold all connections in silence', async () => {
  await withSilence(port, async () => {
    expect((await probe('/healthz')).statuses).toEqual([200]);
  });
});
