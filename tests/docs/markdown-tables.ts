/** Reads the tables of a Markdown page, so that a test can compute their numbers again. */

/** The cells of a row by the titles of their columns, without code marks. */
type TableRow = Readonly<Record<string, string>>;

function cellsOf(line: string): string[] {
  return line
    .replace(/^\||\|$/g, '')
    .split('|')
    .map((cell) => cell.trim().replaceAll('`', ''));
}

/**
 * The rows of the first table below a heading.
 *
 * @throws Error when there is no such heading, or no table before the next one.
 */
export function tableBelow(page: string, heading: string): TableRow[] {
  const lines = page.split('\n');
  const from = lines.findIndex((line) => /^#+ /.test(line) && line.replace(/^#+ /, '') === heading);
  if (from < 0) throw new Error(`No heading "${heading}".`);
  const to = lines.findIndex((line, i) => i > from && line.startsWith('#'));
  const section = lines.slice(from + 1, to < 0 ? undefined : to);
  const start = section.findIndex((line) => line.startsWith('|'));
  if (start < 0) throw new Error(`No table below "${heading}".`);
  const end = section.findIndex((line, i) => i > start && !line.startsWith('|'));
  const [titles = [], , ...rows] = section.slice(start, end < 0 ? undefined : end).map(cellsOf);
  return rows.map((cells) => {
    if (cells.length !== titles.length)
      throw new Error(`A row below "${heading}" has ${cells.length} cells.`);
    return Object.fromEntries(titles.map((title, i) => [title, cells[i] as string]));
  });
}

/** A number as the page writes it, with a true minus sign; undefined for an empty cell. */
export function numberIn(cell: string | undefined): number | undefined {
  if (cell === undefined || cell === '') return undefined;
  const value = Number(cell.replace('−', '-'));
  if (Number.isNaN(value)) throw new Error(`"${cell}" is no number.`);
  return value;
}
