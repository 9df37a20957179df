/**
 * Published figures on delivered − committed points of real sprints.
 * Source: Choetkiertikul, Dam, Tran, Ghose, Grundy: Predicting Delivery Capability in Iterative Software
 * Development, IEEE TSE 2017, doi 10.1109/TSE.2017.2693989, Tables 7 and 12. The standard deviation has
 * n − 1; figures are rounded to the decimals written here.
 */

export type Statistic = 'n' | 'min' | 'max' | 'mean' | 'median' | 'SD' | 'IQR';

export interface PublishedFigures {
  readonly table: 'Table 7' | 'Table 12';
  readonly project: 'a' | 'b' | 'c';
  /** The moment at which the commitment is read, in percent of the planned duration. */
  readonly elapsedPercent: number;
  /** As printed, so that the decimals show how far they were rounded. */
  readonly figures: Readonly<Partial<Record<Statistic, string>>>;
}

export const PUBLISHED: readonly PublishedFigures[] = [
  {
    table: 'Table 7',
    project: 'a',
    elapsedPercent: 30,
    figures: { n: '348', min: '-81', max: '49', mean: '-9.05', median: '-5', SD: '17.16', IQR: '15' },
  },
  {
    table: 'Table 7',
    project: 'b',
    elapsedPercent: 30,
    figures: { n: '372', min: '-96', max: '30', mean: '-6.03', median: '-1', SD: '14.83', IQR: '4' },
  },
  {
    table: 'Table 7',
    project: 'c',
    elapsedPercent: 30,
    figures: { n: '1873', min: '-83', max: '117', mean: '-2.82', median: '0', SD: '11.37', IQR: '3' },
  },
  { table: 'Table 12', project: 'a', elapsedPercent: 0, figures: { mean: '-7.25', SD: '17.56' } },
  { table: 'Table 12', project: 'a', elapsedPercent: 50, figures: { mean: '-10.00', SD: '16.97' } },
  { table: 'Table 12', project: 'a', elapsedPercent: 80, figures: { mean: '-10.86', SD: '16.69' } },
];
