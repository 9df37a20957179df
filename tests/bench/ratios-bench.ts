/**
 * All ratios from the answers of many sprints, by the very functions behind every status and verdict; against a
 * spreadsheet engine on the same formulas, and against loops over typed arrays. All three must come to the same numbers.
 * The loops get their columns ready made: to read facts and find each one's card is in the ledger's time only.
 */
import { answersInForce, ledgerOf } from '../../src/sprint/ledger.ts';
import { DEFAULT_SCALE } from '../../src/sprint/scale.ts';
import type { SprintRatios } from '../../src/sprint/sprint-ratios.ts';
import { sprintRatios } from '../../src/sprint/sprint-ratios.ts';
import { sprintTotals } from '../../src/sprint/totals.ts';
import { isDefined } from '../../src/sprint/undefined-value.ts';
import { computeInSheet, type SheetSprint } from '../sprint/sprint-sheet.ts';
import type { Bench, BenchRow } from './bench-row.ts';
import { benchRow } from './bench-row.ts';
import { type BenchSprint, columnsOf, manySprints } from './many-sprints.ts';
import { percentile } from './percentile.ts';
import { RATIOS, ratiosOfColumns } from './ratios-of-columns.ts';

const ANSWERS = 1_000_000;
/** Two weeks of seven cards, each answered for on every working day: as many rows as the spreadsheet's formulas read. */
const SIZE = { cards: 7, days: 10 };
const SPRINTS = Math.ceil(ANSWERS / (SIZE.cards * SIZE.days));
const SHEETS = 40;
const ROUNDS = 9;
const BASELINE_VELOCITY = 20;
const NAMES: readonly (keyof SprintRatios)[] = [
  'keptShare',
  'pullInRatio',
  'surpriseRatio',
  'planShare',
  'estimateAccuracy',
  'onScaleShare',
  'finishShare',
  'velocityGrowth',
];

function ratiosOfSprint({ cards, facts }: BenchSprint): SprintRatios {
  return sprintRatios(sprintTotals(ledgerOf(cards, facts), DEFAULT_SCALE), BASELINE_VELOCITY);
}

function sheetOf({ cards, facts }: BenchSprint): SheetSprint {
  return {
    cards: cards.map(({ estimatePoints, origin }) => ({
      estimate: estimatePoints,
      planned: origin === 'planned',
      dropped: false,
    })),
    answers: cards.flatMap(({ id }, card) =>
      answersInForce(facts.filter(({ cardId }) => cardId === id)).map((answer) => ({
        card,
        worked: answer.workedPoints,
        left: answer.leftPoints,
        surprise: answer.surprisePoints,
      })),
    ),
    scale: DEFAULT_SCALE,
    goesOn: true,
    baselineVelocity: BASELINE_VELOCITY,
  };
}

function timed(work: () => unknown): number {
  const beganMs = performance.now();
  work();
  return performance.now() - beganMs;
}

/** Kept as the loops keep theirs: so many objects at once would be memory that only the subject has to be given. */
function ratiosOfLedgers(sprints: readonly BenchSprint[]): Float64Array {
  const ratios = new Float64Array(sprints.length * RATIOS);
  let at = 0;
  for (const sprint of sprints) {
    const ofSprint = ratiosOfSprint(sprint);
    for (const name of NAMES) {
      const ratio = ofSprint[name];
      ratios[at] = isDefined(ratio) ? ratio : Number.NaN;
      at += 1;
    }
  }
  return ratios;
}

/** What is quick but wrong is no measure. */
function requireSame(ofLedgers: Float64Array, ofColumns: Float64Array): void {
  for (const [i, wanted] of ofColumns.entries()) {
    if (!Object.is(ofLedgers[i], wanted))
      throw new Error(
        `${NAMES[i % RATIOS]} of sprint ${Math.floor(i / RATIOS)} is ${ofLedgers[i]} and ${wanted}.`,
      );
  }
}

export const ratiosBench: Bench = {
  name: 'ratios',
  takesSeconds: 30,
  async run(): Promise<BenchRow[]> {
    const sprints = manySprints(SPRINTS, SIZE);
    const columns = columnsOf(sprints);
    const answers = columns.left.length;
    const ofColumns = () => ratiosOfColumns(columns, SIZE.cards, BASELINE_VELOCITY);
    const ofLedgers = () => ratiosOfLedgers(sprints);
    requireSame(ofLedgers(), ofColumns());
    const ledgerMs: number[] = [];
    const columnsMs: number[] = [];
    for (let round = 0; round < ROUNDS; round += 1) {
      ledgerMs.push(timed(ofLedgers));
      columnsMs.push(timed(ofColumns));
    }
    const sheets = sprints.slice(0, SHEETS + 1).map(sheetOf);
    // The first one starts the engine.
    computeInSheet(sheets[0] as SheetSprint);
    const inSheets = sheets.slice(1);
    const sheetAnswers = inSheets.reduce((total, sheet) => total + sheet.answers.length, 0);
    const sheetMs = timed(() => inSheets.map(computeInSheet));
    const value = percentile(ledgerMs, 0.5);
    const row = { name: `all ratios from ${answers} answers`, unit: 'ms', value } as const;
    return [
      benchRow({
        ...row,
        baseline: `hyperformula, ${sheetAnswers} answers carried over to as many`,
        baselineValue: (sheetMs * answers) / sheetAnswers,
        bound: { of: 'ratio', atMost: 0.1 },
      }),
      benchRow({
        ...row,
        baseline: 'loops over typed arrays filled beforehand',
        baselineValue: percentile(columnsMs, 0.5),
        bound: { of: 'ratio', atMost: 3 },
      }),
    ];
  },
};
