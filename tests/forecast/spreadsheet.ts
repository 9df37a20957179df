/** A spreadsheet engine as an independent opinion on statistics. Shares nothing with `src/forecast`. */
import { HyperFormula } from 'hyperformula';

/**
 * The values of formulas, each in a cell of its own.
 *
 * @throws Error when a formula doesn't give a number.
 */
export function spreadsheet(formulas: readonly string[]): number[] {
  const engine = HyperFormula.buildFromArray(
    formulas.map((formula) => [`=${formula}`]),
    { licenseKey: 'gpl-v3', smartRounding: false },
  );
  try {
    return formulas.map((formula, row) => {
      const value = engine.getCellValue({ sheet: 0, col: 0, row });
      if (typeof value !== 'number') throw new Error(`${formula} gives ${JSON.stringify(value)}.`);
      return value;
    });
  } finally {
    engine.destroy();
  }
}
