/** Sets computed figures beside the published ones and says which differ. */
import { deliveryDifference } from './delivery-difference.ts';
import { describeSample } from './describe-sample.ts';
import type { PublishedFigures, Statistic } from './published-table-7.ts';
import type { SprintMoment } from './read-open-data.ts';
import { OpenDataError } from './read-open-data.ts';

export interface Comparison {
  readonly table: string;
  readonly project: string;
  readonly elapsedPercent: number;
  readonly statistic: Statistic;
  readonly computed: number;
  readonly published: string;
  /** Whether the computed figure, rounded as the published one was, is the published one. */
  readonly agrees: boolean;
}

/** Half a unit of the last decimal printed, and a hair for the binary form of the two numbers. */
function publishedRounding(printed: string): number {
  const decimals = printed.split('.')[1]?.length ?? 0;
  return 0.5 / 10 ** decimals + 1e-9;
}

/**
 * One comparison for each published figure about these rows' project.
 *
 * @throws OpenDataError when the rows hold fewer than two sprints at that moment.
 */
export function compareWithPublished(
  rows: readonly SprintMoment[],
  published: PublishedFigures,
): Comparison[] {
  const { table, project, elapsedPercent, figures } = published;
  const differences = rows.filter((row) => row.elapsedPercent === elapsedPercent).map(deliveryDifference);
  if (differences.length < 2) {
    throw new OpenDataError(`Project ${project} holds too few sprints at ${elapsedPercent}% of their time.`);
  }
  const sample = describeSample(differences);
  return (Object.entries(figures) as [Statistic, string][]).map(([statistic, printed]) => ({
    table,
    project,
    elapsedPercent,
    statistic,
    computed: sample[statistic],
    published: printed,
    agrees: Math.abs(sample[statistic] - Number(printed)) <= publishedRounding(printed),
  }));
}
