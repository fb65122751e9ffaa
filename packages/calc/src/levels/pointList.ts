import { FOOT } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';

export type PointColumn = 'point' | 'northing' | 'easting' | 'elevation' | 'description' | 'leaveOut';
/** The order that most surveyors' lists have. Source: common practice, no source. */
export const usualPointOrder: readonly PointColumn[] = ['point', 'northing', 'easting', 'elevation', 'description'];

export type PointUnit = 'foot' | 'usSurveyFoot' | 'metre';
/** The U.S. survey foot is 1200/3937 m. Source: NIST Special Publication 811, appendix B.6. */
const meters: Readonly<Record<PointUnit, number>> = { foot: FOOT, usSurveyFoot: 1200 / 3937, metre: 1 };

export interface ListedPoint {
  readonly point: string;
  readonly description: string;
  /** From the most western and most southern point of the list [m]. */
  readonly x: number;
  readonly y: number;
  readonly level: number;
}

export interface PointList {
  readonly points: readonly ListedPoint[];
  /** Easting and northing of the plan's origin, in the unit of the list. */
  readonly origin: { readonly easting: number; readonly northing: number };
  /** The first line was a heading. */
  readonly heading: boolean;
}

const mostPoints = 1000;
/** A list wider than this is no yard [m]: the order of the columns is wrong. */
const widest = 2000;

function problem(code: string, line: number, column: number, params: Readonly<Record<string, string | number>> = {}): CalcProblem {
  return new CalcProblem(`levels.list.${code}`, `lines/${line}/${column}`, { line, column, ...params });
}

/** Cells of a line: parted by comma, semicolon or tab, whichever it has; quotes hold a cell together, two of them are one. */
function cellsOf(text: string, line: number): string[] {
  const parting = [',', ';', '\t'].find((sign) => text.includes(sign));
  if (parting === undefined) return text.trim().split(/ +/);
  const cells: string[] = [];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < text.length; i += 1) {
    const sign = text[i]!;
    if (sign === '"' && quoted && text[i + 1] === '"') {
      cell += sign;
      i += 1;
    } else if (sign === '"') quoted = !quoted;
    else if (sign === parting && !quoted) {
      cells.push(cell.trim());
      cell = '';
    } else cell += sign;
  }
  if (quoted) throw problem('openQuote', line, cells.length + 1);
  return [...cells, cell.trim()];
}

const isNumber = (text: string): boolean => /^[+-]?(\d+\.?\d*|\.\d+)$/.test(text);

interface Row {
  readonly line: number;
  readonly point: string;
  readonly description: string;
  readonly northing: number;
  readonly easting: number;
  readonly elevation: number;
}

function rowOf(cells: readonly string[], order: readonly PointColumn[], line: number): Row {
  const figure = (column: PointColumn): number => {
    const index = order.indexOf(column);
    const text = cells[index];
    if (text === undefined || text === '') throw problem('cellMissing', line, index + 1);
    if (!isNumber(text)) throw problem('notANumber', line, index + 1, { text: text.slice(0, 40) });
    return Number(text);
  };
  const word = (column: PointColumn): string => cells[order.indexOf(column)] ?? '';
  // A description may hold the sign that parts the cells when it stands last.
  const last = order.length - 1;
  const description = order[last] === 'description' ? cells.slice(last).join(' ').trim() : word('description');
  return { line, point: word('point'), description, northing: figure('northing'), easting: figure('easting'), elevation: figure('elevation') };
}

function checkRows(rows: readonly Row[], scale: number, order: readonly PointColumn[]): void {
  const seen = new Map<string, number>();
  const [first] = rows;
  for (const row of rows) {
    const before = row.point === '' ? undefined : seen.get(row.point);
    if (before !== undefined) throw problem('twice', row.line, order.indexOf('point') + 1, { point: row.point, other: before });
    seen.set(row.point, row.line);
    const far = Math.max(Math.abs(row.northing - first!.northing), Math.abs(row.easting - first!.easting)) * scale;
    if (!(far <= widest)) throw problem('tooWide', row.line, order.indexOf('easting') + 1, { most: widest });
  }
}

/**
 * A surveyor's list of points, one a line, as text parted by commas, semicolons, tabs or blanks.
 *
 * @param order what stands in each column; northing, easting and elevation must be among them
 * @param unit  unit of coordinates and elevations
 * @returns places [m] from the most western and most southern point, so that large grid coordinates become a plan, and levels [m]
 * Empty lines are left out, and so is a first line without numbers.
 * Errors: levels.list.empty, tooMany, order, cellMissing, notANumber, openQuote, twice, tooWide, each with line and column
 * Source: common practice, no source
 */
export function parsePointList(text: string, order: readonly PointColumn[] = usualPointOrder, unit: PointUnit = 'foot'): PointList {
  const needed = ['northing', 'easting', 'elevation'] as const;
  if (needed.some((column) => order.filter((item) => item === column).length !== 1)) throw problem('order', 1, 1);
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/).map((content, index) => ({ content, number: index + 1 })).filter(({ content }) => content.trim() !== '');
  if (lines.length > mostPoints + 1) throw problem('tooMany', lines[mostPoints + 1]!.number, 1, { most: mostPoints });
  const split = lines.map(({ content, number }) => ({ number, cells: cellsOf(content, number) }));
  const heading = split[0] !== undefined && needed.every((column) => !isNumber(split[0]!.cells[order.indexOf(column)] ?? ''));
  if (!heading && lines.length > mostPoints) throw problem('tooMany', lines[mostPoints]!.number, 1, { most: mostPoints });
  const rows = split.slice(heading ? 1 : 0).map(({ cells, number }) => rowOf(cells, order, number));
  if (rows.length === 0) throw problem('empty', 1, 1);
  const scale = meters[unit];
  checkRows(rows, scale, order);
  const easting = rows.reduce((least, row) => Math.min(least, row.easting), Infinity);
  const northing = rows.reduce((least, row) => Math.min(least, row.northing), Infinity);
  return {
    heading, origin: { easting, northing },
    points: rows.map((row) => ({
      point: row.point, description: row.description, x: (row.easting - easting) * scale, y: (row.northing - northing) * scale, level: row.elevation * scale,
    })),
  };
}
