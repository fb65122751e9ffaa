import { FOOT, HOUR, INCH } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';
import { at, requirePositive, requireShare } from '../common/require.ts';
import { exp } from '../math/exp.ts';
import { log } from '../math/log.ts';
import type { ScsType } from '../rain/scsDistribution.ts';
import { curveNumberRunoff, initialAbstraction } from './curveNumber.ts';

const LN10 = 2.302585092994046;
const SQUARE_MILE = 5280 * 5280 * FOOT * FOOT;
/** One csm per inch in SI [m3/s per m2 and m]. */
const CSM_PER_INCH = (FOOT * FOOT * FOOT) / (SQUARE_MILE * INCH);
/** Ends of the published range of Tc [h]. Source: TR-55 chapter 4. */
const LEAST_HOURS = 0.1;
const MOST_HOURS = 10;

type Row = readonly [share: number, c0: number, c1: number, c2: number];

/** Ia/P and the three coefficients of each line. Source: TR-55 (1986) appendix F, table F-1. */
const COEFFICIENTS: Readonly<Record<ScsType, readonly Row[]>> = {
  I: [
    [0.1, 2.3055, -0.51429, -0.1175], [0.2, 2.23537, -0.50387, -0.08929], [0.25, 2.18219, -0.48488, -0.06589], [0.3, 2.10624, -0.45695, -0.02835],
    [0.35, 2.00303, -0.40769, 0.01983], [0.4, 1.87733, -0.32274, 0.05754], [0.45, 1.76312, -0.15644, 0.00453], [0.5, 1.67889, -0.0693, 0],
  ],
  IA: [[0.1, 2.0325, -0.31583, -0.13748], [0.2, 1.91978, -0.28215, -0.0702], [0.25, 1.83842, -0.25543, -0.02597], [0.3, 1.72657, -0.19826, 0.02633], [0.5, 1.63417, -0.091, 0]],
  II: [
    [0.1, 2.55323, -0.61512, -0.16403], [0.3, 2.46532, -0.62257, -0.11657], [0.35, 2.41896, -0.61594, -0.0882], [0.4, 2.36409, -0.59857, -0.05621],
    [0.45, 2.29238, -0.57005, -0.02281], [0.5, 2.20282, -0.51599, -0.01259],
  ],
  III: [
    [0.1, 2.47317, -0.51848, -0.17083], [0.3, 2.39628, -0.51202, -0.13245], [0.35, 2.35477, -0.49735, -0.11985], [0.4, 2.30726, -0.46541, -0.11094],
    [0.45, 2.24876, -0.41314, -0.11508], [0.5, 2.17772, -0.36803, -0.11508],
  ],
};

function onLine([, c0, c1, c2]: Row, hours: number): number {
  const t = log(hours) / LN10;
  return exp(LN10 * (c0 + c1 * t + c2 * t * t));
}

/**
 * Unit peak discharge of the TR-55 graphical method.
 *
 *   log10(q_u) = C0 + C1*log10(Tc) + C2*log10(Tc)^2     csm/in, h
 *
 * @param type NRCS rainfall type
 * @param timeOfConcentration Tc [s], 0.1 to 10 h
 * @param share Ia/P [-]; between two lines straight, beyond 0.1 and 0.5 the end line
 * @returns q_u [m3/s for each m2 and m of runoff]
 * Limits: throws runoff.outsideGraph outside 0.1 to 10 h
 * Source: TR-55 (1986), chapter 4 and appendix F, table F-1
 * Checked against: fixtures/runoff/graphicalPeak.json, row 5.6; fixtures/runoff/graphicalPeakCoefficients.csv, all lines
 */
export function unitPeakDischarge(type: ScsType, timeOfConcentration: number, share: number): number {
  requirePositive({ timeOfConcentration });
  requireShare({ share });
  const hours = timeOfConcentration / HOUR;
  if (hours < LEAST_HOURS || hours > MOST_HOURS) throw new CalcProblem('runoff.outsideGraph', 'timeOfConcentration', { hours, least: LEAST_HOURS, most: MOST_HOURS });
  const rows = COEFFICIENTS[type];
  const first = at(rows, 0);
  const last = at(rows, rows.length - 1);
  if (share <= first[0]) return onLine(first, hours) * CSM_PER_INCH;
  if (share >= last[0]) return onLine(last, hours) * CSM_PER_INCH;
  let i = 0;
  while (at(rows, i + 1)[0] < share) i += 1;
  const low = at(rows, i);
  const high = at(rows, i + 1);
  const q = onLine(low, hours);
  return (q + ((onLine(high, hours) - q) * (share - low[0])) / (high[0] - low[0])) * CSM_PER_INCH;
}

export interface GraphicalSite {
  readonly type: ScsType;
  readonly area: number;
  readonly timeOfConcentration: number;
  readonly curveNumber: number;
  /** 24-hour rain [mm]. */
  readonly rain: number;
  /** Share left by ponds and swamps along the way, 1 without. */
  readonly pondFactor: number;
}

/**
 * Peak flow of a small watershed by the TR-55 graphical method, for the hand check.
 *
 *   q_p = q_u * A * Q * F_p
 *
 * @param site rainfall type, area [m2], Tc [s], CN, 24-hour rain [mm], pond factor
 * @returns peak [m3/s], runoff [mm], Ia/P [-]
 * Limits: one homogeneous area, Tc 0.1 to 10 h, CN over 40 (TR-55 chapter 4)
 * Source: TR-55 (1986), equation 4-1
 * Checked against: fixtures/runoff/graphicalPeak.json, row 5.6 (example 4-1), 1 % of a graph reading
 */
export function graphicalPeak(site: GraphicalSite): { readonly flow: number; readonly runoff: number; readonly share: number } {
  requirePositive({ area: site.area, rain: site.rain });
  requireShare({ pondFactor: site.pondFactor });
  const runoff = curveNumberRunoff(site.rain, site.curveNumber);
  const share = Math.min(initialAbstraction(site.curveNumber) / site.rain, 1);
  const flow = (unitPeakDischarge(site.type, site.timeOfConcentration, share) * site.area * runoff * site.pondFactor) / 1000;
  return { flow, runoff, share };
}
