/** Every query of the store, on both kinds of database. One file, since opening a database takes longest. */
import { describe } from 'vitest';
import { describeOnBoth } from '../support/databases.ts';
import { cardQueryCases } from './card-query-cases.ts';
import { clockQueryCases } from './clock-query-cases.ts';
import { constraintCases } from './constraint-cases.ts';
import { historyQueryCases } from './history-query-cases.ts';
import { installationQueryCases } from './installation-query-cases.ts';
import { postQueryCases } from './post-query-cases.ts';
import { promptQueryCases } from './prompt-query-cases.ts';
import { readingCases } from './reading-cases.ts';
import { recordKeepingCases } from './record-keeping-cases.ts';
import { sprintQueryCases } from './sprint-query-cases.ts';
import { teamQueryCases } from './team-query-cases.ts';
import { transactionCases } from './transaction-cases.ts';

describeOnBoth('the store', (database) => {
  describe('teams', () => teamQueryCases(database));
  describe('sprints', () => sprintQueryCases(database));
  describe('the history', () => historyQueryCases(database));
  describe('cards and facts', () => cardQueryCases(database));
  describe('prompts', () => promptQueryCases(database));
  describe('posts', () => postQueryCases(database));
  describe('the clock', () => clockQueryCases(database));
  describe('installations', () => installationQueryCases(database));
  describe('reading', () => readingCases(database));
  describe('transactions', () => transactionCases(database));
  describe('constraints', () => constraintCases(database));
  describe('what was recorded', () => recordKeepingCases(database));
});
