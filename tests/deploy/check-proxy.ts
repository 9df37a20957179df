/**
 * The proxy's configuration in deploy/proxy with the HAProxy that is on this machine and the bot's own door behind it:
 * what gets through, what doesn't, and who is answered while strangers hold all that they can.
 */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { connect as connectTcp, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect, type SecureVersion, type TLSSocket } from 'node:tls';
import type { App, ReceiverEvent } from '@slack/bolt';
import { generate } from 'selfsigned';
import { createLogger } from '../../src/logger.ts';
import { HttpDoor } from '../../src/slack/door/http-door.ts';
import { NOW_SECONDS, request, SECRET } from '../fuzz/raw-http.ts';

const CONFIGURATION = join(import.meta.dirname, '../../deploy/proxy/haproxy.cfg');

const SIGNED = 50;
const SILENT = 500;
const SLOW = 100;
/** As in the configuration. */
const BODY_BYTES_MAX = 1024 * 1024;
const CONNECTIONS_OF_ONE = 100;
/** Longer than any deadline of the proxy's. */
const PATIENCE_MS = 15_000;

const COMMAND =
  'command=%2Floadline&text=cards&team_id=T1&user_id=U1&channel_id=C1&trigger_id=1.2&token=from-the-platform';
const UNSIGNED = { 'x-slack-signature': `v0=${'0'.repeat(64)}` };

/** Everything of 127/8 is this machine: addresses of the platform's, and of strangers. */
const PLATFORM = '127.0.0.1';
const strangers = Array.from({ length: 10 }, (_, i) => `127.0.1.${i + 1}`);

export async function checkProxy(): Promise<['passed' | 'could not run', string]> {
  const version = spawnSync('haproxy', ['-v'], { encoding: 'utf8' });
  if (version.error) return ['could not run', 'haproxy is not on this machine'];
  const folder = await mkdtemp(join(tmpdir(), 'loadline-check-proxy-'));
  const seen: string[] = [];
  const door = new HttpDoor({
    signingSecret: SECRET,
    port: 0,
    readiness: undefined,
    nowMs: () => NOW_SECONDS * 1000,
    logger: createLogger({ level: 'silent' }),
    trustedProxies: [PLATFORM],
    pages: async ({ headers }) => {
      seen.push(String(headers['x-forwarded-for']));
      return false;
    },
  });
  door.init({ processEvent: ({ ack }: ReceiverEvent) => ack() } as unknown as App);
  try {
    const port = await freePort();
    const { stop, said } = await startProxy(folder, port, await door.start());
    try {
      await refusals(port);
      await addresses(port, seen);
      await logs(port, said);
      await deadlines(port);
      await connections(port);
      const slowestMs = await attack(port);
      const numbers = `${SIGNED} of ${SIGNED} signed requests answered 200, the slowest in ${Math.ceil(slowestMs)} ms`;
      return ['passed', `${version.stdout.split('\n')[0]}; ${numbers}`];
    } finally {
      await stop();
    }
  } finally {
    await door.stop();
    await rm(folder, { recursive: true, force: true });
  }
}

/** @returns what stops it, and what it has said so far */
async function startProxy(folder: string, port: number, botPort: number) {
  const configuration = await readFile(CONFIGURATION, 'utf8');
  const file = join(folder, 'haproxy.cfg');
  // Only root can become another user.
  const usable =
    process.getuid?.() === 0 ? configuration : configuration.replace(/^ {2}(?:user|group) .*$/gm, '');
  await writeFile(file, usable);
  const { cert, private: key } = await generate([{ name: 'commonName', value: 'localhost' }]);
  await writeFile(join(folder, 'tls.crt'), cert);
  await writeFile(join(folder, 'tls.key'), key, { mode: 0o600 });
  const proxy = spawn('haproxy', ['-db', '-f', file], {
    env: {
      PATH: process.env.PATH ?? '',
      LISTEN: `127.0.0.1:${port}`,
      CERTIFICATE: join(folder, 'tls.crt'),
      BOT: `127.0.0.1:${botPort}`,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  for (const stream of [proxy.stdout, proxy.stderr]) {
    stream.setEncoding('utf8').on('data', (text: string) => {
      said += text;
    });
  }
  const ended = new Promise<void>((resolve) => proxy.once('exit', () => resolve()));
  while (!(await isOpen(port))) {
    if (proxy.exitCode !== null) throw new Error(`the proxy did not start:\n${said}`);
  }
  const stop = async (): Promise<void> => {
    proxy.kill('SIGTERM');
    await ended;
  };
  return { stop, said: () => said };
}

async function refusals(port: number): Promise<void> {
  expectStatus('a signed request', (await send(port, signed())).status, 200);
  expectStatus('an unsigned one', (await send(port, request(COMMAND, UNSIGNED))).status, 401);
  for (const path of ['/healthz', '/readyz', '/metrics', '/', '/slack/events/x']) {
    expectStatus(path, (await send(port, request('', {}, { method: 'GET', path }))).status, 404);
  }
  const large = request('', { 'content-length': String(BODY_BYTES_MAX + 1) });
  expectStatus('a body that is too large', (await send(port, large)).status, 413);
  const old = await send(port, signed(), { maxVersion: 'TLSv1.1' });
  if (old.status !== 0) throw new Error('it speaks a TLS that is out of date');
}

async function addresses(port: number, seen: string[]): Promise<void> {
  seen.length = 0;
  const [stranger = ''] = strangers;
  await send(
    port,
    request('', { 'x-forwarded-for': '192.0.2.1' }, { method: 'GET', path: '/slack/install' }),
    {
      from: stranger,
    },
  );
  if (seen.join() !== stranger)
    throw new Error(`the bot was told that ${seen.join()} sent what ${stranger} did`);
}

async function logs(port: number, said: () => string): Promise<void> {
  const code = 'THE-CODE-OF-AN-INSTALLATION';
  await send(port, request('', {}, { method: 'GET', path: `/slack/oauth?code=${code}` }));
  const began = performance.now();
  while (!said().includes('/slack/oauth')) {
    if (performance.now() - began > PATIENCE_MS) throw new Error('it does not log what it passes on');
    await new Promise((resolve) => setImmediate(resolve));
  }
  if (said().includes(code)) throw new Error('it logs the code of an installation');
}

/** Nothing, half a head, half a body: each is cut off by itself. */
async function deadlines(port: number): Promise<void> {
  const slow = request('x', { ...UNSIGNED, 'content-length': '30000' });
  const all = [Buffer.alloc(0), request(COMMAND).subarray(0, 40), slow];
  await Promise.all(all.map((bytes) => send(port, bytes)));
  const plain = connectTcp(port, '127.0.0.1').on('error', () => {});
  await within('a connection without TLS', new Promise((resolve) => plain.once('close', resolve)));
}

async function connections(port: number): Promise<void> {
  const [stranger = ''] = strangers;
  const held = await Promise.all(
    Array.from({ length: CONNECTIONS_OF_ONE + 20 }, () => hold(port, Buffer.alloc(0), stranger)),
  );
  const open = held.filter((socket) => !socket.destroyed).length;
  expectStatus('another address meanwhile', (await send(port, signed())).status, 200);
  for (const socket of held) socket.destroy();
  if (open > CONNECTIONS_OF_ONE) throw new Error(`one address held ${open} connections`);
}

/** @returns how long the slowest signed request took */
async function attack(port: number): Promise<number> {
  const slow = request('x'.repeat(400_000), { ...UNSIGNED, 'content-length': '400001' });
  const held = await Promise.all([
    ...Array.from({ length: SLOW }, (_, i) => hold(port, slow, strangers[i % strangers.length])),
    ...Array.from({ length: SILENT }, (_, i) => hold(port, Buffer.alloc(0), strangers[i % strangers.length])),
  ]);
  const answers = await Promise.all(Array.from({ length: SIGNED }, () => send(port, signed())));
  for (const socket of held) socket.destroy();
  const lost = answers.filter(({ status }) => status !== 200);
  if (lost.length > 0) throw new Error(`${lost.length} of ${SIGNED} signed requests were lost in the attack`);
  return Math.max(...answers.map(({ tookMs }) => tookMs));
}

const signed = (): Buffer => request(COMMAND, { connection: 'close' });

interface From {
  readonly from?: string | undefined;
  readonly maxVersion?: SecureVersion;
}

function open(port: number, { from = PLATFORM, maxVersion }: From): TLSSocket {
  // Its certificate is of this run.
  const tcp = connectTcp({ port, host: '127.0.0.1', localAddress: from }).on('error', () => {});
  const socket = connect({
    socket: tcp,
    rejectUnauthorized: false,
    ...(maxVersion === undefined
      ? {}
      : { minVersion: 'TLSv1' as const, maxVersion, ciphers: 'ALL:@SECLEVEL=0' }),
  });
  return socket.on('error', () => {});
}

/** @returns the answer's status, 0 without any, when the connection is closed */
async function send(
  port: number,
  bytes: Uint8Array,
  from: From = {},
): Promise<{ readonly status: number; readonly tookMs: number }> {
  const began = performance.now();
  const socket = open(port, from);
  let text = '';
  socket.on('data', (part) => {
    text += part.toString('latin1');
  });
  socket.write(bytes);
  await within('a connection', new Promise((resolve) => socket.once('close', resolve)));
  return { status: Number(/^HTTP\/1\.1 (\d{3}) /.exec(text)?.[1] ?? 0), tookMs: performance.now() - began };
}

/** @returns a connection on which that was sent, or that was refused */
async function hold(port: number, bytes: Uint8Array, from: string | undefined): Promise<TLSSocket> {
  const socket = open(port, { from });
  socket.on('data', () => {});
  await new Promise<void>((resolve) => {
    socket.once('close', resolve);
    socket.once('secureConnect', () =>
      bytes.length === 0 ? resolve() : socket.write(bytes, () => resolve()),
    );
  });
  return socket;
}

async function within(what: string, closed: Promise<unknown>): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise((_, reject) => {
    timer = setTimeout(() => reject(new Error(`${what} is still open after ${PATIENCE_MS} ms`)), PATIENCE_MS);
  });
  await Promise.race([closed, late]).finally(() => clearTimeout(timer));
}

function expectStatus(what: string, status: number, expected: number): void {
  if (status !== expected) throw new Error(`${what} got ${status}, not ${expected}`);
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as { port: number };
  await new Promise((resolve) => server.close(resolve));
  return port;
}

function isOpen(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connectTcp(port, '127.0.0.1');
    socket.once('connect', () => {
      socket.destroy();
      resolve(true);
    });
    socket.once('error', () => setTimeout(resolve, 50, false));
  });
}
