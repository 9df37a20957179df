/** The use cases that conversations lead to, with what they depend on already given. */
import { adviceChart } from './advice/advice-chart.ts';
import { askAdvice, forecastForm, shareAdvice } from './advice/ask-advice.ts';
import { answerForm } from './answering/answer-form.ts';
import { answerInWords, answersForCard } from './answering/answer-in-words.ts';
import { recordAnswers, recordAway, recordUnchanged } from './answering/record-answers.ts';
import { jointForecast } from './bodies/joint-forecast.ts';
import { bodyForm, endBody, keepBody, orderBodies, renameBody } from './bodies/keep-bodies.ts';
import { blockCard, dropCard, listCards, reopenCard, unblockCard, undropCard } from './cards/change-cards.ts';
import { assignCards, giveCards, releaseCards, takeCards } from './cards/change-owners.ts';
import { pullCards, pullForm } from './cards/pull-cards.ts';
import { chooseDirectVerdicts, directVerdicts } from './closing/direct-verdicts.ts';
import { cancelSprint, closeSprint, reopenSprint, sprintToEnd } from './closing/end-sprint.ts';
import { goalForm, recordGoal } from './closing/record-goal.ts';
import { daysOffForm, saveDaysOff } from './days-off/days-off-form.ts';
import { importDaysOff } from './days-off/import-days-off.ts';
import { sayDaysOff } from './days-off/say-days-off.ts';
import { sayWeekdays } from './days-off/say-weekdays.ts';
import { endExperiment, listExperiments } from './experiments/end-experiment.ts';
import { tryExperiment, tryForm } from './experiments/try-experiment.ts';
import { exportSprints } from './export/export-sprints.ts';
import { baselineForm, nameBaseline } from './history/name-baseline.ts';
import { recordValue, recordValueLine, valueForm } from './history/record-value.ts';
import { importForm, importSprints } from './import/import-sprints.ts';
import { importValues } from './import/import-values.ts';
import { previewRemoval, removalForm, removeImport } from './import/remove-import.ts';
import { readCardFile } from './planning/card-file.ts';
import { cardToEdit, editCard } from './planning/edit-card.ts';
import { editSprint, sprintToEdit } from './planning/edit-sprint.ts';
import { planForm } from './planning/plan-form.ts';
import { commitPlan, previewPlan, previewTicked } from './planning/plan-sprint.ts';
import type { AppDependencies } from './ports/app-dependencies.ts';
import { erasePerson } from './privacy/erase-person.ts';
import { personalCopy, privacyOverview } from './privacy/privacy-overview.ts';
import { retroSheet, shareRetro } from './retro/retro-sheet.ts';
import { explainedToOutsiders } from './team/belonging.ts';
import { endForm, endTeam, resumeTeam } from './team/end-team.ts';
import { addGuests, removeGuests } from './team/guests.ts';
import { leaveForm, leaveTeam } from './team/leave-team.ts';
import { moveTeam } from './team/move-team.ts';
import { chooseOwnPrompt, ownPromptForm } from './team/own-prompt.ts';
import { measuresForm, setMeasures } from './team/set-measures.ts';
import { setUpTeam, setupForm } from './team/set-up-team.ts';
import type { Actor } from './team/team.ts';
import { openHomePage, refreshHomePage } from './watching/home-page.ts';
import { overview } from './watching/overview.ts';
import { digestForm, setDigest } from './watching/set-digest.ts';
import { shareStatus, sprintStatus, statusBurndown, statusChart } from './watching/sprint-status.ts';
import { beginWelcome, takeBackWelcome } from './watching/welcome.ts';
import { askWhatIf, whatIfForm } from './watching/what-if.ts';

const ALL = {
  addGuests,
  adviceChart,
  answerForm,
  answerInWords,
  answersForCard,
  askAdvice,
  assignCards,
  askWhatIf,
  baselineForm,
  beginWelcome,
  blockCard,
  bodyForm,
  cancelSprint,
  cardToEdit,
  closeSprint,
  chooseOwnPrompt,
  commitPlan,
  daysOffForm,
  digestForm,
  dropCard,
  editCard,
  editSprint,
  endBody,
  endExperiment,
  erasePerson,
  exportSprints,
  forecastForm,
  giveCards,
  goalForm,
  importDaysOff,
  importForm,
  importSprints,
  importValues,
  jointForecast,
  keepBody,
  endForm,
  endTeam,
  resumeTeam,
  leaveForm,
  leaveTeam,
  listCards,
  listExperiments,
  measuresForm,
  moveTeam,
  nameBaseline,
  openHomePage,
  orderBodies,
  overview,
  ownPromptForm,
  personalCopy,
  planForm,
  previewPlan,
  previewRemoval,
  previewTicked,
  privacyOverview,
  pullCards,
  pullForm,
  readCardFile,
  recordAnswers,
  recordAway,
  recordGoal,
  recordUnchanged,
  recordValue,
  recordValueLine,
  refreshHomePage,
  releaseCards,
  removalForm,
  removeGuests,
  removeImport,
  renameBody,
  reopenCard,
  reopenSprint,
  retroSheet,
  saveDaysOff,
  sayDaysOff,
  sayWeekdays,
  setDigest,
  chooseDirectVerdicts,
  directVerdicts,
  setMeasures,
  setUpTeam,
  setupForm,
  shareAdvice,
  shareRetro,
  shareStatus,
  sprintStatus,
  sprintToEdit,
  sprintToEnd,
  statusBurndown,
  statusChart,
  takeBackWelcome,
  takeCards,
  tryExperiment,
  tryForm,
  unblockCard,
  undropCard,
  valueForm,
  whatIfForm,
} as const;

type Bound<UseCase> = UseCase extends (deps: AppDependencies, ...rest: infer Rest) => infer Result
  ? (...rest: Rest) => Result
  : never;

/** Each takes the actor first, then its input, and throws a `Refusal` when it will not. */
export type UseCases = { readonly [Name in keyof typeof ALL]: Bound<(typeof ALL)[Name]> };

export function bindUseCases(deps: AppDependencies): UseCases {
  const bound = Object.entries(ALL).map(([name, useCase]) => [
    name,
    (actor: Actor, ...rest: unknown[]) =>
      explainedToOutsiders(deps, actor, () =>
        (useCase as (...all: unknown[]) => Promise<unknown>)(deps, actor, ...rest),
      ),
  ]);
  return Object.freeze(Object.fromEntries(bound)) as UseCases;
}
