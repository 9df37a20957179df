/**
 * Scores projection and release forecast on past sprints: `npm run backtest -- FILE… [--json]`; with `--distinct` without
 * boards that show the sprints of another, so that each team counts once; with `--own` on the sprints
 * that this installation has seen, as `npm run own-record` does. Exits with 2 when a
 * file is missing or not as it should be.
 */
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { scoreOwnRecord } from '../../src/operator/own-record.ts';
import { OpenDataError, readOpenData } from '../open-data/read-open-data.ts';
import { backtestReport, reportText } from './backtest-report.ts';
import { distinctBoards } from './moments.ts';

function giveUp(message: string): never {
  console.error(message);
  process.exit(2);
}

function readFile(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    giveUp(`${file} cannot be read: ${(error as Error).message}`);
  }
}

function readArguments(): { files: string[]; json: boolean; own: boolean; distinct: boolean } {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { json: { type: 'boolean' }, own: { type: 'boolean' }, distinct: { type: 'boolean' } },
    });
    const { json = false, own = false, distinct = false } = values;
    return { files: positionals, json, own, distinct };
  } catch (error) {
    giveUp((error as Error).message);
  }
}

const { files, json, own, distinct } = readArguments();
if (own) {
  if (files.length > 0) giveUp('The own record needs no files: npm run backtest -- --own [--json]');
  const { code, stdout, stderr } = await scoreOwnRecord(json ? ['--json'] : [], process.env);
  if (stdout !== undefined) console.log(stdout);
  if (stderr !== undefined) console.error(stderr);
  process.exit(code);
}
if (files.length === 0)
  giveUp('Name the files that hold past sprints: npm run backtest -- FILE… [--distinct] [--json]');
try {
  const report = backtestReport(
    files.map((file) => {
      const rows = readOpenData(readFile(file), file);
      return { file, rows: distinct ? distinctBoards(rows) : rows };
    }),
  );
  console.log(json ? JSON.stringify(report, undefined, 2) : reportText(report));
} catch (error) {
  if (!(error instanceof OpenDataError)) throw error;
  giveUp(error.message);
}
