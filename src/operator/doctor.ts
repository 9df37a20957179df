/**
 * The `doctor` command: looks at everything that the bot needs and says what to mend. An entry of its own
 * beside `main.js`, so that it runs even where the bot could not be loaded. Changes nothing.
 */
import { parseArgs } from 'node:util';
import { examine } from '../doctor/examine.ts';
import type { Finding } from '../doctor/finding.ts';
import { createLogger } from '../logger.ts';

const USAGE = `Usage:
  npm run doctor                        check everything, a line for each finding
  npm run doctor -- --json              the same as one JSON document
  npm run doctor -- --manifest FILE     check this app manifest instead of the one that comes with the bot
It ends with code 0 when nothing is to be mended, else with 1.`;

const LEVEL_WIDTH = 9;
const CHECK_WIDTH = 13;

function readArguments(args: readonly string[]) {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        json: { type: 'boolean' },
        manifest: { type: 'string' },
        help: { type: 'boolean', short: 'h' },
      },
    });
    return values;
  } catch (error) {
    return (error as Error).message;
  }
}

function lineOf({ level, check, found, mend }: Finding): string {
  const words = mend === undefined ? found : `${found} ${mend}`;
  return `${level.padEnd(LEVEL_WIDTH)}${check.padEnd(CHECK_WIDTH)}${words}`;
}

/** @returns the exit code */
async function doctor(args: readonly string[]): Promise<number> {
  const options = readArguments(args);
  if (typeof options === 'string') {
    console.error(`${options}\n\n${USAGE}`);
    return 2;
  }
  if (options.help) {
    console.log(USAGE);
    return 0;
  }
  const findings = await examine({
    environment: process.env,
    manifestFile: options.manifest,
    // What the libraries have to say about a failed call is in the findings, in plainer words.
    logger: createLogger({ level: 'silent' }),
  });
  const isWell = findings.every(({ level }) => level !== 'mend');
  if (options.json) console.log(JSON.stringify({ ok: isWell, findings }, undefined, 2));
  else for (const finding of findings) console.log(lineOf(finding));
  return isWell ? 0 : 1;
}

// Not process.exit: a long result may still be on its way to a pipe.
process.exitCode = await doctor(process.argv.slice(2));
