/**
 * Settings that stand in files: a variable `NAME_FILE` holds the path of a file that holds the value of
 * `NAME`, as container engines and service managers hand over secrets. Must not let a secret into a message.
 */
import { readFileSync, statSync } from 'node:fs';
import { ConfigError } from './config.ts';

type Environment = Readonly<Record<string, string | undefined>>;

const IN_FILE = /^(LOADLINE_[A-Z_]+|DATABASE_URL)_FILE$/;
/** A file beyond this is something else, given by mistake. */
const LARGEST_BYTES = 64 * 1024;

/**
 * @returns the environment with the values of the files in it; other variables are left alone
 * @throws ConfigError with every file that can't be read, and every value that is given twice
 */
export function readSecretFiles(environment: Environment): Environment {
  const values: Record<string, string> = {};
  const problems: string[] = [];
  for (const [variable, path] of Object.entries(environment)) {
    const [, name] = IN_FILE.exec(variable) ?? [];
    if (name === undefined || !path?.trim()) continue;
    if (environment[name]?.trim()) {
      problems.push(`${variable} is set, and ${name} as well. Keep one of them.`);
      continue;
    }
    const read = contentOf(path.trim());
    if (read.problem === undefined) values[name] = read.content;
    else problems.push(`${variable} names a file that ${read.problem}.`);
  }
  if (problems.length > 0) throw new ConfigError(problems);
  return { ...environment, ...values };
}

type Content = { readonly content: string; readonly problem?: undefined } | { readonly problem: string };

function contentOf(path: string): Content {
  try {
    if (statSync(path).size > LARGEST_BYTES) return { problem: 'is too large for a setting' };
    const content = readFileSync(path, 'utf8').trim();
    return content === '' ? { problem: 'is empty' } : { content };
  } catch (error) {
    const { code } = error as { code?: unknown };
    if (code === 'ENOENT') return { problem: 'does not exist. Check its path and its mount' };
    return { problem: `can not be read (${String(code)}). Let the user that runs the bot read it` };
  }
}
