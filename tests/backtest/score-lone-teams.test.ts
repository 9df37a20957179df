import { expect, test } from 'vitest';
import { readOpenData } from '../open-data/read-open-data.ts';
import { inventedCsv } from './invented-sprints.ts';
import { scoreLoneTeams } from './score-lone-teams.ts';

const ROWS = readOpenData(inventedCsv(60), 'invented.csv');
const [FIRST, ...REST] = [...new Set(ROWS.map(({ board }) => board))];

test('a team is scored by how many sprints it had behind it: six with 6 to 11, thirteen with 12 to 24', () => {
  // Two boards of thirty sprints each.
  expect(scoreLoneTeams(ROWS).map(({ history, scored }) => [history, scored])).toEqual(
    [0, 30, 50, 80].flatMap(() => [
      ['6-11', 12],
      ['12-24', 26],
    ]),
  );
});

test('no board learns from another', () => {
  const alone = scoreLoneTeams(ROWS.filter(({ board }) => board === FIRST));
  const others = scoreLoneTeams(ROWS.filter(({ board }) => REST.includes(board)));
  const together = scoreLoneTeams(ROWS);
  expect(together.map(({ coverage80 }) => coverage80)).toEqual(
    together.map((_, i) => {
      const [a, b] = [alone[i], others[i]];
      return expect.closeTo(((a?.coverage80 ?? 0) + (b?.coverage80 ?? 0)) / 2, 12);
    }),
  );
});

test('a team with fewer than six sprints behind it is not scored', () => {
  expect(scoreLoneTeams(readOpenData(inventedCsv(12), 'invented.csv'))).toEqual([]);
});
