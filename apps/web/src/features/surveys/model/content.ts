import type { SurveyContent } from '@yardfall/contracts';
import { v7 as uuidv7 } from 'uuid';

const FOOT = 0.3048;

export type Reading = SurveyContent['levelBook']['readings'][number];
export type Point = SurveyContent['points'][number];
export type DrainTest = SurveyContent['drainTests'][number];

export function emptyReading(): Reading {
  return { id: uuidv7(), point: '', backsight: null, intermediate: null, foresight: null, direct: null, note: '' };
}

/** A book that starts on the finished floor at 100.00 ft, as the trade does. */
export function emptySurvey(benchMark: string): SurveyContent {
  return {
    levelBook: { mode: 'heightOfInstrument', benchMark: { name: benchMark, level: 100 * FOOT }, readings: [{ ...emptyReading(), point: benchMark }] },
    points: [], stageArea: [], drainTests: [], observations: [],
  };
}

export function emptyDrainTest(name: string): DrainTest {
  return { id: uuidv7(), name, diameter: 0.1016, hoseFlow: 0, backedUpAfter: null, dyeSeen: false, cameraStop: null };
}

/** Names of the points in the book, in the order in which they were shot. */
export function shotPoints(content: SurveyContent): string[] {
  return [...new Set(content.levelBook.readings.map((reading) => reading.point.trim()).filter(Boolean))];
}

/** What a point is; a point nobody has named is no row. */
export function pointNamed(content: SurveyContent, name: string): Point {
  return content.points.find((point) => point.point === name) ?? { point: name, role: 'other', station: null, distance: null, tailwater: null };
}

export function withPoint(content: SurveyContent, point: Point): SurveyContent {
  const others = content.points.filter((other) => other.point !== point.point);
  const plain = point.role === 'other' && point.station === null && point.distance === null;
  return { ...content, points: plain ? others : [...others, point] };
}

/** What is sent: rows without a point or a figure are left out, and so is what names a point that is not in the book. */
export function tidied(content: SurveyContent): SurveyContent {
  const readings = content.levelBook.readings.filter((r) => r.point.trim() !== '' && [r.backsight, r.intermediate, r.foresight, r.direct].some((figure) => figure !== null));
  const shot = new Set(readings.map((reading) => reading.point.trim()));
  const pins = content.pins?.filter(({ point }) => shot.has(point)) ?? [];
  const { pins: _pins, ...rest } = content;
  return { ...rest, levelBook: { ...content.levelBook, readings }, points: content.points.filter((point) => shot.has(point.point)), ...(pins.length === 0 ? {} : { pins }) };
}
