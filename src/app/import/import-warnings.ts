/** What may be a slip in an import, or will leave questions open later. Pure. */

import type { PlannedSprint } from './import-plan.ts';
import type { ImportWarning } from './import-problem.ts';
import { alikeName } from './sprint-line.ts';

export function importWarnings(planned: readonly PlannedSprint[]): ImportWarning[] {
  const warning = (code: ImportWarning['code'], some: readonly PlannedSprint[]): ImportWarning[] =>
    some.length === 0 ? [] : [{ code, sprints: some.map(({ sprint }) => sprint.name) }];
  const sameName = [...Map.groupBy(planned, ({ sprint }) => alikeName(sprint.name)).values()]
    .filter(({ length }) => length > 1)
    .flatMap(([first]) => (first ? [first] : []));
  return [
    ...warning('same-name', sameName),
    ...warning(
      'no-finished',
      planned.filter(({ past }) => past.velocityPoints === undefined),
    ),
    ...warning(
      'no-working-day',
      planned.filter(({ workingDays }) => workingDays === 0),
    ),
  ];
}
