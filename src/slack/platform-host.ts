/** Which addresses are the platform's, so that nothing is asked of, or told to, any other. */
import type { FetchFunction } from '@slack/web-api';

/** The platform and its separate cloud; files and hooks lie on hosts below one of these. */
const PLATFORM_HOST = /(^|\.)slack(-gov)?\.com$/;

/** @param apiUrl address of the Web API where it is not the platform's own: a gateway, or the stand-in of a rehearsal */
export function isOfPlatform(address: URL, apiUrl: string | undefined): boolean {
  if (apiUrl !== undefined && isOfStandIn(address, new URL(apiUrl))) return true;
  return address.protocol === 'https:' && address.port === '' && PLATFORM_HOST.test(address.hostname);
}

/** One on this machine may use several ports. */
function isOfStandIn(address: URL, api: URL): boolean {
  const isHere = api.hostname === '127.0.0.1' || api.hostname === 'localhost';
  return isHere
    ? address.protocol === api.protocol && address.hostname === api.hostname
    : address.origin === api.origin;
}

/** The same means of calling, except that it calls the platform only. */
export function onlyOfPlatform(call: FetchFunction, apiUrl: string | undefined): FetchFunction {
  return async (input, init) => {
    const address = new URL(input);
    if (!isOfPlatform(address, apiUrl)) {
      throw new TypeError(`Nothing is sent to ${address.host}: it is not the platform’s.`);
    }
    return call(address, init);
  };
}
