import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { isOfPlatform, onlyOfPlatform } from '../../src/slack/platform-host.ts';
import { wholeCalls } from '../../src/slack/sending/whole-call.ts';

describe('an address of the platform', () => {
  it.each([
    'https://slack.com/api/chat.postMessage',
    'https://hooks.slack.com/commands/T1/2/3',
    'https://files.slack-gov.com/files-pri/T1-F1/a.csv',
  ])('%s', (address) => expect(isOfPlatform(new URL(address), undefined)).toBe(true));

  it.each([
    'http://hooks.slack.com/commands/T1/2/3',
    'https://hooks.slack.com:8443/commands/T1/2/3',
    'https://hooks.slack.com.example.org/commands/T1/2/3',
    'https://notslack.com/',
    'https://slack.com@example.org/',
    'http://169.254.169.254/latest/meta-data/',
    'http://127.0.0.1:5432/',
  ])('not %s', (address) => {
    expect(isOfPlatform(new URL(address), undefined)).toBe(false);
    expect(isOfPlatform(new URL(address), 'https://slack.com/api/')).toBe(false);
  });

  it.each([
    ['http://127.0.0.1:4000/api/', 'http://127.0.0.1:4001/hooks/1', true],
    ['http://127.0.0.1:4000/api/', 'http://127.0.0.2:4000/hooks/1', false],
    ['https://gateway.example.org/api/', 'https://gateway.example.org/hooks/1', true],
    ['https://gateway.example.org/api/', 'https://gateway.example.org:8443/hooks/1', false],
    ['https://gateway.example.org/api/', 'http://127.0.0.1:4000/hooks/1', false],
  ])('where the Web API is at %s: %s %s', (apiUrl, address, isOf) => {
    expect(isOfPlatform(new URL(address), apiUrl)).toBe(isOf);
  });
});

describe('fetching from the platform only', () => {
  const open: { close(): void }[] = [];
  afterEach(() => {
    for (const server of open.splice(0)) server.close();
  });

  async function server(location?: string): Promise<{ url: string; asked: () => number }> {
    let asked = 0;
    const listening = createServer((_request, response) => {
      asked += 1;
      if (location === undefined) response.end('here');
      else response.writeHead(307, { location }).end();
    });
    open.push(listening);
    await new Promise<void>((resolve) => listening.listen(0, '127.0.0.1', resolve));
    const { port } = listening.address() as AddressInfo;
    return { url: `http://127.0.0.1:${port}/`, asked: () => asked };
  }

  it('asks no other', async () => {
    const [own, other] = [await server(), await server()];
    const get = onlyOfPlatform(wholeCalls(1_000), own.url);
    expect(await (await get(`${own.url}hook`)).text()).toBe('here');
    const elsewhere = other.url.replace('127.0.0.1', 'localhost');
    await expect(get(`${elsewhere}hook`)).rejects.toThrow('it is not the platform’s');
    expect(other.asked()).toBe(0);
  });

  it('follows nobody to another', async () => {
    const other = await server();
    const own = await server(other.url);
    await expect(onlyOfPlatform(wholeCalls(1_000), own.url)(`${own.url}hook`)).rejects.toThrow();
    expect([own.asked(), other.asked()]).toEqual([1, 0]);
  });
});
