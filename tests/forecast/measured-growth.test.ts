import { expect, test } from 'vitest';
import { type MeasuredGrowth, measuredGrowth } from '../../src/forecast/measured-growth.ts';
import { spreadsheet } from './spreadsheet.ts';

const sprint = (commitmentPoints: number, pulledInPoints: number | undefined) => ({
  commitmentPoints,
  pulledInPoints,
});

test('is the share of all work that came in after planning, as unsure as the sprints differ', () => {
  const measured = measuredGrowth([sprint(20, 5), sprint(30, 0), sprint(12, 4)]) as MeasuredGrowth;
  const [share, deviation] = spreadsheet(['(5+0+4)/(25+30+16)', 'SQRT(2*VAR.S(5/25,0/30,4/16)/3)']) as [
    number,
    number,
  ];
  expect(measured).toEqual({
    share: expect.closeTo(share, 12),
    deviation: expect.closeTo(deviation, 12),
    sprints: 3,
  });
});

test('goes by the latest twelve sprints in which it is known', () => {
  const old = Array.from({ length: 9 }, () => sprint(10, 30));
  const latest = Array.from({ length: 12 }, () => sprint(18, 2));
  expect(measuredGrowth([...old, ...latest, sprint(10, undefined), sprint(0, 0)])).toMatchObject({
    share: expect.closeTo(0.1, 12),
    deviation: expect.closeTo(0, 12),
    sprints: 12,
  });
});

test('is undefined below three sprints in which it is known', () => {
  expect(measuredGrowth([sprint(10, 1), sprint(10, 2), sprint(10, undefined)])).toEqual({
    undefined: { code: 'few-sprints', needed: 3, known: 2, having: 'closed' },
  });
});
