/**
 * The `doctor` command: checks everything that the bot needs and says what to fix. An entry of its own
 * beside `main.js`, so that it runs even where the bot can't be loaded. Changes nothing.
 */
import { parseArgs } from 'node:util';
import { examine, type SaidFinding } from '../doctor/examine.ts';
import { createLogger } from '../logger.ts';
import { say } from '../words/say.ts';

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

function lineOf({ level, check, words }: SaidFinding): string {
  const columns = [say('doctor-level', { level }).padEnd(LEVEL_WIDTH), say('doctor-check', { check })];
  return `${columns.join('').padEnd(LEVEL_WIDTH + CHECK_WIDTH)}${words}`;
}

/** @returns the exit code */
async function doctor(args: readonly string[]): Promise<number> {
  const options = readArguments(args);
  if (typeof options === 'string') {
    console.error(`${options}\n\n${say('doctor-usage')}`);
    return 2;
  }
  if (options.help) {
    console.log(say('doctor-usage'));
    return 0;
  }
  const findings = await examine({
    environment: process.env,
    manifestFile: options.manifest,
    // The findings say in plain words what the libraries would log about a failed call.
    logger: createLogger({ level: 'silent' }),
  });
  const isWell = findings.every(({ level }) => level !== 'fix');
  if (options.json) console.log(JSON.stringify({ ok: isWell, findings }, undefined, 2));
  else for (const finding of findings) console.log(lineOf(finding));
  return isWell ? 0 : 1;
}

// Not process.exit, which could cut off a long result on its way into a pipe.
process.exitCode = await doctor(process.argv.slice(2));
