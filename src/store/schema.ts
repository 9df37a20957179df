/** Every table, for the queries and for the migration generator. */

export { bodiesOfWork, toldDates } from './schema/bodies.ts';
export { answers, cardChanges, cardOwners, cards, factOrder } from './schema/cards.ts';
export { loadline } from './schema/columns.ts';
export { experiments } from './schema/experiments.ts';
export { pastChanges, pastSprints, recordedValues } from './schema/history.ts';
export { installAttempts, installations } from './schema/installations.ts';
export { messageRemovals, posts, prompts, seenEvents, visits } from './schema/posts.ts';
export { planChanges, planDrafts, sprintResults, watches } from './schema/sprint-records.ts';
export { members, sprints, teams } from './schema/teams.ts';
