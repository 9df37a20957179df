/** What may be a slip in an import, or will leave questions open later. None of it stops the import. Pure. */
import { alikeName } from './alike-name.ts';
import type { PlannedSprint } from './import-plan.ts';

const NAMES_SHOWN = 5;

export function importWarnings(planned: readonly PlannedSprint[]): string[] {
  const warnings: string[] = [];
  const warn = (some: readonly PlannedSprint[], words: (names: string, isOne: boolean) => string): void => {
    if (some.length > 0) warnings.push(words(namesOf(some), some.length === 1));
  };
  const sameName = [...Map.groupBy(planned, ({ sprint }) => alikeName(sprint.name)).values()]
    .filter(({ length }) => length > 1)
    .flatMap(([first]) => (first ? [first] : []));
  warn(
    sameName,
    (names) => `More than one sprint is called ${names}; their days differ, so each is imported.`,
  );
  warn(
    planned.filter(({ past }) => past.velocityPoints === undefined),
    (names, isOne) =>
      `What was finished is not said of ${names}, so forecasts and ranges can learn little from ${isOne ? 'it' : 'them'}. Add the column “finished” if you know it.`,
  );
  warn(
    planned.filter(({ workingDays }) => workingDays === 0),
    (names, isOne) => `${names} ${isOne ? 'has' : 'have'} no working day of the team.`,
  );
  return warnings;
}

function namesOf(some: readonly PlannedSprint[]): string {
  const named = some.slice(0, NAMES_SHOWN).map(({ sprint }) => sprint.name);
  const more = some.length - named.length;
  return [named.join(', '), ...(more > 0 ? [`and ${more} more`] : [])].join(' ');
}
