import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { expect, it } from 'vitest';

const WATCHDOG = new URL('../../src/jobs/watchdog.ts', import.meta.url).href;

/** Runs the code with the watchdog on, as a process of its own. */
async function outcomeOf(code: string) {
  const start = `const { startWatchdog } = await import(${JSON.stringify(WATCHDOG)});
    const stop = startWatchdog({ limitLooks: 40, lookEveryMs: 50 });`;
  const child = spawn(process.execPath, ['--input-type=module', '--eval', `${start}\n${code}`], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let said = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    said += text;
  });
  const [exitCode, signal] = await once(child, 'exit');
  return { exitCode, signal, said };
}

it('ends a process whose main thread spins, which no other signal would, and says so in the log', async () => {
  const { signal, said } = await outcomeOf(`
    process.on('SIGTERM', () => process.exit(0));
    await new Promise((resolve) => setTimeout(resolve, 200));
    for (;;);`);
  expect(signal).toBe('SIGKILL');
  expect(JSON.parse(said)).toMatchObject({ level: 'fatal', event: 'hung', msg: expect.any(String) });
}, 60_000);

it('lets a process alone that is held up for less, and one that has nothing more to do end', async () => {
  const { exitCode, said } = await outcomeOf(`
    for (let times = 0; times < 10; times += 1) {
      const untilMs = performance.now() + 100;
      while (performance.now() < untilMs);
      await new Promise((resolve) => setTimeout(resolve, 60));
    }
    console.log('done');`);
  expect({ exitCode, said }).toEqual({ exitCode: 0, said: 'done\n' });
}, 60_000);

it('lets a process alone that was frozen', async () => {
  const { exitCode, said } = await outcomeOf(`
    const { spawn } = await import('node:child_process');
    await new Promise((resolve) => setTimeout(resolve, 200));
    const { pid } = process;
    spawn('sh', ['-c', 'kill -STOP ' + pid + '; sleep 2; kill -CONT ' + pid], { stdio: 'ignore' });
    await new Promise((resolve) => setTimeout(resolve, 3_000));
    await stop();
    console.log('done');`);
  expect({ exitCode, said }).toEqual({ exitCode: 0, said: 'done\n' });
}, 60_000);
