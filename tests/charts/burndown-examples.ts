/** Invented sprints for the chart tests, from the ordinary to the odd. */
import type { Burndown, BurndownDay } from '../../src/sprint/burndown.ts';

/** Points: what was left in the evening (undefined: yet to come), pulled in and surprise of the day, and how many cards were blocked. */
export type Evening = readonly [
  left: number | undefined,
  pulledIn?: number,
  surprise?: number,
  blocked?: number,
];

/** Working days (Monday to Friday) from `firstDay` on, one for each evening, with an even ideal line. */
export function burndown(
  sprintName: string,
  commitmentPoints: number,
  evenings: readonly Evening[],
  { firstDay = '2026-11-02', today }: { firstDay?: string; today?: string } = {},
): Burndown {
  const dates = workingDays(firstDay, evenings.length);
  const days = evenings.map(
    ([leftPoints, pulledInPoints = 0, surprisePoints = 0, blockedCards = 0], index): BurndownDay => {
      const remaining = 1 - (index + 1) / evenings.length;
      const day = dates[index] ?? '';
      return {
        day,
        idealPoints: commitmentPoints * remaining,
        leftPoints,
        pulledInPoints,
        surprisePoints,
        blockedCards,
      };
    },
  );
  return { sprintName, commitmentPoints, days, today };
}

function workingDays(firstDay: string, count: number): string[] {
  const dates: string[] = [];
  for (let time = Date.parse(firstDay); dates.length < count; time += 86_400_000) {
    const date = new Date(time);
    if (date.getUTCDay() % 6 !== 0) dates.push(date.toISOString().slice(0, 10));
  }
  return dates;
}

export const midSprint = burndown(
  'Harbour lights',
  34,
  [[31], [28.5, 0, 2], [27, 5], [24.5, 0, 3], ...Array<Evening>(6).fill([undefined])],
  { today: '2026-11-05' },
);

export const finishedSprint = burndown('Harbour lights', 34, [
  [31],
  [28.5, 0, 2],
  [27, 5],
  [24.5, 0, 3],
  [20, 0, -1],
  [19, 3, 1.5],
  [13],
  [9.5],
  [5],
  [2],
]);

export const allFuture = burndown('Not begun', 21, Array<Evening>(8).fill([undefined]));

export const noPlan = burndown('Planning called off', 0, [[8, 8], [11.5, 5], [7, 0, 0.5], [3], [0]]);

export const oneDay = burndown('A single day', 5, [[1.5, 0, 1]]);

export const growth = burndown(
  'Deeper than it looked',
  20,
  [[22, 0, 5], [31, 8, 2], [38, 5, 4], [36.5, 0, 2], ...Array<Evening>(6).fill([undefined])],
  { today: '2026-11-07' },
);

export const fortyDays = burndown(
  'Winter lay-up: hull, rigging, engine, electrics, galley, sails, paperwork and whatever else the yard finds',
  160,
  Array.from({ length: 40 }, (_, index): Evening => {
    if (index > 30) return [undefined];
    const left = 160 - 3.5 * (index + 1) + (index % 7) * 2;
    return [left, index % 6 === 2 ? 5 : 0, index % 4 === 1 ? 2.5 : 0];
  }),
  { firstDay: '2026-09-14', today: '2026-10-26' },
);

export const finishedEarly = burndown('Fair wind', 30, [[20], [9], [0], [undefined], [undefined]], {
  today: '2026-11-04',
});

export const unneededSurprise = burndown('Calmer than feared', 20, [
  [19, 0, 3],
  [17, 0, 1],
  [11, 0, -4],
  [5],
  [0],
]);

export const blocked = burndown(
  'Waiting for the key',
  34,
  [[31, 0, 0, 1], [28.5, 0, 2, 2], [27, 5, 0, 2], [24.5, 0, 3], ...Array<Evening>(6).fill([undefined])],
  { today: '2026-11-05' },
);

export const blockedAllAlong = burndown(
  'Thirty cards stuck',
  34,
  Array.from({ length: 20 }, (_, index): Evening => [34 - index, 0, index % 3, 10 + index]),
);
