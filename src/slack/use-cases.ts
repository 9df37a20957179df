/** The use cases that conversations lead to, with what they depend on already given. */
import { adviceChart } from '../app/advice/advice-chart.ts';
import { askAdvice } from '../app/advice/ask-advice.ts';
import { forecastForm } from '../app/advice/forecast-form.ts';
import { shareAdvice } from '../app/advice/share-advice.ts';
import { answerForm } from '../app/answer-form.ts';
import { answerInWords } from '../app/answer-in-words.ts';
import { dropCard, listCards, reopenCard, takeCard } from '../app/change-cards.ts';
import { cancelSprint, closeSprint, reopenSprint } from '../app/end-sprint.ts';
import { exportSprints } from '../app/export/export-sprints.ts';
import { importForm, importSprints } from '../app/import/import-sprints.ts';
import { baselineForm, nameBaseline } from '../app/name-baseline.ts';
import { overview } from '../app/overview.ts';
import { planForm } from '../app/plan-form.ts';
import { commitPlan, previewPlan } from '../app/plan-sprint.ts';
import type { AppDependencies } from '../app/ports.ts';
import { erasePerson } from '../app/privacy/erase-person.ts';
import { personalCopy } from '../app/privacy/personal-copy.ts';
import { privacyOverview } from '../app/privacy/privacy-overview.ts';
import { pullCard, pullForm, pullLine } from '../app/pull-card.ts';
import { recordAnswers, recordAway, recordUnchanged } from '../app/record-answers.ts';
import { recordValue, recordValueLine, valueForm } from '../app/record-value.ts';
import { measuresForm, setMeasures, setUpTeam, setupForm } from '../app/set-up-team.ts';
import { shareStatus, sprintStatus, statusChart } from '../app/sprint-status.ts';

const ALL = {
  adviceChart,
  answerForm,
  answerInWords,
  askAdvice,
  baselineForm,
  cancelSprint,
  closeSprint,
  commitPlan,
  dropCard,
  erasePerson,
  exportSprints,
  forecastForm,
  importForm,
  importSprints,
  listCards,
  measuresForm,
  nameBaseline,
  overview,
  personalCopy,
  planForm,
  previewPlan,
  privacyOverview,
  pullCard,
  pullForm,
  pullLine,
  recordAnswers,
  recordAway,
  recordUnchanged,
  recordValue,
  recordValueLine,
  reopenCard,
  reopenSprint,
  setMeasures,
  setUpTeam,
  setupForm,
  shareAdvice,
  shareStatus,
  sprintStatus,
  statusChart,
  takeCard,
  valueForm,
} as const;

type Bound<UseCase> = UseCase extends (deps: AppDependencies, ...rest: infer Rest) => infer Result
  ? (...rest: Rest) => Result
  : never;

/** Each takes the actor first, then its input, and throws a `Refusal` when it will not. */
export type UseCases = { readonly [Name in keyof typeof ALL]: Bound<(typeof ALL)[Name]> };

export function bindUseCases(deps: AppDependencies): UseCases {
  const bound = Object.entries(ALL).map(([name, useCase]) => [
    name,
    (...rest: unknown[]) => (useCase as (...all: unknown[]) => unknown)(deps, ...rest),
  ]);
  return Object.freeze(Object.fromEntries(bound)) as UseCases;
}
