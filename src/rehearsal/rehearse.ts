/** The `rehearse` command: a page to play in, a scenario file played without one, or the stand-in alone. */
import { parseArgs } from 'node:util';
import { createLogger } from '../logger.ts';
import { say } from '../words/say.ts';
import { openPage } from './open-page.ts';
import { openStandIn } from './open-stand-in.ts';
import { playScenario, printPlay } from './play-file.ts';
import { readScenario, ScenarioError } from './scenario.ts';

const DEFAULT_SCENARIO = new URL('./scenarios/kept.json', import.meta.url);
const DEFAULT_PORT = 4747;

/** @returns the exit code, or undefined while something is being served */
export async function rehearse(args: readonly string[]): Promise<number | undefined> {
  const options = readArguments(args);
  if (typeof options === 'string') {
    console.error(`${options}\n\n${say('rehearsal-usage')}`);
    return 2;
  }
  if (options.help) {
    console.log(say('rehearsal-usage'));
    return 0;
  }
  const logger = createLogger({ level: 'warn', destination: process.stderr });
  try {
    if (options['stand-in-only']) {
      const { facts } = await openStandIn(Number(options.port ?? 0));
      console.log(JSON.stringify(facts));
      return undefined;
    }
    if (options.play === undefined) {
      const scenario = await readScenario(options.load ?? DEFAULT_SCENARIO, warnOfUnread);
      await openPage({ scenario, logger, port: Number(options.port ?? DEFAULT_PORT) });
      return undefined;
    }
    const scenario = await readScenario(options.play, warnOfUnread);
    const onStep = (did: string): void => console.error(did);
    const result = await playScenario({ scenario, logger, ...(options.json ? {} : { onStep }) });
    console.log(options.json ? JSON.stringify(result, undefined, 2) : printPlay(result));
    return 0;
  } catch (error) {
    const words = error instanceof ScenarioError ? error.message : portProblem(error);
    if (words === undefined) throw error;
    console.error(words);
    return 2;
  }
}

/** To standard error, so that the results stay one JSON document. */
function warnOfUnread(paths: readonly string[]): void {
  console.error(say('rehearsal-unread', { fields: paths }));
}

/** The one thing about a port that goes wrong on people's machines; undefined when it is something else. */
function portProblem(error: unknown): string | undefined {
  const { code, port } = error as { code?: unknown; port?: unknown };
  if (code !== 'EADDRINUSE') return undefined;
  return say('rehearsal-port-in-use', { port: String(port), next: String(Number(port) + 1) });
}

function readArguments(args: readonly string[]) {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        play: { type: 'string' },
        load: { type: 'string' },
        json: { type: 'boolean' },
        port: { type: 'string' },
        'stand-in-only': { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
    });
    if (values.json && values.play === undefined) return say('rehearsal-json-alone');
    if (values.port !== undefined && !/^\d{1,5}$/.test(values.port)) return say('rehearsal-port-wrong');
    return values;
  } catch (error) {
    return (error as Error).message;
  }
}
