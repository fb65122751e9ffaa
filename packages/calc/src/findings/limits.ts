import { FOOT, HOUR, INCH, MINUTE } from '../common/constants.ts';
import { unreached, type Limit, type LimitQuantity } from './limit.ts';

export { judge } from './limit.ts';
export type { Limit, LimitQuantity, Verdict } from './limit.ts';

const atLeast = (quantity: LimitQuantity, pass: number, fail: number, source: string): Limit => ({ sense: 'atLeast', quantity, pass, fail, source });
const atMost = (quantity: LimitQuantity, pass: number, fail: number, source: string): Limit => ({ sense: 'atMost', quantity, pass, fail, source });

const ours = 'Company standard (ours), no published source';
const common = 'Common practice, no single source';
const erosion = 'Permissible velocities of grassed waterways, extension tables';
const infiltration = 'Infiltration practices of state design manuals';

/** Every limit of the checks. A company may set a stricter one freely, a looser one with a reason; see overrides.ts. */
export const limits = {
  L1: atMost('length', 0.01 * FOOT, 0.02 * FOOT, 'Ours: freeboards are one to three inches'),
  L2: atLeast('height', 6 * INCH, 3 * INCH, 'IRC R401.3: soil falls 6 in in the first 10 ft'),
  L3: atLeast('slope', 0.02, 0.01, 'IRC R401.3: paving within 10 ft slopes 2 %; 1 % is common practice'),
  L4: atLeast('slope', 0.01, 0.005, 'Extension drain guidance 0.5 to 1 %; 1 % ours'),
  L5: atLeast('height', 1.0 * INCH, 0.5 * INCH, ours),
  L6: atLeast('height', 0, -0.5 * INCH, 'Overland passage of the 100-year storm without damage, municipal drainage manuals; limit ours'),
  L7: atLeast('tape', INCH / 16, 0, 'ADA 303: a grate proud of its surface is a step; grate slightly low is common practice'),
  L7Low: atMost('tape', INCH / 8, INCH / 4, 'ADA 303: vertical change in level at most 1/4 in'),
  L8Egress: atMost('tape', 1.5 * INCH, unreached, 'IRC R311.3: 1 1/2 in at the egress door'),
  L8Other: atMost('tape', 7.75 * INCH, unreached, 'IRC R311.3: 7 3/4 in at other doors'),
  D1: atLeast('length', 0.25 * FOOT, 0, ours),
  D1Fall: atLeast('slope', 0.01, 0, ours),
  D2: atLeast('number', 1.25, 1.0, 'EN 12056-3 gutter formula and plumbing-code leader table; margin ours'),
  D2Head: atLeast('length', 0.25 * FOOT, 0, 'Energy equation; margin ours'),
  I1: atLeast('number', 1.25, 1.0, 'FHWA HEC-22 sag grate, half clogged; margin ours'),
  I2: atMost('tape', 0.5 * INCH, 0.5 * INCH, 'ADA 302.3, used as a limit in a private yard'),
  I2Heel: atMost('tape', (5 / 16) * INCH, unreached, common),
  I4: atLeast('height', 6 * INCH, 3 * INCH, common),
  C1: atMost('percent', 0.8, 1.0, ours),
  C2: atLeast('slope', 0, -1 / 96, ours),
  C3: atMost('height', 2 * INCH, 12 * INCH, common),
  C4: atLeast('number', 1.2, 1.0, 'Orifice, C 0.62; margin ours'),
  C5Foot: atLeast('height', 4 * INCH, 3 * INCH, common),
  C5Car: atLeast('height', 6 * INCH, 4 * INCH, common),
  G1: atLeast('slope', 1 / 96, 1 / 192, 'Plumbing-code table of least slopes as a benchmark: 1/8 in/ft for 3 to 6 in'),
  G2: atMost('percent', 0.8, 1.0, ours),
  G3: atLeast('velocity', 2 * FOOT, -unreached, 'Long-used least velocity of 2 ft/s'),
  G3Stress: atLeast('stress', 1, -unreached, 'Tractive stress of about 1 Pa, sewer practice'),
  G3Fast: atMost('velocity', 10 * FOOT, unreached, 'Common upper velocity in plastic drains, no single source'),
  G4: atLeast('height', 12 * INCH, 6 * INCH, common),
  G4Strong: atLeast('height', 6 * INCH, 4 * INCH, common),
  G4Wheels: atLeast('height', 12 * INCH, 12 * INCH, common),
  G5: atMost('length', 100 * FOOT, 100 * FOOT, 'Plumbing code: a cleanout at least every 100 ft; from memory'),
  G8: atLeast('number', 1.5, 1.5, 'Common practice: corrugated pipe with one and a half times the fall'),
  B1: atMost('count', 15, 30, 'V = T Q / 4, lift-station manuals; limit for small pumps ours'),
  B2: atLeast('seconds', 60, 30, common),
  B3: atLeast('height', 4 * INCH, 4 * INCH, common),
  B4: atLeast('height', 2 * INCH, 0, 'Extension guide: never above the bottom of the inlet pipe'),
  B5Low: atLeast('height', 3 * INCH, -unreached, ours),
  B5High: atMost('height', 6 * INCH, unreached, ours),
  B6: atLeast('height', 3 * INCH, 1 * INCH, common),
  B7Table: atLeast('number', 1.2, 1.0, 'Archimedes; factor ours (a county septic sheet uses 1.5)'),
  B7Grade: atLeast('number', 1.1, 1.0, 'Archimedes; factor ours'),
  B10: atLeast('height', 4 * INCH, 0, common),
  P1: atMost('number', 0.3, unreached, 'Makers advise the middle of the curve; middle 60 % ours, as the distance from its middle'),
  P3: atLeast('number', 1.5, 1.2, 'Extension rule for ground-water pumps: 1.5 times the inflow'),
  P4Slow: atLeast('velocity', 2 * FOOT, 2 * FOOT, 'Cleansing velocity 2 ft/s, common practice'),
  P4Fast: atMost('velocity', 5 * FOOT, 8 * FOOT, 'Irrigation practice 5 ft/s; hammer above 8 ft/s, common practice'),
  P5: atMost('percent', 0.75, 0.85, ours),
  P6: atLeast('tape', 0.5 * INCH, 0.25 * INCH, common),
  P7: atLeast('tape', 18 * INCH, 18 * INCH, common),
  N1: atMost('percent', 0.25, 0.5, ours),
  N2: atMost('percent', 0.05, 0.1, ours),
  N3: atLeast('number', 1, -unreached, ours),
  N4Foundation: atLeast('length', 10 * FOOT, 5 * FOOT, 'Extension guides: 10 ft from foundations'),
  N4LotLine: atLeast('length', 10 * FOOT, 5 * FOOT, 'City rules ask 5 to 10 ft from the lot line'),
  N5: atLeast('height', 0, 0, 'Infiltration pits stand above the seasonal high water table; design manuals'),
  N6: atMost('hours', 24 * HOUR, 72 * HOUR, 'Infiltration practices drain within 72 h, design manuals; 24 h ours'),
  N7Grass: atMost('velocity', 2.5 * FOOT, 3 * FOOT, erosion),
  N7Dense: atMost('velocity', 5 * FOOT, 6 * FOOT, erosion),
  N7Stone: atMost('velocity', 10 * FOOT, 15 * FOOT, 'Ours: a 3 ft stone apron'),
  N8Factor: atLeast('number', 2, 2, infiltration),
  N8Slow: atLeast('intensity', (0.5 * INCH) / HOUR, (0.5 * INCH) / HOUR, infiltration),
  N8Fast: atMost('intensity', (10 * INCH) / HOUR, unreached, infiltration),
  N8Table: atLeast('length', 2 * FOOT, 2 * FOOT, infiltration),
  N8Time: atMost('hours', 72 * HOUR, 72 * HOUR, infiltration),
  N8Foundation: atLeast('length', 10 * FOOT, 10 * FOOT, infiltration),
  N10: atLeast('height', 6 * INCH, 0, common),
  N11: atLeast('height', 12 * INCH, 6 * INCH, common),
  E2: atMost('percent', 0.03, 0.05, 'NEC informational note: 3 %; from memory'),
  E3Direct: atLeast('height', 24 * INCH, 24 * INCH, 'NEC table 300.5 as adopted locally'),
  E3Conduit: atLeast('height', 18 * INCH, 18 * INCH, 'NEC table 300.5 as adopted locally'),
  E3Cable: atLeast('height', 12 * INCH, 12 * INCH, 'NEC table 300.5 as adopted locally: 120 V, 20 A, ground-fault protected'),
  E5: atLeast('minutes', 30 * MINUTE, 10 * MINUTE, ours),
  R1: atMost('area', 4046.856, 4046.856, 'Beyond one acre the rules of thumb end; ours'),
  R2: atMost('flow', 0.0283168, 0.0283168, 'Beyond 1 cfs the rules of thumb end; ours'),
  MRunoff: atLeast('height', 0.5 * INCH, -unreached, 'TR-55 chapter 2, limitations: less accurate below 0.5 in of runoff'),
  MResponse: atLeast('minutes', 15 * MINUTE, -unreached, 'Ours: the NRCS 24-hour types are made of 15- to 30-minute values'),
  MUnit: atLeast('area', 4046.856, -unreached, 'NEH 630 chapter 16; least area ours'),
  MGrate: atLeast('number', 1, -unreached, 'FHWA HEC-22 measured above 30 mm of head; 25 % either way ours'),
  MTable: atLeast('height', 24 * INCH, -unreached, 'NEH 630 chapter 7: water table within 24 in is group D'),
} as const satisfies Record<string, Limit>;

export type LimitId = keyof typeof limits;
export const limitIds = Object.keys(limits) as LimitId[];
