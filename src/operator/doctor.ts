/** The `doctor` command: checks everything that the bot needs and says what to fix. Changes nothing. */
import { parseArgs } from 'node:util';
import { examine, type SaidFinding } from '../doctor/examine.ts';
import { createLogger } from '../logger.ts';
import { say } from '../words/say.ts';
import type { CommandResult, Environment } from './operator-command.ts';

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

export async function doctor(args: readonly string[], environment: Environment): Promise<CommandResult> {
  const options = readArguments(args);
  if (typeof options === 'string') return { code: 2, stderr: `${options}\n\n${say('doctor-usage')}` };
  if (options.help) return { code: 0, stdout: say('doctor-usage') };
  const findings = await examine({
    environment,
    manifestFile: options.manifest,
    // The findings say in plain words what the libraries would log about a failed call.
    logger: createLogger({ level: 'silent' }),
  });
  const isWell = findings.every(({ level }) => level !== 'fix');
  const stdout = options.json
    ? JSON.stringify({ ok: isWell, findings }, undefined, 2)
    : findings.map(lineOf).join('\n');
  return { code: isWell ? 0 : 1, stdout };
}
