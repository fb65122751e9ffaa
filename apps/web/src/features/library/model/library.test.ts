import type { LibraryInput } from '@yardfall/contracts';
import { describe, expect, it } from 'vitest';
import { readCurveText, writeCurveText } from './curveText.ts';
import { startContent } from './fields.ts';
import { readSheet, writeSheet } from './sheet.ts';
import { readWithUnit, roundest } from './units.ts';

/** An invented datasheet in both systems. 1 US gallon is 231 cubic inches. */
const us = 'gpm\tft\n0\t24\n10\t22.5\n30\t15\n50\t3';
const gallon = 231 * 0.0254 ** 3;

describe('a curve pasted from a datasheet', () => {
  it('is read in gallons and feet, with a heading, in either order', () => {
    const read = readCurveText(us, 'gpm ft');
    if (!read.ok) throw new Error(read.code);
    expect(read.points).toHaveLength(4);
    expect(read.shutOff).toBeCloseTo(24 * 0.3048, 12);
    expect(read.runOut).toBeCloseTo((50 * gallon) / 60, 12);
    expect(readCurveText('50, 3\n30, 15\n10, 22.5\n0, 24', 'gpm ft')).toEqual(read);
    expect(readCurveText(writeCurveText(read.points, 'gpm ft'), 'gpm ft')).toEqual(read);
  });

  it('is read in liters and meters, and in cubic meters an hour', () => {
    const [first, second] = [readCurveText('0 7\n1 5\n2 2', 'L/s m'), readCurveText('0;7\n3.6;5\n7.2;2', 'm3/h m')];
    expect(first).toMatchObject({ ok: true, shutOff: 7, runOut: 0.002 });
    expect(second).toMatchObject({ ok: true, shutOff: 7, runOut: 0.002 });
  });

  it('is refused where it rises, with too few points, without the shut-off head, and where a line holds something else', () => {
    expect(readCurveText('0 7\n1 7.5\n2 2', 'L/s m')).toEqual({ ok: false, code: 'library.curveRises', params: { point: 2 } });
    expect(readCurveText('0 7\n1 5\n1 4', 'L/s m')).toMatchObject({ code: 'library.curveRises' });
    expect(readCurveText('0 7\n2 2', 'L/s m')).toEqual({ ok: false, code: 'library.fewPoints', params: { count: 2, least: 3 } });
    expect(readCurveText('0.5 7\n1 5\n2 2', 'L/s m')).toMatchObject({ code: 'library.noShutOff' });
    expect(readCurveText('0 7\n1 5 3\n2 2', 'L/s m')).toEqual({ ok: false, code: 'library.lineUnread', params: { line: 2 } });
    expect(readCurveText('0 7\n-1 8\n2 2', 'L/s m')).toMatchObject({ code: 'library.lineUnread' });
  });
});

describe('the library as a sheet', () => {
  const read = readCurveText(us, 'gpm ft');
  const entries: LibraryInput[] = [
    { name: 'Pump "A", 1/3 hp', source: 'Sheet 12\nof 2026', priceCode: 'pump.a', content: { kind: 'pump', curve: read.ok ? [...read.points] : [], solids: 0.0127, minSubmergence: 0.1 } },
    ...Object.values(startContent).filter(({ kind }) => kind !== 'pump').map((content) => ({ name: `A ${content.kind}`, source: '', priceCode: null, content })),
    { name: 'No outlet', source: '=danger', priceCode: null, content: { ...startContent.channel, outletDiameter: null } as LibraryInput['content'] },
  ];

  it('comes back as it went out, every kind and every figure', () => {
    const back = readSheet(writeSheet(entries));
    if (!back.ok) throw new Error(JSON.stringify(back));
    expect(back.entries).toHaveLength(entries.length);
    expect(writeSheet(back.entries)).toBe(writeSheet(entries));
    expect(back.entries[0]).toEqual(entries[0]);
    expect(back.entries.at(-1)).toMatchObject({ source: '=danger', content: { outletDiameter: null } });
  });

  it('writes each figure in the unit in which it is roundest', () => {
    expect(roundest('length', 0.1016)).toBe('4 in');
    expect(roundest('length', 0.11)).toBe('110 mm');
    expect(roundest('flow', (50 * gallon) / 60)).toBe('50 gpm');
    expect(readWithUnit('mass', '44 lb')).toBeCloseTo(19.9580643, 6);
    expect(readWithUnit('length', '4')).toBeNull();
  });

  it('a broken sheet is told by its line and column', () => {
    expect(readSheet('a,b\n1,2')).toEqual({ ok: false, code: 'library.sheetHead', params: {} });
    expect(readSheet('kind,name\n')).toEqual({ ok: false, code: 'library.sheetEmpty', params: {} });
    expect(readSheet('kind,name\nvalve,V')).toEqual({ ok: false, code: 'library.sheetKind', params: { line: 2, text: 'valve' } });
    expect(readSheet('kind,name,gratePerimeter,grateOpenArea\nbasinGrate,G,48,50 sqin')).toEqual({ ok: false, code: 'library.sheetCell', params: { line: 2, column: 'gratePerimeter', text: '48' } });
    expect(readSheet('kind,name,gratePerimeter,grateOpenArea\nbasinGrate,,48 in,50 sqin')).toMatchObject({ code: 'library.sheetCell', params: { column: 'name' } });
  });
});
