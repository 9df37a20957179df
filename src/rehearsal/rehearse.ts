/** The `rehearse` command: a page to play in, or a scenario file played without one. */
import { parseArgs } from 'node:util';
import { createLogger } from '../logger.ts';
import { openPage } from './open-page.ts';
import { playScenario } from './play-file.ts';
import { printPlay } from './print-play.ts';
import { readScenario, ScenarioError } from './scenario.ts';

const USAGE = `Usage:
  npm run rehearse                           open a workspace with a page to play in
  npm run rehearse -- --load FILE            the same, with a scenario file preloaded
  npm run rehearse -- --play FILE [--json]   play a scenario file and print every post, or the results as JSON
  npm run rehearse -- --port NUMBER          serve the page on this port`;

const DEFAULT_SCENARIO = new URL('./scenarios/kept.json', import.meta.url);
const DEFAULT_PORT = 4747;

/** @returns the exit code, or undefined while the page is being served */
export async function rehearse(args: readonly string[]): Promise<number | undefined> {
  const options = readArguments(args);
  if (typeof options === 'string') {
    console.error(`${options}\n\n${USAGE}`);
    return 2;
  }
  if (options.help) {
    console.log(USAGE);
    return 0;
  }
  const logger = createLogger({ level: 'warn', destination: process.stderr });
  try {
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
  console.error(`These fields are not known and have no effect, perhaps misspelled: ${paths.join(', ')}.`);
}

/** The one thing about a port that goes wrong on people's machines; undefined when it is something else. */
function portProblem(error: unknown): string | undefined {
  const { code, port } = error as { code?: unknown; port?: unknown };
  if (code !== 'EADDRINUSE') return undefined;
  return `Port ${port} is in use, perhaps by another rehearsal. Choose one: npm run rehearse -- --port ${Number(port) + 1}`;
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
        help: { type: 'boolean', short: 'h' },
      },
    });
    if (values.json && values.play === undefined) return '--json goes with --play FILE.';
    if (values.port !== undefined && !/^\d{1,5}$/.test(values.port))
      return '--port takes a number, such as 4747.';
    return values;
  } catch (error) {
    return (error as Error).message;
  }
}
