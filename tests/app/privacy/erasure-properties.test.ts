/**
 * For generated teams, with several owners a card, corrections, drops and reopenings: after an erasure every number of
 * every sprint stays, conservation holds, and nothing in the database shows the person. On both kinds of database.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { statesOf } from '../../../src/app/cards/card-line.ts';
import { pastSprints } from '../../../src/app/history/team-history.ts';
import type { Transaction } from '../../../src/app/ports/store.ts';
import { erasePerson } from '../../../src/app/privacy/erase-person.ts';
import type { Team } from '../../../src/app/team/team.ts';
import { closingSummary } from '../../../src/sprint/summary.ts';
import { aMember, aTeam } from '../../store/store-examples.ts';
import { describeOnPostgresFirst, emptyDatabase } from '../../support/databases.ts';
import { rowsWith } from '../../support/whole-database.ts';
import { anySprint, historyOf, recordHistory } from '../import/random-team.ts';
import { numbersOfCards } from './numbers-of-cards.ts';

const NAMES = { UANA: 'Ana Lima', UBEN: 'Ben Ode', UCHI: 'Chi Wen' } as const;
type Id = keyof typeof NAMES;
const anyHistory = fc.array(anySprint, { minLength: 1, maxLength: 3 });
const anyErased = fc.uniqueArray(fc.constantFrom<Id[]>('UANA', 'UBEN', 'UCHI'), {
  minLength: 1,
  maxLength: 3,
});

/** Everything that is made of a team's records, without who said it and in what words. */
async function numbersOf(tx: Transaction, team: Team): Promise<unknown[]> {
  const past = await pastSprints(tx, team);
  const numbers: unknown[] = past.map(({ name: _typed, ...sprint }) => sprint);
  for (const { id } of await tx.read.sprintsOf(team.id)) {
    const states = statesOf(await tx.read.recordsOf(id));
    const yardstick = { scale: team.scale, thresholds: team.thresholds, baseline: undefined };
    numbers.push(closingSummary(states, yardstick), numbersOfCards(states));
    for (const { card, surprisePoints, driftPoints, workedPoints, leftPoints } of states) {
      expect(card.estimatePoints + surprisePoints + driftPoints).toBe(workedPoints + leftPoints);
    }
  }
  return numbers;
}

describeOnPostgresFirst('erasing people of generated teams', (database, kind) => {
  test('changes no number, one person after the other, until nobody is left', async () => {
    await fc.assert(
      fc.asyncProperty(anyHistory, anyErased, async (given, erased) => {
        await emptyDatabase(kind);
        const { store } = database();
        const team = aTeam({ productOwnerId: 'UBEN' });
        await store.transaction(async (tx) => {
          await tx.write.teams.save(team);
          await tx.write.teams.saveMembers(
            team.id,
            Object.entries(NAMES).map(([userId, name]) => aMember({ userId, name })),
          );
          await recordHistory(tx, historyOf(team, '2025-01-06', given));
        });
        const before = await store.transaction((tx) => numbersOf(tx, team));
        for (const userId of erased) {
          await erasePerson(
            { store, clock: { now: () => new Date() } },
            { workspaceId: team.workspaceId, userId },
          );
          expect(await store.transaction((tx) => numbersOf(tx, team))).toEqual(before);
          // Generated texts hold “@ana”, which is a way to call Ana and goes as well.
          expect(await rowsWith(database(), [userId, NAMES[userId]])).toEqual([]);
        }
      }),
      { numRuns: 25 },
    );
  });
});
