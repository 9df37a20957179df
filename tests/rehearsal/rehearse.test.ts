import { execFile } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { promisify } from 'node:util';
import { afterEach, expect, it, vi } from 'vitest';
import { rehearse } from '../../src/rehearsal/rehearse.ts';

/** What the command wrote to standard error. */
function hear(): () => string {
  const spy = vi.spyOn(console, 'error').mockImplementation(() => undefined);
  return () => spy.mock.calls.flat().join('\n');
}

afterEach(() => {
  vi.restoreAllMocks();
});

it('says which port is taken and how to choose another', async () => {
  const taken = createServer().listen(0, '127.0.0.1');
  await once(taken, 'listening');
  const { port } = taken.address() as AddressInfo;
  const said = hear();
  expect(await rehearse(['--port', String(port)])).toBe(2);
  expect(said()).toContain(`Port ${port} is in use`);
  expect(said()).toContain(`--port ${port + 1}`);
  taken.close();
});

it('shows how it is used when it does not understand its arguments', async () => {
  const said = hear();
  expect(await rehearse(['--json'])).toBe(2);
  expect(said()).toContain('--json goes with --play FILE.');
  expect(said()).toContain('npm run rehearse -- --play FILE');
});

it('names a scenario file that can not be read, and ends with code 2', async () => {
  const said = hear();
  expect(await rehearse(['--play', 'no-such-file.json'])).toBe(2);
  expect(said()).toMatch(/no-such-file\.json can’t be played:\n- .*ENOENT/);
});

it('prints with --json one document and nothing else to standard output, also when npm runs it', async () => {
  const file = 'src/rehearsal/scenarios/no-plan.json';
  const play = promisify(execFile)('npm', ['run', 'rehearse', '--', '--play', file, '--json']);
  const { stdout } = await play;
  expect(JSON.parse(stdout)).toMatchObject({ sprints: [{ verdict: 'no plan' }] });
}, 60_000);
