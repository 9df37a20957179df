/** Invented sprints in the form of the open data; nothing real. */
import { seededRandom } from '../forecast/seeded-random.ts';

export const HEADER =
  'board,sprint,plannedDays,elapsedPercent,startPoints,addedPoints,removedPoints,todoPoints,inProgressPoints,donePoints,members,deliveredPoints';

/** So many sprints, turn by turn on two boards, each at the four moments. */
export function inventedCsv(sprints: number): string {
  const random = seededRandom(11);
  const lines = Array.from({ length: sprints }, (_, i) => {
    const start = 10 + Math.round(random.uniform() * 20);
    const board = 900 + (i % 2);
    const delivered = Math.round(
      start * Math.min(1, Math.max(0, (board === 900 ? 0.8 : 0.5) + 0.2 * random.normal())),
    );
    return [0, 30, 50, 80].map((percent) => {
      const done = Math.round((delivered * percent) / 100);
      const inProgress = Math.round((start - done) / 3);
      return [
        board,
        i,
        14,
        percent,
        start,
        0,
        0,
        start - done - inProgress,
        inProgress,
        done,
        4,
        delivered,
      ].join(',');
    });
  });
  return [HEADER, ...lines.flat()].join('\n');
}
