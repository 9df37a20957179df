/** The use cases that conversations lead to, with what they depend on already given. */
import { answerForm } from '../app/answer-form.ts';
import { answerInWords } from '../app/answer-in-words.ts';
import {
  dropCard,
  listCards,
  pullCard,
  pullForm,
  pullLine,
  reopenCard,
  takeCard,
} from '../app/change-cards.ts';
import { cancelSprint, closeSprint, reopenSprint } from '../app/end-sprint.ts';
import { overview } from '../app/overview.ts';
import { planForm } from '../app/plan-form.ts';
import { commitPlan, previewPlan } from '../app/plan-sprint.ts';
import type { AppDependencies } from '../app/ports.ts';
import { recordAnswers, recordAway, recordUnchanged } from '../app/record-answers.ts';
import { measuresForm, setMeasures, setUpTeam, setupForm } from '../app/set-up-team.ts';
import { shareStatus, sprintStatus, statusChart } from '../app/sprint-status.ts';

const ALL = {
  answerForm,
  answerInWords,
  cancelSprint,
  closeSprint,
  commitPlan,
  dropCard,
  listCards,
  measuresForm,
  overview,
  planForm,
  previewPlan,
  pullCard,
  pullForm,
  pullLine,
  recordAnswers,
  recordAway,
  recordUnchanged,
  reopenCard,
  reopenSprint,
  setMeasures,
  setUpTeam,
  setupForm,
  shareStatus,
  sprintStatus,
  statusChart,
  takeCard,
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
