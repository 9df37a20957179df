/** The watchdog's own thread; see `watchdog.ts`. JavaScript, since a thread that needs no compiler is there sooner. */
import { writeSync } from 'node:fs';
import { workerData } from 'node:worker_threads';

const { beats, limitLooks, lookEveryMs } = workerData;
let [before, stillLooks] = [-1, 0];

setInterval(() => {
  const now = Atomics.load(beats, 0);
  [before, stillLooks] = [now, now === before ? stillLooks + 1 : 0];
  if (stillLooks < limitLooks) return;
  const seconds = Math.round((limitLooks * lookEveryMs) / 1_000);
  try {
    const msg = `Nothing has moved in this process for ${seconds} s, so it ends itself; whoever started it should start it again.`;
    const line = { level: 'fatal', time: new Date().toISOString(), event: 'hung', seconds, msg };
    // The logger belongs to the thread that hangs.
    writeSync(1, `${JSON.stringify(line)}\n`);
  } finally {
    // Nothing gentler is heard.
    process.kill(process.pid, 'SIGKILL');
  }
}, lookEveryMs);
