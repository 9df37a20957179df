/**
 * Settings in files: a variable `NAME_FILE` holds the path of a file with the value of `NAME`, as container engines and
 * service managers pass secrets. Must not let a secret into a problem.
 */
import { readFileSync, statSync } from 'node:fs';
import { ConfigError } from './config.ts';
import type { RuleProblem, SettingProblem } from './setting-rules.ts';

type Environment = Readonly<Record<string, string | undefined>>;

const IN_FILE = /^(LOADLINE_[A-Z_]+|DATABASE_URL)_FILE$/;
/** All authorities that a large provider signs with are half of this. A file beyond it was given by mistake. */
const LARGEST_BYTES = 512 * 1024;

/**
 * @returns the environment with the values of the files in it; other variables are left alone
 * @throws ConfigError with every file that can't be read, and every value that is given twice
 */
export function readSecretFiles(environment: Environment): Environment {
  const values: Record<string, string> = {};
  const problems: SettingProblem[] = [];
  for (const [variable, path] of Object.entries(environment)) {
    const [, name] = IN_FILE.exec(variable) ?? [];
    if (name === undefined || !path?.trim()) continue;
    if (environment[name]?.trim()) {
      problems.push({ code: 'file-and-value', variable, name });
      continue;
    }
    const read = contentOf(path.trim());
    if (typeof read === 'string') values[name] = read;
    else problems.push({ ...read, variable });
  }
  if (problems.length > 0) throw new ConfigError(problems);
  return { ...environment, ...values };
}

function contentOf(path: string): string | RuleProblem {
  try {
    if (statSync(path).size > LARGEST_BYTES) return { code: 'file-too-large' };
    return readFileSync(path, 'utf8').trim() || { code: 'file-empty' };
  } catch (error) {
    const { code } = error as { code?: unknown };
    return code === 'ENOENT' ? { code: 'file-missing' } : { code: 'file-unreadable', reason: String(code) };
  }
}
