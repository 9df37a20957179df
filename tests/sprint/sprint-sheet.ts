/**
 * The ratios once more, as spreadsheet formulas over the rows of a sprint, computed by a spreadsheet
 * engine. Shares nothing with `src/sprint`: only the facts go in, and only numbers come out.
 */
import type { SimpleCellAddress } from 'hyperformula';
import { HyperFormula } from 'hyperformula';

export interface SheetAnswer {
  /** Row of the card in `cards`, from 0. */
  readonly card: number;
  readonly worked: number | undefined;
  readonly left: number;
  readonly surprise: number;
}

export interface SheetSprint {
  readonly cards: readonly {
    readonly estimate: number;
    readonly planned: boolean;
    readonly dropped: boolean;
  }[];
  /** Card by card, each card's in the order in which they count. */
  readonly answers: readonly SheetAnswer[];
  readonly scale: readonly number[];
  /** Whether the scale goes on as the Fibonacci sequence. */
  readonly goesOn: boolean;
  readonly baselineVelocity: number | undefined;
}

type Cell = string | number | null;

/** Enough for the answers and cards of any generated sprint; every formula reads as many rows. */
const MOST_ROWS = 80;
/** A column of a sheet, from row 2 on, below its title. */
const column = (sheet: string, letter: string): string => `${sheet}!$${letter}$2:$${letter}$${MOST_ROWS}`;

const A = {
  card: column('Answers', 'A'),
  left: column('Answers', 'C'),
  worked: column('Answers', 'F'),
  surprise: column('Answers', 'D'),
  drift: column('Answers', 'H'),
  last: column('Answers', 'I'),
};

function answersSheet(answers: readonly SheetAnswer[]): Cell[][] {
  const rows = answers.map(({ card, worked, left, surprise }, i): Cell[] => {
    const r = i + 2;
    return [
      card + 1,
      worked ?? null,
      left,
      surprise,
      `=IF(A${r}=A${r - 1},C${r - 1},INDEX(Cards!$A$2:$A$${MOST_ROWS},A${r}))`,
      `=IF(ISBLANK(B${r}),MAX(E${r}-C${r},0),B${r})`,
      `=F${r}+C${r}-E${r}`,
      `=G${r}-D${r}`,
      `=IF(A${r}=A${r + 1},0,1)`,
    ];
  });
  return [['card', 'given', 'left', 'surprise', 'before', 'worked', 'growth', 'drift', 'last'], ...rows];
}

function cardsSheet(cards: SheetSprint['cards'], scaleRows: number): Cell[][] {
  const sizes = `Scale!$A$2:$A$${scaleRows + 1}`;
  const largest = `Scale!$A$${scaleRows + 1}`;
  const reach = scaleRows > 1 ? `(${largest}-Scale!$A$${scaleRows})/2` : largest;
  const rows = cards.map(({ estimate, planned, dropped }, i): Cell[] => {
    const r = i + 2;
    const place = `MATCH(H${r},${sizes},1)`;
    const below = `INDEX(${sizes},${place})`;
    const above = `INDEX(${sizes},${place}+1)`;
    return [
      estimate,
      planned ? 1 : 0,
      dropped ? 1 : 0,
      `=SUMIF(${A.card},${i + 1},${A.worked})`,
      `=IF(COUNTIF(${A.card},${i + 1})=0,A${r},SUMIFS(${A.left},${A.card},${i + 1},${A.last},1))`,
      `=SUMIF(${A.card},${i + 1},${A.surprise})`,
      `=SUMIF(${A.card},${i + 1},${A.drift})`,
      `=D${r}+E${r}`,
      // The nearest value, a tie going up: the one above unless the one below is strictly nearer.
      `=IF(H${r}>=${largest},IF(H${r}<=${largest}+${reach},${largest},-1),IF(H${r}<Scale!$A$2,Scale!$A$2,IF(H${r}-${below}<${above}-H${r},${below},${above})))`,
      `=ABS(H${r}-A${r})`,
      `=IF(I${r}=A${r},0,J${r})`,
      `=IF(AND(COUNTIF(${A.card},${i + 1})>0,E${r}=0,C${r}=0),1,0)`,
      `=IF(AND(L${r}=1,I${r}=A${r}),1,0)`,
    ];
  });
  const titles =
    'estimate planned dropped worked left surprise drift size snapped plain error finished onscale';
  return [titles.split(' '), ...rows];
}

function scaleSheet(scale: readonly number[], goesOn: boolean): Cell[][] {
  const rows: Cell[][] = [['size'], ...scale.map((size) => [size])];
  // Far enough for the sum of all points that a generated card may have.
  for (let i = 0; goesOn && i < 20; i += 1) rows.push([`=A${rows.length}+A${rows.length - 1}`]);
  return rows;
}

/** Name of the number, its formula. One row each, so that a formula may name an earlier row by its cell. */
const FORMULAS: readonly (readonly [name: string, formula: string])[] = [
  ['commitmentPoints', `=SUMIF(${column('Cards', 'B')},1,${column('Cards', 'A')})`],
  ['pulledInPoints', `=SUMIF(${column('Cards', 'B')},0,${column('Cards', 'A')})`],
  ['surprisePoints', `=SUM(${column('Cards', 'F')})`],
  ['driftPoints', `=SUM(${column('Cards', 'G')})`],
  ['growthPoints', `=SUM(${column('Answers', 'G')})`],
  ['workedPoints', `=SUM(${column('Cards', 'D')})`],
  ['leftPoints', `=SUM(${column('Cards', 'E')})`],
  ['openLeftPoints', `=SUMIF(${column('Cards', 'C')},0,${column('Cards', 'E')})`],
  ['loadPoints', '={commitmentPoints}+{pulledInPoints}+{surprisePoints}'],
  ['velocityPoints', `=SUMIF(${column('Cards', 'L')},1,${column('Cards', 'A')})`],
  [
    'committedFinishedPoints',
    `=SUMIFS(${column('Cards', 'A')},${column('Cards', 'L')},1,${column('Cards', 'B')},1)`,
  ],
  ['estimateErrorPoints', `=SUMIF(${column('Cards', 'C')},0,${column('Cards', 'K')})`],
  ['plainEstimateErrorPoints', `=SUMIF(${column('Cards', 'C')},0,${column('Cards', 'J')})`],
  ['finishedCards', `=SUM(${column('Cards', 'L')})`],
  ['onScaleCards', `=SUM(${column('Cards', 'M')})`],
  ['keptShare', '=IF({commitmentPoints}=0,"undefined",{committedFinishedPoints}/{commitmentPoints})'],
  ['pullInRatio', '=IF({commitmentPoints}=0,"undefined",{pulledInPoints}/{commitmentPoints})'],
  ['surpriseRatio', '=IF({commitmentPoints}=0,"undefined",{surprisePoints}/{commitmentPoints})'],
  ['planShare', '=IF({loadPoints}=0,"undefined",{commitmentPoints}/{loadPoints})'],
  ['estimateAccuracy', '=IF({loadPoints}=0,"undefined",1-{estimateErrorPoints}/{loadPoints})'],
  ['onScaleShare', '=IF({finishedCards}=0,"undefined",{onScaleCards}/{finishedCards})'],
  ['finishShare', '=IF({workedPoints}=0,"undefined",{velocityPoints}/{workedPoints})'],
  ['velocityGrowth', '=IF(N(Baseline!$A$1)=0,"undefined",{velocityPoints}/Baseline!$A$1)'],
  [
    'verdict',
    '=IF({commitmentPoints}=0,"no plan",IF(AND({keptShare}>=0.8,{surpriseRatio}<=0.2),"kept","missed"))',
  ],
];

function resultsSheet(): Cell[][] {
  const row = new Map(FORMULAS.map(([name], i) => [name, i + 1]));
  return FORMULAS.map(([, formula]) => [
    formula.replaceAll(/\{(\w+)\}/g, (_, name: string) => `$A$${row.get(name)}`),
  ]);
}

let engine: HyperFormula | undefined;

/** One engine for all sprints: starting it takes longer than computing one. */
function theEngine(): HyperFormula {
  engine ??= HyperFormula.buildFromSheets(
    { Scale: [], Cards: [], Answers: [], Baseline: [], Results: resultsSheet() },
    { licenseKey: 'gpl-v3', smartRounding: false },
  );
  return engine;
}

/** Every total and ratio by its name; `'undefined'` where the sheet has no number. */
export function computeInSheet(sprint: SheetSprint): Record<string, number | string> {
  const sheets = theEngine();
  const id = (name: string): number => sheets.getSheetId(name) as number;
  if (Math.max(sprint.cards.length, sprint.answers.length) > MOST_ROWS - 1) throw new Error('Too many rows.');
  const scale = scaleSheet(sprint.scale, sprint.goesOn);
  sheets.batch(() => {
    sheets.setSheetContent(id('Scale'), scale);
    sheets.setSheetContent(id('Cards'), cardsSheet(sprint.cards, scale.length - 1));
    sheets.setSheetContent(id('Answers'), answersSheet(sprint.answers));
    sheets.setSheetContent(id('Baseline'), [[sprint.baselineVelocity ?? null]]);
  });
  const values = FORMULAS.map(([name], row) => {
    const address: SimpleCellAddress = { sheet: id('Results'), col: 0, row };
    const value = sheets.getCellValue(address);
    if (typeof value !== 'number' && typeof value !== 'string') {
      throw new Error(`The sheet has no value for ${name}: ${JSON.stringify(value)}`);
    }
    return [name, value] as const;
  });
  return Object.fromEntries(values);
}
