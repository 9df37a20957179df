/** The backtest's findings as one document, and as tables for a reader. */
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { binsOf, type ChanceBin, toldChancesToKeep } from './score-chances.ts';
import { type FirstDaysScore, planningOf, scoreFirstDays } from './score-first-days.ts';
import { type ImportedScore, scoreImported } from './score-imported.ts';
import { type JointScore, scoreJoint } from './score-joint.ts';
import { type LoneTeamScore, scoreLoneTeams } from './score-lone-teams.ts';
import { type PlanningBin, scorePlanning, toldAtPlanning } from './score-planning.ts';
import {
  type ForetoldMoment,
  foretellMoments,
  type ProjectionScore,
  scoreProjection,
} from './score-projection.ts';
import { type PulledInScore, scorePulledIn } from './score-pulled-in.ts';
import { type RangeScore, scoreRange } from './score-range.ts';
import type { ReleaseScore } from './score-release.ts';
import { BACKLOGS_SPRINTS, scoreRelease } from './score-release.ts';
import type { Foretold } from './walk-forward.ts';

export interface BacktestReport {
  readonly projection: readonly ({ readonly file: string } & ProjectionScore)[];
  readonly loneTeam: readonly ({ readonly file: string } & LoneTeamScore)[];
  readonly imported: readonly ({ readonly file: string } & ImportedScore)[];
  /** All moments and files together, sprints with cards only. */
  readonly chances: readonly ChanceBin[];
  readonly chancesByFile: readonly ({ readonly file: string } & ChanceBin)[];
  /** The status of a sprint's first days beside its planning, sprints with cards only. */
  readonly firstDays: readonly ({ readonly file: string } & FirstDaysScore)[];
  /** Sprints into which work came, each board alone. */
  readonly pulledIn: readonly ({ readonly file: string } & PulledInScore)[];
  /** All files together, and each on its own. */
  readonly planning: readonly PlanningBin[];
  readonly planningByFile: readonly ({ readonly file: string } & PlanningBin)[];
  readonly range: readonly ({ readonly file: string } & RangeScore)[];
  readonly release: readonly ({ readonly file: string } & ReleaseScore)[];
  readonly joint: readonly ({ readonly file: string } & JointScore)[];
}

/** Each file on its own: the projects of different files are strangers to each other. */
export function backtestReport(
  files: readonly { readonly file: string; readonly rows: readonly SprintMoment[] }[],
): BacktestReport {
  const foretold = files.map(({ file, rows }) => {
    const moments = foretellMoments(rows);
    const planning = planningOf(rows);
    return { file, moments, planning, told: toldChancesToKeep(casesWithCards(moments), planning) };
  });
  const planned = files.map(({ file, rows }) => ({ file, cases: toldAtPlanning(rows) }));
  return {
    projection: foretold.flatMap(({ file, moments }) =>
      moments.map((moment) => ({ file, ...scoreProjection(moment) })),
    ),
    loneTeam: files.flatMap(({ file, rows }) => scoreLoneTeams(rows).map((score) => ({ file, ...score }))),
    imported: files.flatMap(({ file, rows }) => scoreImported(rows).map((score) => ({ file, ...score }))),
    chances: binsOf(foretold.flatMap(({ told }) => told)),
    chancesByFile: foretold.flatMap(({ file, told }) => binsOf(told).map((bin) => ({ file, ...bin }))),
    firstDays: foretold.flatMap(({ file, moments, planning }) =>
      moments
        .filter(({ set }) => set === 'with-cards')
        .flatMap(({ cases }) => scoreFirstDays(cases, planning) ?? [])
        .map((score) => ({ file, ...score })),
    ),
    pulledIn: files.flatMap(({ file, rows }) => scorePulledIn(rows).map((score) => ({ file, ...score }))),
    planning: scorePlanning(planned.flatMap(({ cases }) => cases)),
    planningByFile: planned.flatMap(({ file, cases }) =>
      scorePlanning(cases).map((bin) => ({ file, ...bin })),
    ),
    range: files.map(({ file, rows }) => ({ file, ...scoreRange(rows) })),
    release: files.flatMap(({ file, rows }) => scoreRelease(rows).map((score) => ({ file, ...score }))),
    joint: files.flatMap(({ file, rows }) => scoreJoint(rows).map((score) => ({ file, ...score }))),
  };
}

function casesWithCards(moments: readonly ForetoldMoment[]): Foretold[] {
  return moments.filter(({ set }) => set === 'with-cards').flatMap(({ cases }) => cases);
}

/** The report as text; lists every row, and sums the boards of a file up. */
export function reportText({
  projection,
  loneTeam,
  imported,
  chances,
  chancesByFile,
  firstDays,
  pulledIn,
  planning,
  planningByFile,
  range,
  release,
  joint,
}: BacktestReport): string {
  return [
    'Projection of the delivered points, in points; shares in %',
    ...table(
      [
        'file',
        'sprints',
        'elapsed',
        'scored',
        'error',
        'of baseline',
        'of finish share',
        'held 50%',
        'held 80%',
        'width 50%',
        'width 80%',
        'CRPS',
      ],
      projection.map((row) => [
        row.file,
        row.set,
        `${row.elapsedPercent}%`,
        String(row.scored),
        row.meanAbsoluteError.toFixed(2),
        percent(row.errorShare),
        percent(row.errorShareOfFinishShare),
        percent(row.coverage50),
        percent(row.coverage80),
        row.width50.toFixed(1),
        row.width80.toFixed(1),
        row.crps.toFixed(2),
      ]),
    ),
    '',
    'A team that has the installation to itself; shares in %',
    ...table(
      ['file', 'sprints before', 'elapsed', 'scored', 'of finish share', 'held 80%'],
      loneTeam.map((row) => [
        row.file,
        row.history,
        `${row.elapsedPercent}%`,
        String(row.scored),
        percent(row.errorShareOfFinishShare),
        percent(row.coverage80),
      ]),
    ),
    '',
    'A team whose past was imported, alone; sprints that had not reached the floor of the kept share',
    ...table(
      ['file', 'elapsed', 'scored', 'error', 'Brier to keep'],
      imported.map((row) => [
        row.file,
        `${row.elapsedPercent}%`,
        String(row.scored),
        row.meanAbsoluteError.toFixed(2),
        row.brier.toFixed(3),
      ]),
    ),
    '',
    'Chances to keep four fifths of what is committed, in %',
    ...table(
      ['file', 'told', 'came true', 'cases'],
      [...chances.map((bin) => ({ file: 'all', ...bin })), ...chancesByFile].map((row) => [
        row.file,
        percent(row.told),
        percent(row.came),
        String(row.cases),
      ]),
    ),
    '',
    'Status in a sprint’s first days beside its planning: points apart, and Brier scores',
    ...table(
      ['file', 'elapsed', 'cases', 'apart', 'projection', 'Brier', 'projection'],
      firstDays.map((row) => [
        row.file,
        `${row.elapsedPercent}%`,
        String(row.cases),
        percent(row.apart),
        percent(row.projectionApart),
        row.brier.toFixed(4),
        row.projectionBrier.toFixed(4),
      ]),
    ),
    '',
    'Chances to finish everything once more work had come in, in %, and Brier scores',
    ...table(
      ['file', 'most ever open', 'cases', 'told', 'projection', 'came true', 'Brier', 'projection'],
      pulledIn.map((row) => [
        row.file,
        row.isMostEver ? 'yes' : 'no',
        String(row.cases),
        percent(row.told),
        percent(row.projectionTold),
        percent(row.came),
        row.brier.toFixed(4),
        row.projectionBrier.toFixed(4),
      ]),
    ),
    '',
    'Chances at planning, of what was committed to, in %',
    ...table(
      ['file', 'chance', 'told', 'came true', 'cases'],
      [...planning.map((bin) => ({ file: 'all', ...bin })), ...planningByFile].map((row) => [
        row.file,
        row.chance,
        percent(row.told),
        percent(row.came),
        String(row.cases),
      ]),
    ),
    '',
    'Commitment range: sprints, and of the judged ones shares in %, told / came true',
    ...table(
      ['file', 'asked', 'crossed', 'told', 'judged', 'kept', 'whole', 'judged at high end', 'kept'],
      range.map((row) => [
        row.file,
        ...[row.asked, row.crossed, row.told, row.judged].map(String),
        `${percent(row.keptChance)} / ${percent(row.kept)}`,
        `${percent(row.wholeChance)} / ${percent(row.whole)}`,
        String(row.judgedAtHighEnd),
        percent(row.keptAtHighEnd),
      ]),
    ),
    '',
    'Release dates: share of cases in which they held, in %',
    ...table(
      ['file', 'board', 'sprints’ worth', 'cases', '15% date', '50% date', '85% date'],
      [...release.map((row) => releaseRow(row.file, String(row.board), row)), ...allBoards(release)],
    ),
    '',
    'Joint dates of two boards: share of cases in which both were done, in %',
    ...table(
      ['file', 'sprints’ worth', 'pairs', 'cases', 'surely 50%', 'soonest 50%', 'surely 85%', 'soonest 85%'],
      joint.map((row) => [
        row.file,
        ...[row.backlogSprints, row.pairs, row.cases].map(String),
        ...[row.heldSurely50, row.heldSoonest50, row.heldSurely85, row.heldSoonest85].map(percent),
      ]),
    ),
  ].join('\n');
}

type HeldShares = Omit<ReleaseScore, 'board'>;

function releaseRow(file: string, board: string, row: HeldShares): string[] {
  return [
    file,
    board,
    String(row.backlogSprints),
    String(row.cases),
    percent(row.held15),
    percent(row.held50),
    percent(row.held85),
  ];
}

function allBoards(release: BacktestReport['release']): string[][] {
  return [...new Set(release.map(({ file }) => file))].flatMap((file) =>
    BACKLOGS_SPRINTS.map((backlogSprints) => ({
      backlogSprints,
      rows: release.filter((row) => row.file === file && row.backlogSprints === backlogSprints),
    }))
      .filter(({ rows }) => rows.length > 0)
      .map(({ backlogSprints, rows }) => {
        const cases = rows.reduce((sum, row) => sum + row.cases, 0);
        const held = (share: (row: ReleaseScore) => number): number =>
          rows.reduce((sum, row) => sum + share(row) * row.cases, 0) / cases;
        return releaseRow(file, 'all', {
          backlogSprints,
          cases,
          held15: held(({ held15 }) => held15),
          held50: held(({ held50 }) => held50),
          held85: held(({ held85 }) => held85),
        });
      }),
  );
}

function percent(share: number | undefined): string {
  return share === undefined ? '–' : (share * 100).toFixed(1);
}

/** Columns two spaces apart; numbers to the right. */
function table(titles: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const widths = titles.map((title, i) =>
    Math.max(title.length, ...rows.map((row) => (row[i] as string).length)),
  );
  return [titles, ...rows].map((row) =>
    row
      .map((cell, i) => (i === 0 ? cell.padEnd(widths[i] as number) : cell.padStart(widths[i] as number)))
      .join('  '),
  );
}
