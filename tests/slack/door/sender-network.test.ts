import type { IncomingMessage } from 'node:http';
import { describe, expect, it } from 'vitest';
import { networkOf, SenderNetworks } from '../../../src/slack/door/sender-network.ts';

function request(remoteAddress: string, forwardedFor?: string): IncomingMessage {
  const headers = forwardedFor === undefined ? {} : { 'x-forwarded-for': forwardedFor };
  return { socket: { remoteAddress }, headers } as unknown as IncomingMessage;
}

describe('the network of an address', () => {
  it.each([
    ['192.0.2.7', '192.0.2.7'],
    ['::ffff:192.0.2.7', '192.0.2.7'],
    ['::FFFF:192.0.2.7', '192.0.2.7'],
    // RFC 6177: a site is given a /64 at least, so all of it is one sender.
    ['2001:db8::7', '2001:db8:0:0'],
    ['2001:0DB8:0000:0000:1:2:3:4', '2001:db8:0:0'],
    ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2'],
    ['::1', '0:0:0:0'],
    ['::', '0:0:0:0'],
    ['fe80::1%eth0', 'fe80:0:0:0'],
    ['', ''],
  ])('%s is %s', (address, network) => {
    expect(networkOf(address)).toBe(network);
  });
});

describe('a sender', () => {
  const named = new SenderNetworks(['10.0.0.0/8', '2001:db8:1::/48', '127.0.0.1']);

  it('is who connects, whatever they say, when they are no named proxy', () => {
    expect(new SenderNetworks([]).ofRequest(request('127.0.0.1', '192.0.2.7'))).toBe('127.0.0.1');
    expect(named.ofRequest(request('198.51.100.9', '192.0.2.7'))).toBe('198.51.100.9');
    expect(named.ofConnection('198.51.100.9')).toBe('198.51.100.9');
  });

  it.each(['127.0.0.1', '::ffff:10.1.2.3', '2001:db8:1::9'])(
    'is whom a named proxy speaks for: %s',
    (proxy) => {
      expect(named.ofConnection(proxy)).toBeUndefined();
      expect(named.ofRequest(request(proxy, '192.0.2.7'))).toBe('192.0.2.7');
    },
  );

  it('is the last address that is no proxy’s: those before it the sender may have made up', () => {
    expect(named.ofRequest(request('10.0.0.1', '203.0.113.5, 192.0.2.7, 10.9.9.9'))).toBe('192.0.2.7');
  });

  it('is nobody when a named proxy says nothing, or what is no address', () => {
    expect(named.ofRequest(request('10.0.0.1'))).toBeUndefined();
    expect(named.ofRequest(request('10.0.0.1', 'unknown'))).toBeUndefined();
    expect(named.ofRequest(request('10.0.0.1', 'x'.repeat(1_000)))).toBeUndefined();
  });
});
