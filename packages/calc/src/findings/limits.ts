import { FOOT, HOUR, INCH, MINUTE } from '../common/constants.ts';

/**
 * A limit as data: `pass` is met, between the two a caution, beyond `fail` a stop. SI units.
 * `atLeast`: more is better; `atMost`: less is better.
 */
export interface Limit {
  readonly sense: 'atLeast' | 'atMost';
  readonly pass: number;
  readonly fail: number;
  readonly source: string;
}

const atLeast = (pass: number, fail: number, source: string): Limit => ({ sense: 'atLeast', pass, fail, source });
const atMost = (pass: number, fail: number, source: string): Limit => ({ sense: 'atMost', pass, fail, source });

const ours = 'Company standard (ours), no published source';
const common = 'Common practice, no single source';

/** Every limit of the checks. A company may set a stricter one freely, a looser one with who and why. */
export const limits = {
  L3: atLeast(0.02, 0.01, 'IRC R401.3: paving within 10 ft slopes 2 %; 1 % is common practice'),
  L4: atLeast(0.01, 0.005, 'Extension drain guidance 0.5 to 1 %; 1 % ours'),
  L5: atLeast(1.0 * INCH, 0.5 * INCH, ours),
  L6: atLeast(0, -0.5 * INCH, 'Overland passage of the 100-year storm without damage, municipal drainage manuals; limit ours'),
  L7: atLeast(0, -INCH / 16, 'ADA 303: vertical change in level at most 1/4 in; grate slightly low is common practice'),
  D1: atLeast(0.25 * FOOT, 0, ours),
  D1Fall: atLeast(0.01, 0, ours),
  D2: atLeast(1.25, 1.0, 'EN 12056-3 gutter formula and plumbing-code leader table; margin ours'),
  D2Head: atLeast(0.25 * FOOT, 0, 'Energy equation; margin ours'),
  I1: atLeast(1.25, 1.0, 'FHWA HEC-22 sag grate, half clogged; margin ours'),
  I2: atMost(0.5 * INCH, 0.5 * INCH, 'ADA 302.3, used as a limit in a private yard'),
  I2Heel: atMost((5 / 16) * INCH, (5 / 16) * INCH, common),
  I4: atLeast(6 * INCH, 3 * INCH, common),
  C1: atMost(0.8, 1.0, ours),
  C2: atLeast(0, -1 / 96, ours),
  C3: atMost(2 * INCH, 12 * INCH, common),
  C4: atLeast(1.2, 1.0, 'Orifice, C 0.62; margin ours'),
  C5Foot: atLeast(4 * INCH, 3 * INCH, common),
  C5Car: atLeast(6 * INCH, 4 * INCH, common),
  G1: atLeast(1 / 96, 1 / 192, 'Plumbing-code table of least slopes as a benchmark: 1/8 in/ft for 3 to 6 in'),
  G2: atMost(0.8, 1.0, ours),
  G3: atLeast(2 * FOOT, 0, 'Long-used least velocity of 2 ft/s'),
  G3Stress: atLeast(1, 0, 'Tractive stress of about 1 Pa, sewer practice'),
  G3Fast: atMost(10 * FOOT, Infinity, 'Common upper velocity in plastic drains, no single source'),
  G4: atLeast(12 * INCH, 6 * INCH, common),
  G4Strong: atLeast(6 * INCH, 4 * INCH, common),
  G5: atMost(100 * FOOT, 100 * FOOT, 'Plumbing code: a cleanout at least every 100 ft; from memory'),
  B1: atMost(15, 30, 'V = T Q / 4, lift-station manuals; limit for small pumps ours'),
  B2: atLeast(60, 30, common),
  B3: atLeast(4 * INCH, 4 * INCH, common),
  B4: atLeast(2 * INCH, 0, 'Extension guide: never above the bottom of the inlet pipe'),
  B5Low: atLeast(3 * INCH, 0, ours),
  B5High: atMost(6 * INCH, Infinity, ours),
  B6: atLeast(3 * INCH, 1 * INCH, common),
  B7Table: atLeast(1.2, 1.0, 'Archimedes; factor ours (a county septic sheet uses 1.5)'),
  B7Grade: atLeast(1.1, 1.0, 'Archimedes; factor ours'),
  B10: atLeast(4 * INCH, 0, common),
  P1: atMost(0.3, 0.5, 'Makers advise the middle of the curve; middle 60 % ours'),
  P3: atLeast(1.5, 1.2, 'Extension rule for ground-water pumps: 1.5 times the inflow'),
  P4Slow: atLeast(2 * FOOT, 0, 'Cleansing velocity 2 ft/s, common practice'),
  P4Fast: atMost(5 * FOOT, 8 * FOOT, 'Irrigation practice 5 ft/s; hammer above 8 ft/s, common practice'),
  P5: atMost(0.75, 0.85, ours),
  P6: atLeast(0.5 * INCH, 0.25 * INCH, common),
  P7: atLeast(18 * INCH, 18 * INCH, common),
  N1: atMost(0.25, 0.5, ours),
  N2: atMost(0.05, 0.1, ours),
  N3: atLeast(1, 0, ours),
  N4Foundation: atLeast(10 * FOOT, 5 * FOOT, 'Extension guides: 10 ft from foundations'),
  N4LotLine: atLeast(10 * FOOT, 5 * FOOT, 'City rules ask 5 to 10 ft from the lot line'),
  N5: atLeast(0, 0, 'Infiltration pits stand above the seasonal high water table; design manuals'),
  N6: atMost(24 * HOUR, 72 * HOUR, 'Infiltration practices drain within 72 h, design manuals; 24 h ours'),
  E2: atMost(0.03, 0.05, 'NEC informational note: 3 %; from memory'),
  E5: atLeast(30 * MINUTE, 10 * MINUTE, ours),
  R1: atMost(4046.856, 4046.856, 'Beyond one acre the rules of thumb end; ours'),
  R2: atMost(0.0283168, 0.0283168, 'Beyond 1 cfs the rules of thumb end; ours'),
} as const satisfies Record<string, Limit>;

export type LimitId = keyof typeof limits;
export type Verdict = 'pass' | 'warn' | 'fail';

/** Rounding of typed sizes must not turn a limit that is just met into one that is missed. */
const nearly = 1e-6;

/** Holds a value against a limit. */
export function judge(value: number, limit: Limit): Verdict {
  const slack = nearly * Math.max(1, Math.abs(limit.pass));
  if (limit.sense === 'atLeast') return value >= limit.pass - slack ? 'pass' : value >= limit.fail - slack ? 'warn' : 'fail';
  return value <= limit.pass + slack ? 'pass' : value <= limit.fail + slack ? 'warn' : 'fail';
}
