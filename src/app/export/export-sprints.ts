/** Hands out everything that is known of a team's sprints, as CSV files. Reads only. */
import { ratioOfSums } from '../../sprint/sprint-ratios.ts';
import { fileNameOf, HISTORY_KINDS, type HistoryKind } from '../csv/csv-columns.ts';
import { type CsvRow, writeCsv } from '../csv/write-csv.ts';
import { baselineOfPast } from '../history/baseline-of.ts';
import { pastSprints } from '../history/team-history.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { Refusal } from '../refusal.ts';
import { membershipAt, type Place, requireFacilitator } from '../team/place.ts';
import type { Actor, Sprint, Team } from '../team/team.ts';
import { experimentRows } from './experiment-rows.ts';
import { type ExportedSprint, type ExportRows, exportRows } from './export-rows.ts';

type ExportedKind = HistoryKind | 'experiments';

export interface ExportedFile {
  readonly fileName: string;
  /** UTF-8 with a byte order mark. */
  readonly bytes: Uint8Array;
}

export interface TeamExport {
  readonly team: Team;
  readonly files: readonly ExportedFile[];
  /** Lines in each file, the line of column names left out. */
  readonly lines: { readonly [Kind in ExportedKind]: number };
  /** How many of the sprints are not closed ones; an import leaves these out. */
  readonly running: number;
  readonly cancelled: number;
}

/** @throws Refusal `nothing-to-export`, `not-a-facilitator`, and those of finding the team. */
export async function exportSprints(deps: AppDependencies, actor: Actor, place: Place): Promise<TeamExport> {
  const { team, all, experiments } = await deps.store.transaction(async (tx) => {
    const membership = await membershipAt(tx.read, actor, place);
    requireFacilitator(membership, 'export');
    const { team } = membership;
    const experiments = await tx.read.experimentsOf(team.id);
    return { team, all: await exportedSprints(tx, team), experiments };
  });
  if (all.length === 0) throw new Refusal('nothing-to-export', { teamName: team.name });
  const sprints = all.map(({ sprint }) => sprint);
  const rows = { ...exportRows(team, all), experiments: experimentRows(team, experiments, sprints) };
  // A team that tried nothing has no such file.
  const kinds: readonly ExportedKind[] =
    rows.experiments.length === 0 ? HISTORY_KINDS : [...HISTORY_KINDS, 'experiments'];
  const count = (state: Sprint['state']): number => all.filter(({ sprint }) => sprint.state === state).length;
  return {
    team,
    files: kinds.map((kind) => ({ fileName: fileNameOf(kind), bytes: bytesOf(kind, rows) })),
    lines: {
      sprints: rows.sprints.length,
      cards: rows.cards.length,
      answers: rows.answers.length,
      changes: rows.changes.length,
      experiments: rows.experiments.length,
    },
    running: count('open'),
    cancelled: count('cancelled'),
  };
}

type AllRows = ExportRows & { readonly experiments: readonly CsvRow<'experiments'>[] };

function bytesOf<Kind extends ExportedKind>(kind: Kind, rows: AllRows): Uint8Array {
  return new TextEncoder().encode(writeCsv(kind, rows[kind] as readonly CsvRow<Kind>[]));
}

async function exportedSprints(tx: Transaction, team: Team): Promise<ExportedSprint[]> {
  const past = await pastSprints(tx, team);
  const baseline = baselineOfPast(team, past)?.baseline;
  const pastOf = new Map(past.map((sprint) => [sprint.sprintId, sprint]));
  const posted = new Map(
    (await tx.read.closedSprintsOf(team.id)).map(({ sprint, result }) => [sprint.id, result]),
  );
  const sprints = (await tx.read.sprintsOf(team.id)).sort(inOrder);
  const records = await tx.read.recordsOfMany(sprints.map(({ id }) => id));
  const all: ExportedSprint[] = [];
  for (const sprint of sprints) {
    const { id, state } = sprint;
    const leftBehind = state === 'closed' ? pastOf.get(id) : undefined;
    const result = state === 'cancelled' ? await tx.read.latestResult(id) : posted.get(id);
    all.push({
      sprint,
      records: records.get(id) ?? { cards: [], facts: [] },
      past: leftBehind,
      postedVerdict: result?.summary.verdict.verdict,
      posted: result?.summary,
      velocityGrowth:
        leftBehind?.velocityPoints === undefined
          ? undefined
          : ratioOfSums('velocityGrowth', {
              velocityPoints: leftBehind.velocityPoints,
              baselineVelocityPoints: baseline?.velocityPoints ?? 0,
            }),
    });
  }
  return all;
}

/** The same order whenever and wherever they were recorded. */
function inOrder(a: Sprint, b: Sprint): number {
  const keys = (sprint: Sprint): string[] => [sprint.startsOn, sprint.endsOn, sprint.name];
  const [left, right] = [keys(a), keys(b)];
  const differing = left.findIndex((key, i) => key !== right[i]);
  return differing < 0 ? 0 : (left[differing] as string) < (right[differing] as string) ? -1 : 1;
}
