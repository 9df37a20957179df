/**
 * From which network a request comes: an IPv4 address, or the half of an IPv6 address that one customer of a provider is
 * given as a whole. A forwarded address counts only when a proxy wrote it that the operator has named; anybody else could
 * write any.
 */
import type { IncomingMessage } from 'node:http';
import { BlockList, isIP, isIPv6 } from 'node:net';

const NETWORK_GROUPS = 4;
const ALL_GROUPS = 8;

export class SenderNetworks {
  readonly #proxies = new BlockList();

  /** @param trustedProxies addresses, and networks such as `10.0.0.0/8` */
  constructor(trustedProxies: readonly string[]) {
    for (const proxy of trustedProxies) {
      const [address = '', bits] = proxy.split('/');
      if (bits === undefined) this.#proxies.addAddress(address, familyOf(address));
      else this.#proxies.addSubnet(address, Number(bits), familyOf(address));
    }
  }

  /** @returns undefined for a named proxy, which has not said yet for whom it comes */
  ofConnection(address: string): string | undefined {
    return this.#isProxy(address) ? undefined : networkOf(address);
  }

  /** The last address that no named proxy has: what stands before it the sender may have made up. */
  ofRequest({ socket, headers }: IncomingMessage): string | undefined {
    const forwarded = [headers['x-forwarded-for'] ?? []].flat().join(',').split(',');
    const way = [...forwarded.map((address) => address.trim()), socket.remoteAddress ?? ''];
    const sender = way.findLast((address) => !this.#isProxy(address));
    return sender === undefined || isIP(sender) === 0 ? undefined : networkOf(sender);
  }

  #isProxy(address: string): boolean {
    const plain = withoutMapping(address);
    return isIP(plain) !== 0 && this.#proxies.check(plain, familyOf(plain));
  }
}

/**
 * @example
 * networkOf('::ffff:192.0.2.7') // '192.0.2.7'
 * networkOf('2001:db8::7') // '2001:db8:0:0'
 */
export function networkOf(address: string): string {
  const plain = withoutMapping(address);
  if (!isIPv6(plain)) return plain;
  // The URL parser writes every address in one way, without zeros in front.
  const canonical = new URL(`http://[${plain.replace(/%.*$/, '')}]`).hostname.slice(1, -1);
  const [before = '', after] = canonical.split('::');
  const first = before === '' ? [] : before.split(':');
  const last = after === undefined || after === '' ? [] : after.split(':');
  const zeros = after === undefined ? 0 : ALL_GROUPS - first.length - last.length;
  return [...first, ...Array<string>(zeros).fill('0'), ...last].slice(0, NETWORK_GROUPS).join(':');
}

/** Where a server listens for both kinds, IPv4 addresses come in the clothes of IPv6. */
function withoutMapping(address: string): string {
  return address.replace(/^::ffff:(?=[\d.]+$)/i, '');
}

function familyOf(address: string): 'ipv4' | 'ipv6' {
  return isIPv6(address) ? 'ipv6' : 'ipv4';
}
