/** From the bodies of work that a team keeps to the lines of bodies.csv and dates.csv. Nobody is named. */

import type { Day } from '../../sprint/calendar.ts';
import {
  BODY_NAME_MAX_LENGTH,
  type BodyOfWork,
  isSameName,
  isToDo,
  type ToldDates,
} from '../bodies/body-of-work.ts';
import { dayAt } from '../clock/local-time.ts';
import type { CsvRow } from '../csv/write-csv.ts';
import type { Team } from '../team/team.ts';
import { numberedName, withoutMentions } from './export-rows.ts';

/** @param kept all of the team's, in their order */
export function bodyRows(
  { timeZone }: Pick<Team, 'timeZone'>,
  kept: readonly BodyOfWork[],
  told: readonly ToldDates[],
): { readonly bodies: CsvRow<'bodies'>[]; readonly dates: CsvRow<'dates'>[] } {
  const tellings = Map.groupBy(told, ({ bodyId }) => bodyId);
  const all = labelledBodies(kept, timeZone).map(({ body, name, keptOn, number }) => {
    return { body, label: { body: name, 'kept on': keptOn, number: number === 1 ? undefined : number } };
  });
  return {
    bodies: all.map(({ body, label }, i) => ({
      ...label,
      'to do': body.leftPoints,
      turn: isToDo(body) ? i + 1 : undefined,
      growth: body.growthPoints,
      'growth at most': body.growthMostPoints,
      share: body.sharePercent === undefined ? undefined : body.sharePercent / 100,
      'said on': dayAt(body.saidAt, timeZone),
      'done on': body.doneAt && dayAt(body.doneAt, timeZone),
    })),
    dates: all.flatMap(({ body, label }) =>
      (tellings.get(body.id) ?? []).map((one) => ({
        ...label,
        'told on': one.toldOn,
        'to do': one.leftPoints,
        'sprints since': one.sprintsSinceSaid,
        optimistic: one.optimisticOn,
        likely: one.likelyOn,
        pessimistic: one.pessimisticOn,
      })),
    ),
  };
}

/** How an export tells a body of work from the team's others. */
interface LabelledBody {
  readonly body: BodyOfWork;
  readonly name: string;
  readonly keptOn: Day;
  /** From 1, among those of the same name that were kept on the same day. */
  readonly number: number;
}

/**
 * Those to do in their order, then what is done by its day: the same order wherever they were recorded, for an import knows
 * no more than the days.
 *
 * @param kept all of the team's, in their order
 */
export function labelledBodies(kept: readonly BodyOfWork[], timeZone: string): LabelledBody[] {
  const toDo = kept.filter(isToDo);
  const endOf = ({ doneAt, name }: BodyOfWork): string => `${doneAt && dayAt(doneAt, timeZone)} ${name}`;
  const done = kept.filter((body) => !isToDo(body));
  done.sort((a, b) => Number(endOf(a) > endOf(b)) - Number(endOf(a) < endOf(b)));
  const labelled: LabelledBody[] = [];
  for (const body of [...toDo, ...done]) {
    const shown = withoutMentions(body.name, BODY_NAME_MAX_LENGTH);
    const isTaken = isToDo(body) && labelled.some(({ name }) => isSameName(name, shown));
    const name = isTaken ? unlike(labelled, shown) : shown;
    const keptOn = dayAt(body.keptAt, timeZone);
    const twins = labelled.filter((one) => one.keptOn === keptOn && isSameName(one.name, name));
    labelled.push({ body, name, keptOn, number: twins.length + 1 });
  }
  return labelled;
}

/** A team can't keep two of one name to do; where only the person in it told them apart, a number does. */
function unlike(others: readonly LabelledBody[], name: string): string {
  for (let number = 2; ; number += 1) {
    const numbered = numberedName(name, number, BODY_NAME_MAX_LENGTH);
    if (!others.some((other) => isSameName(other.name, numbered))) return numbered;
  }
}
