/**
 * The worked example of Choetkiertikul, Dam, Tran, Ghose, Grundy: Predicting Delivery Capability in
 * Iterative Software Development, IEEE TSE 2017, doi 10.1109/TSE.2017.2693989, section 2: a sprint of 17
 * days, 4 items planned, 2 added on day 2, 1 removed after day 3; committed 19, delivered 7, difference −12.
 * The points of the single items are not part of what is reproduced here, so the rule is tested for every
 * split of them that gives these sums.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dayPlus } from '../../src/sprint/calendar.ts';
import { ledgerOf } from '../../src/sprint/ledger.ts';
import { DEFAULT_SCALE } from '../../src/sprint/scale.ts';
import { sprintTotals } from '../../src/sprint/totals.ts';
import { aCard, answer, drop, inOrder } from './sprint-facts.ts';

const FIRST_DAY = '2026-11-02';
const PUBLISHED = { days: 17, committedPoints: 19, deliveredPoints: 7, differencePoints: -12 };

/** Points of the six items: two that are delivered, three that stay, one that is removed. */
const anySplit = fc
  .record({
    delivered: fc.integer({ min: 1, max: 6 }),
    openA: fc.integer({ min: 1, max: 10 }),
    openShare: fc.integer({ min: 1, max: 10 }),
    removed: fc.integer({ min: 1, max: 13 }),
  })
  .filter(({ openA, openShare }) => openA + openShare < 12)
  .map(({ delivered, openA, openShare, removed }) => ({
    delivered: [delivered, 7 - delivered],
    open: [openA, openShare, 12 - openA - openShare],
    removed,
  }));

test('committed 19, delivered 7, difference −12, however the points are split over the items', () => {
  fc.assert(
    fc.property(anySplit, ({ delivered, open, removed }) => {
      const addedOn = dayPlus(FIRST_DAY, 1);
      const cards = [
        aCard({ id: 'done', estimatePoints: delivered[0] as number }),
        aCard({ id: 'open-1', estimatePoints: open[0] as number }),
        aCard({ id: 'open-2', estimatePoints: open[1] as number }),
        aCard({ id: 'removed', estimatePoints: removed }),
        aCard({
          id: 'added-done',
          estimatePoints: delivered[1] as number,
          origin: 'pulled-in',
          enteredOn: addedOn,
        }),
        aCard({
          id: 'added-open',
          estimatePoints: open[2] as number,
          origin: 'pulled-in',
          enteredOn: addedOn,
        }),
      ];
      const lastDay = dayPlus(FIRST_DAY, PUBLISHED.days - 1);
      const facts = inOrder(
        drop(dayPlus(FIRST_DAY, 3), 'removed'),
        answer(lastDay, 'ana', { left: 0, card: 'done' }),
        answer(lastDay, 'ben', { left: 0, card: 'added-done' }),
      );
      const states = ledgerOf(cards, facts);
      const inSprint = states.filter((state) => state.droppedOn === undefined);
      const committedPoints = inSprint.reduce((total, state) => total + state.card.estimatePoints, 0);
      const totals = sprintTotals(states, DEFAULT_SCALE);

      expect(committedPoints).toBe(PUBLISHED.committedPoints);
      expect(totals.velocityPoints).toBe(PUBLISHED.deliveredPoints);
      expect(totals.velocityPoints - committedPoints).toBe(PUBLISHED.differencePoints);
      // Here a dropped card stays in the commitment, so the load is larger than the paper's "committed".
      expect(totals.loadPoints).toBe(PUBLISHED.committedPoints + removed);
      expect(totals.openLeftPoints).toBe(-PUBLISHED.differencePoints);
    }),
    { seed: 20261108, numRuns: 200 },
  );
});
