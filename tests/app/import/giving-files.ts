/** Gives files to the import as a facilitator, and tells what came of it. */
import { expect } from 'vitest';
import type { PastSprint } from '../../../src/app/history/past-sprint.ts';
import { pastSprints } from '../../../src/app/history/team-history.ts';
import type { ImportPreview } from '../../../src/app/import/import-reading.ts';
import type { ImportOutcome, SprintsImported } from '../../../src/app/import/import-sprints.ts';
import { importSprints } from '../../../src/app/import/import-sprints.ts';
import type { Team } from '../../../src/app/team/team.ts';
import { lineProblemWords } from '../../../src/words/import-problems.ts';
import { actorOf, type Harness } from '../../support/app-harness.ts';

const ANA = actorOf('ana');

export const HEADER = 'name,first day,last day,commitment,pulled in,surprise,finished,points worked';
export const GOOD = `${HEADER}\nHarbour 1,2026-01-05,2026-01-16,20,2,1,18,21\nHarbour 2,2026-01-19,2026-01-30,21.5,0,0,21.5,20`;

export type Files = Readonly<Record<string, string>>;

export function give(h: Harness, team: Team, files: Files, seen?: string): Promise<ImportOutcome> {
  const all = Object.entries(files).map(([fileName, text]) => ({ fileName, text }));
  return importSprints(h.deps, ANA, { teamId: team.id, files: all, seen });
}

export async function previewed(h: Harness, team: Team, files: Files): Promise<ImportPreview> {
  const outcome = await give(h, team, files);
  if (outcome.kind !== 'preview') throw new Error('imported without a preview');
  return outcome.preview;
}

export async function imported(h: Harness, team: Team, files: Files): Promise<SprintsImported> {
  const { fingerprint, problems } = await previewed(h, team, files);
  expect(problems).toEqual([]);
  const outcome = await give(h, team, files, fingerprint);
  if (outcome.kind !== 'imported') throw new Error('only previewed');
  return outcome.imported;
}

export async function teamOf(h: Harness) {
  return { h, team: await h.setUpTeam() };
}

/** `line: words` of everything that is wrong. */
export async function wrongWith(h: Harness, files: Files | string): Promise<string[]> {
  const into = await h.setUpTeam();
  const given = typeof files === 'string' ? { 'sprints.csv': files } : files;
  const { problems, sprints } = await previewed(h, into, given);
  expect(sprints).toEqual([]);
  return problems.map(({ lineNumber, problem }) => `${lineNumber}: ${lineProblemWords(problem)}`);
}

export const past = (h: Harness, of: Team): Promise<readonly PastSprint[]> =>
  h.write((tx) => pastSprints(tx, of));
