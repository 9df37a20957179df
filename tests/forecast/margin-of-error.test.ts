import { expect, test } from 'vitest';
import { marginOfError } from '../../src/forecast/margin-of-error.ts';
import { undefinedBecause } from '../../src/sprint/undefined-value.ts';

const sprint = (commitmentPoints: number, velocityPoints: number | undefined, estimateAccuracy = 0.9) => ({
  commitmentPoints,
  velocityPoints,
  estimateAccuracy,
});

test('the margin of commitments is that of velocity ÷ commitment, with the quantiles of type 8', () => {
  const margin = marginOfError([1, 2, 3, 4, 5].map((velocity) => sprint(10, velocity)));
  // Position of 10%: (5 + ⅓)·0.1 + ⅓ = 0.8667, below 1: the least. Of 90%: 5.1333, above 5: the greatest.
  expect(margin.ofCommitments).toEqual({
    sprints: 5,
    median: 0.3,
    usual: { low: 0.1, high: 0.5 },
    isWholeSpan: true,
  });
});

test('from seven sprints on eight tenths are less than the whole span', () => {
  const marginOf = (sprints: number) =>
    marginOfError(Array.from({ length: sprints }, (_, i) => sprint(10, i + 1))).ofCommitments;
  for (const sprints of [5, 6]) {
    expect(marginOf(sprints)).toMatchObject({
      isWholeSpan: true,
      usual: { low: 0.1, high: sprints / 10 },
    });
  }
  for (const sprints of [7, 12]) {
    const margin = marginOf(sprints) as Extract<ReturnType<typeof marginOf>, { readonly sprints: number }>;
    expect(margin.isWholeSpan).toBe(false);
    expect(margin.usual.low).toBeGreaterThan(0.1);
    expect(margin.usual.high).toBeLessThan(sprints / 10);
  }
});

test('with twelve sprints the usual margin lies within the extremes, as the published wafers do', () => {
  // NIST/SEMATECH e-Handbook, prc262: type 8 of these twelve at 90% is 95.19724.
  const wafers = [
    95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.061, 95.1591, 95.1195, 95.1065, 95.0925, 95.199, 95.1682,
  ];
  const { ofCommitments } = marginOfError(wafers.map((value) => sprint(1, value)));
  expect((ofCommitments as { usual: { high: number } }).usual.high).toBeCloseTo(95.19724, 5);
});

test('sprints without a commitment, a velocity or an accuracy are left out', () => {
  const margin = marginOfError([
    ...Array.from({ length: 5 }, () => sprint(10, 8)),
    sprint(0, 8),
    sprint(10, undefined),
    { ...sprint(10, 100), estimateAccuracy: undefinedBecause('no-load') },
  ]);
  expect(margin).toMatchObject({ ofCommitments: { sprints: 6 }, ofEstimates: { sprints: 7 } });
});

test('only the latest 24 sprints count', () => {
  const margin = marginOfError([
    ...Array.from({ length: 30 }, () => sprint(10, 1)),
    ...Array.from({ length: 24 }, () => sprint(10, 9)),
  ]);
  expect(margin.ofCommitments).toMatchObject({ sprints: 24, median: 0.9, usual: { low: 0.9, high: 0.9 } });
});

test('below five sprints it says what is missing', () => {
  expect(marginOfError([sprint(10, 8)]).ofCommitments).toEqual({
    undefined: { code: 'few-sprints', needed: 5, known: 1, having: 'number' },
  });
});
