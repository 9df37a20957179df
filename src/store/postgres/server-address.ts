/**
 * Where a Postgres server is, and whether the way to it is encrypted. Beyond this machine it is, and the server has to
 * show a certificate for its name that is trusted, unless the address says by name that it shall not.
 */
import { isIP } from 'node:net';
import type { ConnectionOptions } from 'node:tls';
import { StoreError } from '../store-error.ts';

/** `on-this-machine`: unencrypted, and nobody between. `switched-off`: unencrypted, as the address asks. */
export type Encryption = 'verified' | 'on-this-machine' | 'switched-off';

export interface ServerAddress {
  /** For the driver, without what is said here about encryption. */
  readonly url: string;
  readonly ssl: false | ConnectionOptions;
  readonly encryption: Encryption;
}

export interface ServerAccess {
  readonly databaseUrl: string;
  /** Certificates, in PEM, of the only authorities to trust; undefined: those that Node.js trusts. */
  readonly databaseCa?: string | undefined;
}

/** Modes of Postgres' own client library that ask for less than this are not known here, nor is a file in the address. */
const ENCRYPTED = ['require', 'verify-ca', 'verify-full'];

/**
 * @throws StoreError `database-url-invalid`, `database-encryption-unclear`; the address itself stays out of it.
 */
export function serverAddress({ databaseUrl, databaseCa }: ServerAccess): ServerAddress {
  if (!isPostgresUrl(databaseUrl)) throw new StoreError({ code: 'database-url-invalid' });
  const url = new URL(databaseUrl);
  const mode = url.searchParams.get('sslmode') ?? undefined;
  const isKnown = mode === undefined || mode === 'disable' || ENCRYPTED.includes(mode);
  if (!isKnown || ['ssl', 'sslrootcert'].some((name) => url.searchParams.has(name))) {
    throw new StoreError({ code: 'database-encryption-unclear' });
  }
  url.searchParams.delete('sslmode');
  const host = url.hostname || process.env.PGHOST || 'localhost';
  if (mode === 'disable' || (mode === undefined && isOnThisMachine(host))) {
    const encryption = isOnThisMachine(host) ? 'on-this-machine' : 'switched-off';
    return { url: url.href, ssl: false, encryption };
  }
  const ip = host.replace(/^\[|\]$/g, '');
  return {
    url: url.href,
    ssl: {
      rejectUnauthorized: true,
      minVersion: 'TLSv1.2',
      ...(databaseCa === undefined ? {} : { ca: databaseCa }),
      // The driver names a host by its name only; a certificate may also be for an address.
      ...(isIP(ip) ? { host: ip } : {}),
    },
    encryption: 'verified',
  };
}

function isPostgresUrl(value: string): boolean {
  if (!URL.canParse(value) || !/^postgres(ql)?:$/.test(new URL(value).protocol)) return false;
  try {
    decodeURIComponent(new URL(value).hostname);
    return true;
  } catch {
    return false;
  }
}

/** A folder is that of a Unix socket. Of several hosts each must be here. */
function isOnThisMachine(hosts: string): boolean {
  return hosts
    .split(',')
    .map((host) => decodeURIComponent(host).replace(/:\d+$/, ''))
    .every((host) => /^(?:localhost|127(?:\.\d{1,3}){3}|\[?::1\]?|\/.*)$/.test(host));
}
