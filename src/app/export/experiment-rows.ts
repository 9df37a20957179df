/** From what a team tries and tried to the lines of experiments.csv. Nobody is named. */
import { dayAt } from '../clock/local-time.ts';
import { CSV_COLUMNS } from '../csv/csv-columns.ts';
import type { CsvRow } from '../csv/write-csv.ts';
import type { Experiment } from '../experiments/experiment.ts';
import type { Sprint, Team } from '../team/team.ts';
import { withoutMentions } from './export-rows.ts';

/** In the order in which they began. */
export function experimentRows(
  { timeZone }: Pick<Team, 'timeZone'>,
  experiments: readonly Experiment[],
  sprints: readonly Sprint[],
): CsvRow<'experiments'>[] {
  return experiments.map(({ text, ratio, direction, begunAt, afterSprintId, ended }) => {
    const after = sprints.find(({ id }) => id === afterSprintId);
    return {
      experiment: withoutMentions(text),
      ratio: CSV_COLUMNS.sprints.find((column) => column.ratio === ratio)?.name,
      direction,
      'begun on': dayAt(begunAt, timeZone),
      'after sprint': after && withoutMentions(after.name),
      'after sprint first day': after?.startsOn,
      outcome: ended?.how,
      'ended on': ended && dayAt(ended.at, timeZone),
    };
  });
}
