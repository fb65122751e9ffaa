import { describe, expect, it } from 'vitest';
import { CalcProblem } from '../common/problem.ts';
import { seededRandom } from '../math/random.ts';
import { fixtureBytes, fixtureText } from '../testing/fixtures.ts';
import { parseAtlas14 } from './parseAtlas14.ts';

const pulaski = fixtureText('rain/pulaskiDepthInches.csv');
const annArbor = fixtureBytes('rain/annArborDepthInchesLimits.csv');

function problemOf(file: string | Uint8Array): CalcProblem {
  try {
    parseAtlas14(file);
  } catch (error) {
    if (error instanceof CalcProblem) return error;
    throw error;
  }
  throw new Error('the file was read');
}

/** Every printed number of a file, section by section, read apart from the parser. */
function printed(text: string): number[][] {
  return text.split('\n').filter((line) => /^\d+-(min|hr|day)/.test(line)).map((line) => line.split(':,')[1]?.split(',').map(Number) ?? []);
}

const inches = (rows: readonly (readonly number[])[] | null): number[][] => (rows ?? []).map((row) => row.map((mm) => Math.round((mm / 25.4) * 1e6) / 1e6));

describe('NOAA Atlas 14 point files', () => {
  it('Pulaski VA: depth in inches, mean only, UTF-8', () => {
    const { table, place, warnings, measure } = parseAtlas14(fixtureBytes('rain/pulaskiDepthInches.csv'));
    expect(inches(table.depths)).toEqual(printed(pulaski));
    expect(table.durations.slice(0, 5)).toEqual([300, 600, 900, 1800, 3600]);
    expect(table.durations.at(-1)).toBe(60 * 86400);
    expect(table.returnPeriods).toEqual([1, 2, 5, 10, 25, 50, 100, 200, 500, 1000]);
    expect([table.lower, table.upper, table.series, table.illustrative, measure]).toEqual([null, null, 'partialDuration', false, 'depth']);
    expect(place).toEqual({ name: 'Pulaski, Virginia, USA', station: 'PULASKI', latitude: 37.0556, longitude: -80.7842 });
    expect(table.source).toBe('NOAA Atlas 14 Volume 2 Version 3');
    expect(warnings).toEqual([]);
  });

  it('row 2.5: Ann Arbor MI: mean, upper and lower limits, ISO-8859-1', () => {
    const { table, place } = parseAtlas14(annArbor);
    const all = printed(Buffer.from(annArbor).toString('latin1'));
    expect(inches(table.depths)).toEqual(all.slice(0, 19));
    expect(inches(table.upper)).toEqual(all.slice(19, 38));
    expect(inches(table.lower)).toEqual(all.slice(38, 57));
    expect(place.latitude).toBe(42.2919);
    const hour = table.durations.indexOf(3600);
    const hundred = table.returnPeriods.indexOf(100);
    // Row 2.5 of the reference values: 2.69, 3.33, 2.15 in.
    expect([table.depths, table.upper, table.lower].map((d) => Number(((d?.[hour]?.[hundred] ?? 0) / 25.4).toFixed(2)))).toEqual([2.69, 3.33, 2.15]);
  });

  it('39 N 105 W: whole millimeters an hour become depths, and end where rounding ends them', () => {
    const { table, warnings, measure } = parseAtlas14(fixtureText('rain/pointIntensityMetric.csv'));
    expect(measure).toBe('intensity');
    expect(table.depths[0]?.[0]).toBeCloseTo((73 * 5) / 60, 10);
    expect(table.depths[4]).toEqual([18, 21, 27, 32, 40, 48, 55, 64, 76, 85]);
    expect(table.durations.at(-1)).toBe(2 * 86400);
    expect(warnings.map((w) => [w.code, w.params['from']])).toEqual([['rain.atlas.durationsDropped', 3 * 86400], ['rain.atlas.coarseIntensity', 12 * 3600]]);
    for (const row of table.depths) expect(Math.min(...row)).toBeGreaterThan(0);
  });

  it('intensity in inches an hour agrees with depth to the printed rounding', () => {
    // Row 2.7: the two NOAA files of one place in Texas, 1-year column.
    const file = (unit: string, values: string[]): string => [`Point precipitation frequency estimates (${unit})`, 'by duration for ARI (years):, 1', ...values].join('\n');
    const labels = ['5-min:', '10-min:', '15-min:', '30-min:', '60-min:'];
    const rows = (numbers: string[]): string[] => labels.map((label, i) => `${label}, ${numbers[i] ?? ''}`);
    const depth = parseAtlas14(file('inches', rows(['0.431', '0.684', '0.868', '1.24', '1.61'])));
    const intensity = parseAtlas14(file('inches/hour', rows(['5.17', '4.10', '3.47', '2.47', '1.61'])));
    depth.table.depths.forEach((row, i) => expect(Math.abs((row[0] ?? 0) / (intensity.table.depths[i]?.[0] ?? 0) - 1)).toBeLessThan(0.005));
  });

  it('row 2.ams: an annual-maximum file with its apostrophes', () => {
    const ams = pulaski.replace('Partial duration', 'Annual maximum')
      .replace('ARI (years):, 1,2,5,10,25,50,100,200,500,1000', "AEP:, '1/2,'1/5,'1/10,'1/25,'1/50,'1/100,'1/200,'1/500,'1/1000")
      .replace(/^(\d+-\w+:), [\d.]+,/gm, '$1, ');
    const { table } = parseAtlas14(ams);
    expect(table.series).toBe('annualMaximum');
    expect(table.returnPeriods).toEqual([2, 5, 10, 25, 50, 100, 200, 500, 1000]);
    expect(inches(table.depths)).toEqual(printed(pulaski).map((row) => row.slice(1)));
  });
});

describe('files that a spreadsheet saved again', () => {
  const expected = inches(parseAtlas14(pulaski).table.depths);
  const forms: Record<string, string> = {
    'CRLF': pulaski.replaceAll('\n', '\r\n'),
    'byte-order mark': `\ufeff${pulaski}`,
    'trailing commas': pulaski.split('\n').map((line) => `${line},,,`).join('\n'),
    'quotes': pulaski.split('\n').map((line) => line.split(',').map((cell) => `"${cell.trim()}"`).join(',')).join('\n'),
    'semicolons and decimal commas': pulaski.split('\n').map((line) => (/^\d+-/.test(line) ? line.replaceAll(',', ';').replaceAll('.', ',') : line.replaceAll(',', ';'))).join('\r\n'),
    'tabs': pulaski.replaceAll(',', '\t'),
    'ASCII degree': pulaski.replaceAll('\u00b0', ' Degree'),
  };
  for (const [name, text] of Object.entries(forms)) {
    it(name, () => {
      const { table, place } = parseAtlas14(text);
      expect(inches(table.depths)).toEqual(expected);
      expect(place.latitude).toBe(37.0556);
    });
  }
});

describe('any damage', () => {
  it('2000 random edits end in a sound table or in a problem with its line and column', () => {
    const random = seededRandom(14);
    const pick = (n: number): number => Math.floor(random() * n);
    const scraps = ['', ',', ';', '"', '-', '.', '\n', '0', '9', 'e', '\u0000', "'", ':', '1e9', 'NaN', '\ufeff'];
    let refused = 0;
    for (let n = 0; n < 2000; n += 1) {
      let text = pulaski;
      for (let k = pick(3); k >= 0; k -= 1) {
        const at = pick(text.length);
        text = text.slice(0, at) + (scraps[pick(scraps.length)] ?? '') + text.slice(at + pick(3));
      }
      try {
        for (const row of parseAtlas14(text).table.depths) {
          row.forEach((depth, i) => expect(Number.isFinite(depth) && depth > 0 && depth >= (row[i - 1] ?? 0)).toBe(true));
        }
      } catch (error) {
        if (!(error instanceof CalcProblem)) throw error;
        refused += 1;
        expect(error.code).toMatch(/^rain\.atlas\./);
        expect(error.path).toMatch(/^\d+:\d+$/);
      }
    }
    expect(refused).toBeGreaterThan(300);
  }, 60_000);
});

describe('files that cannot be read whole say where', () => {
  const cases: readonly [string, string, string, number, number | null][] = [
    ['a word for a number', pulaski.replace('0.446', 'abc'), 'notANumber', 16, 10],
    ['a negative depth', pulaski.replace('0.446', '-0.446'), 'notANumber', 16, 10],
    ['a missing cell', pulaski.replace('0.764,', ''), 'cellCount', 18, null],
    ['one cell too many', pulaski.replace('0.764,', '0.764,0.8,'), 'cellCount', 18, null],
    ['a depth that falls with the return period', pulaski.replace('1.32,1.54', '1.32,1.04'), 'notRising', 18, null],
    ['a longer rain that is shallower', pulaski.replace('15-min:, 0.558', '15-min:, 0.058'), 'longerIsShallower', 17, 10],
    ['a zero depth', pulaski.replace('5-min:, 0.279', '5-min:, 0.000'), 'zeroDepth', 15, 9],
    ['an unknown duration', pulaski.replace('30-min', '30-wk'), 'unknownDuration', 18, 1],
    ['durations out of order', pulaski.replace('30-min', '3-min'), 'durationsNotRising', 18, 1],
    ['no unit', pulaski.replace('(inches)', ''), 'noUnits', 1, 1],
    ['a period that is not one', pulaski.replace('10,25', 'ten,25'), 'badPeriod', 14, null],
    ['an open quote', pulaski.replace('10-min:,', '10-min:,"'), 'openQuote', 16, null],
    ['a web page', '<!DOCTYPE html><html></html>', 'webPage', 1, 1],
    ['another file', 'name,price\npipe,3\n', 'notAtlas', 1, 1],
    ['an empty file', '', 'notAtlas', 1, 1],
    ['a place that is not covered', "result = 'none';\nErrorMsg = 'Error 3.0: Selected location is not within a project area';", 'outsideCoverage', 1, 1],
    ['a table cut after one row', pulaski.slice(0, pulaski.indexOf('10-min')), 'tooFewDurations', 14, 1],
    ['the same table twice', `${pulaski}\n${pulaski.slice(pulaski.indexOf('by duration'))}`, 'sectionTwice', 39, null],
    ['a file as large as a photo', 'x'.repeat(1_000_001), 'tooLarge', 1, 1],
  ];
  for (const [name, text, code, line, column] of cases) {
    it(name, () => {
      const problem = problemOf(text);
      expect(problem.code).toBe(`rain.atlas.${code}`);
      expect(problem.params['line']).toBe(line);
      if (column !== null) expect(problem.params['column']).toBe(column);
      expect(problem.path).toBe(`${problem.params['line']}:${problem.params['column']}`);
    });
  }

  it('limits that cross the mean', () => {
    const text = Buffer.from(annArbor).toString('latin1').replace('5-min:, 0.370', '5-min:, 0.270');
    expect(problemOf(text)).toMatchObject({ code: 'rain.atlas.limitsCross', params: { line: 37, column: 9 } });
  });

  it('a file of limits only', () => {
    const text = Buffer.from(annArbor).toString('latin1');
    const first = text.indexOf('PRECIPITATION FREQUENCY ESTIMATES\n');
    const upper = text.indexOf('PRECIPITATION FREQUENCY ESTIMATES AT UPPER');
    expect(problemOf(text.slice(0, first) + text.slice(upper)).code).toBe('rain.atlas.noMean');
  });
});
