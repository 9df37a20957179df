/** From the bodies of work that a team keeps to the lines of bodies.csv and dates.csv. Nobody is named. */
import { type BodyOfWork, isToDo, type ToldDates } from '../bodies/body-of-work.ts';
import { dayAt } from '../clock/local-time.ts';
import type { CsvRow } from '../csv/write-csv.ts';
import type { Team } from '../team/team.ts';
import { withoutMentions } from './export-rows.ts';

/** @param kept all of the team's, in their order */
export function bodyRows(
  { timeZone }: Pick<Team, 'timeZone'>,
  kept: readonly BodyOfWork[],
  told: readonly ToldDates[],
): { readonly bodies: CsvRow<'bodies'>[]; readonly dates: CsvRow<'dates'>[] } {
  const tellings = Map.groupBy(told, ({ bodyId }) => bodyId);
  const toDo = kept.filter(isToDo);
  const all = [...toDo, ...kept.filter((body) => !isToDo(body)).sort(byTheirEnd)];
  const named = (body: BodyOfWork) => ({
    body: withoutMentions(body.name),
    'kept on': dayAt(body.keptAt, timeZone),
  });
  return {
    bodies: all.map((body, i) => ({
      ...named(body),
      'to do': body.leftPoints,
      turn: i < toDo.length ? i + 1 : undefined,
      growth: body.growthPoints,
      'growth at most': body.growthMostPoints,
      share: body.sharePercent === undefined ? undefined : body.sharePercent / 100,
      'said on': dayAt(body.saidAt, timeZone),
      'done on': body.doneAt && dayAt(body.doneAt, timeZone),
    })),
    dates: all.flatMap((body) =>
      (tellings.get(body.id) ?? []).map((one) => ({
        ...named(body),
        'told on': one.toldOn,
        'to do': one.leftPoints,
        'sprints since': one.sprintsSinceSaid,
        optimistic: one.optimisticOn,
        likely: one.likelyOn,
        pessimistic: one.pessimisticOn,
      })),
    ),
  };

  /** The same order wherever they were recorded: by the day, for an import knows no more of it. */
  function byTheirEnd(a: BodyOfWork, b: BodyOfWork): number {
    const key = ({ doneAt, name }: BodyOfWork): string => `${doneAt && dayAt(doneAt, timeZone)} ${name}`;
    return key(a) < key(b) ? -1 : 1;
  }
}
