/**
 * How well the projection does for a team that has an installation to itself: each board walks alone, and nobody
 * lends it anything. Only sprints with cards at the moment, as in the bot.
 */
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { MOMENTS_PERCENT, rowsAt, withCards } from './moments.ts';
import { coverageOf, type Foretold, meanError, walkForward } from './walk-forward.ts';

/** How many sprints the team had behind it, first and last. */
const HISTORIES = [
  { history: '6-11', from: 6, to: 11 },
  { history: '12-24', from: 12, to: 24 },
] as const;

/** All boards of a file at one moment, by how many sprints they had behind them. */
export interface LoneTeamScore {
  readonly history: (typeof HISTORIES)[number]['history'];
  readonly elapsedPercent: number;
  readonly scored: number;
  readonly errorShareOfFinishShare: number;
  readonly coverage80: number;
}

/** The histories and moments that have a case at least. */
export function scoreLoneTeams(rows: readonly SprintMoment[]): LoneTeamScore[] {
  return MOMENTS_PERCENT.flatMap((elapsedPercent) => {
    const there = rowsAt(rows, elapsedPercent).filter(withCards);
    const boards = [...Map.groupBy(there, ({ board }) => board).values()].map((own) => walkForward(own, 0));
    return HISTORIES.flatMap(({ history, from, to }) => {
      const cases = boards.flatMap((foretold) => foretold.slice(from, to + 1));
      return cases.length === 0 ? [] : [{ history, elapsedPercent, ...summaryOf(cases) }];
    });
  });
}

function summaryOf(cases: readonly Foretold[]): Omit<LoneTeamScore, 'history' | 'elapsedPercent'> {
  return {
    scored: cases.length,
    errorShareOfFinishShare:
      meanError(cases, ({ projection }) => projection.medianPoints) /
      meanError(cases, ({ finishSharePoints }) => finishSharePoints),
    coverage80: coverageOf(cases, 'wide'),
  };
}
