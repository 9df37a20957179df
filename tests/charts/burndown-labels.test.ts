import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { burndownLabels } from '../../src/charts/burndown-labels.ts';
import { burndownLayout, burndownSize } from '../../src/charts/burndown-layout.ts';
import type { Burndown } from '../../src/sprint/burndown.ts';
import { burndown, type Evening, midSprint, noPlan, unneededSurprise } from './burndown-examples.ts';
import { expectLegible, labelBoxes } from './label-boxes.ts';

const boxesOf = (shown: Burndown) => labelBoxes(burndownLabels(shown, burndownLayout(shown)));
const texts = (shown: Burndown) => boxesOf(shown).map((label) => label.text);

describe('the labels in the burndown picture', () => {
  test('name the lines, the tracks with their sums, and today', () => {
    expect(texts(midSprint)).toEqual([
      'points left',
      'ideal',
      '24.5 left',
      'pulled-in\nwork',
      '5 in all',
      'surprise\nwork',
      '5 in all',
      'today',
    ]);
  });

  test('leave the ideal line out when there was no commitment', () => {
    expect(texts(noPlan)).not.toContain('ideal');
  });

  test('tell nothing added from additions that cancel out', () => {
    expect(texts(unneededSurprise)).toContain('none');
    expect(texts(unneededSurprise)).toContain('0 in all');
  });

  test('stand clear of the row of "today" when the line ends at the top of its plot', () => {
    const boxes = boxesOf(burndown('High', 40, [[40], [undefined]], { today: '2026-11-02' }));
    const today = boxes.find(({ text }) => text === 'today');
    const left = boxes.find(({ text }) => text === '40 left');
    expect(today?.bottom).toBeLessThan(left?.top ?? 0);
  });

  test('stand clear of the name of the ideal line when nothing is left on the last day but one', () => {
    const evenings = [...Array<Evening>(38).fill([20]), [0] as const, [undefined] as const];
    const boxes = boxesOf(burndown('Early', 40, evenings));
    const ideal = boxes.find(({ text }) => text === 'ideal');
    const left = boxes.find(({ text }) => text === '0 left');
    expect(left?.right).toBeGreaterThan(ideal?.left ?? Number.POSITIVE_INFINITY);
    expect(left?.bottom).toBeLessThan(ideal?.top ?? 0);
  });

  test('stand clear of the numbers of the axis when the line ends near it, below the ideal', () => {
    const evenings = [[30] as const, ...Array<Evening>(39).fill([undefined])];
    const left = boxesOf(burndown('Leap', 99, evenings)).find(({ text }) => text === '30 left');
    expect(left?.left).toBeGreaterThan(burndownLayout(midSprint).leftPlot.left);
  });

  test('stand to the lower left of a falling line, to the lower right of a rising one, below the ideal', () => {
    const yetToCome = Array<Evening>(6).fill([undefined]);
    const leftOf = (evenings: Evening[]) => {
      const shown = burndown('Side', 40, [...evenings, ...yetToCome]);
      const { leftEnd, xOf, yOf } = burndownLayout(shown);
      const box = boxesOf(shown).find(({ text }) => text.endsWith(' left') && text !== 'points left');
      expect(box?.top).toBeGreaterThan(yOf(leftEnd.leftPoints));
      return (box?.right ?? 0) < xOf(leftEnd.position);
    };
    expect(leftOf([[30], [20], [18]])).toBe(true);
    expect(leftOf([[30], [12], [18]])).toBe(false);
  });

  test('never overlap each other nor leave the card, whatever the numbers', () => {
    const halves = (most: number) => fc.integer({ min: 0, max: most * 2 }).map((count) => count / 2);
    const sprint = fc.record({
      commitmentPoints: fc.oneof(fc.constant(0), halves(20), halves(99_950)),
      known: fc.array(fc.oneof(halves(20), halves(99_950)), { maxLength: 25 }),
      yetToCome: fc.integer({ min: 0, max: 25 }),
      todayIndex: fc.integer({ min: 0, max: 60 }),
    });
    fc.assert(
      fc.property(sprint, ({ commitmentPoints, known, yetToCome, todayIndex }) => {
        const evenings = [
          ...known.map((left): Evening => [left, 2, -0.5]),
          ...Array<Evening>(yetToCome).fill([undefined]),
        ];
        const today = new Date(Date.UTC(2026, 10, 1 + todayIndex)).toISOString().slice(0, 10);
        expectLegible(boxesOf(burndown('Any', commitmentPoints, evenings, { today })), burndownSize);
      }),
      { numRuns: 1_000 },
    );
  });
});
