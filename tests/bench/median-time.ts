import { Bench } from 'tinybench';

/** The time in ms that half of the calls stay below, once warm. The two are measured in turns, in one run. */
export async function medianTimes(
  subject: () => unknown,
  baseline: () => unknown,
): Promise<{ subjectMs: number; baselineMs: number }> {
  const bench = new Bench({ time: 400, warmupTime: 150, retainSamples: true })
    .add('baseline', baseline)
    .add('subject', subject);
  await bench.run();
  const [baselineMs, subjectMs] = bench.tasks.map((task) => {
    if (!('latency' in task.result))
      throw new Error(`${task.name} could not be measured: ${task.result.state}`);
    return task.result.latency.p50;
  });
  return { subjectMs: subjectMs as number, baselineMs: baselineMs as number };
}
