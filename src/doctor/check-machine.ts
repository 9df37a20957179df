/** What the machine must offer: a right clock, a free port, and libraries that load. */

import { once } from 'node:events';
import { createServer, isIPv6 } from 'node:net';
import type { Finding } from './finding.ts';

/** Beyond this the platform's signed requests are refused (docs.slack.dev/authentication/verifying-requests-from-slack). */
const REFUSED_BEYOND_SECONDS = 300;
const NOTABLE_SECONDS = 30;

/**
 * Whether two clocks agree. A bot whose clock is wrong refuses genuine requests and asks at the wrong time.
 *
 * @param ownNow this machine's clock at the moment when the other one was read
 */
export function clockFinding(other: 'database' | 'platform', otherNow: Date, ownNow: Date): Finding {
  const skewSeconds = Math.round((ownNow.getTime() - otherNow.getTime()) / 1_000);
  const seconds = Math.abs(skewSeconds);
  if (seconds <= NOTABLE_SECONDS) return { code: 'clock-agrees', other };
  const direction = skewSeconds < 0 ? 'behind' : 'ahead';
  const code = seconds >= REFUSED_BEYOND_SECONDS ? 'clock-far-off' : 'clock-off';
  return { code, other, seconds, direction };
}

const HEALTH_LIMIT_MS = 3_000;

/**
 * Whether the bot's port is free, or a running bot has it.
 *
 * @param healthPort where a bot that runs already would answer its health routes
 * @param host the address at which the port would be open; undefined: all of them
 */
export async function checkPort(
  number: number,
  healthPort: number = number,
  host?: string,
): Promise<Finding[]> {
  const port = String(number);
  const reason = await listenProblem(number, host);
  if (reason === 'EADDRNOTAVAIL') return [{ code: 'address-not-here', address: String(host) }];
  if (reason === undefined) return [number === 0 ? { code: 'port-any' } : { code: 'port-free', port }];
  if (reason !== 'EADDRINUSE') return [{ code: 'port-refused', port, reason }];
  return [{ code: (await isBot(healthPort, host ?? '127.0.0.1')) ? 'port-ours' : 'port-taken', port }];
}

async function listenProblem(port: number, host: string | undefined): Promise<string | undefined> {
  const server = createServer();
  try {
    server.listen({ port, host });
    await once(server, 'listening');
    const closed = once(server, 'close');
    server.close();
    await closed;
    return undefined;
  } catch (error) {
    return String((error as { code?: unknown }).code);
  }
}

/** Whether the program on this port answers as the bot's health route does. */
async function isBot(port: number, host: string): Promise<boolean> {
  try {
    const response = await fetch(`http://${isIPv6(host) ? `[${host}]` : host}:${port}/healthz`, {
      signal: AbortSignal.timeout(HEALTH_LIMIT_MS),
      redirect: 'error',
    });
    return ((await response.json()) as { status?: unknown }).status === 'alive';
  } catch {
    return false;
  }
}

/**
 * Whether what comes with the bot loads on this machine: drawing library, font, time zones.
 *
 * Loads the drawing library only now, so that the other checks run even where it can't be loaded.
 */
export async function drawDot(): Promise<Uint8Array> {
  const { renderPng } = await import('../charts/render-png.ts');
  return renderPng({ title: { text: '0' } }, { widthPx: 8, heightPx: 8 });
}

const PNG_SIGNATURE = '89504e470d0a1a0a';

export async function checkCharts(draw: () => Promise<Uint8Array> = drawDot): Promise<Finding[]> {
  const png = await draw().catch((error: unknown) => error);
  if (png instanceof Uint8Array && Buffer.from(png).toString('hex').startsWith(PNG_SIGNATURE)) {
    return [{ code: 'charts-fine' }];
  }
  const reason = png instanceof Error ? String(png.message.split('\n')[0]) : 'no PNG';
  return [{ code: 'charts-broken', reason }];
}

/** Moments on both sides of a clock change, IANA tz 2025c: New York left summer time on 2026-11-01 at 06:00Z. */
const BEFORE = new Date('2026-11-01T05:30:00Z');
const AFTER = new Date('2026-11-01T06:30:00Z');

export function checkTimeZones(
  hourAt: (instant: Date) => string = (instant) =>
    new Intl.DateTimeFormat('en-GB', { timeZone: 'America/New_York', hour: '2-digit' }).format(instant),
): Finding[] {
  try {
    return [{ code: hourAt(BEFORE) === '01' && hourAt(AFTER) === '01' ? 'zones-fine' : 'zones-unknown' }];
  } catch {
    // A Node.js without time zones throws.
    return [{ code: 'zones-unknown' }];
  }
}
