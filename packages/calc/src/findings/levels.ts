import { FOOT, INCH } from '../common/constants.ts';
import type { CatchBasin, Channel, DesignDocument, LowSpot, Outlet, Pipe, Sill } from '../document/document.ts';
import { pathFrom, partsOf } from '../routing/pathParts.ts';
import type { Finding } from '../results/results.ts';
import { graded, ruled, type CheckInput } from './finding.ts';
import { remedyOf, setFields } from './patch.ts';
import { higherPipe } from './remedies/pipes.ts';

const nameOf = (list: readonly { readonly id: string; readonly name: string }[], id: string): string => list.find((item) => item.id === id)?.name ?? id;
const inletsOf = (document: DesignDocument): (Channel | CatchBasin)[] => [...partsOf(document, 'channel'), ...partsOf(document, 'catchBasin')];
const collected = (document: DesignDocument, lowSpot: string): boolean => inletsOf(document).some((part) => part.lowSpot === lowSpot);

/** L1: the run of levels closes on its bench mark. */
export function surveyClosure(input: CheckInput): Finding[] {
  const { closure, spotLevels } = input.document.site;
  if (closure === null) return spotLevels.length === 0 ? [] : [ruled(input, 'L1', 'L1', 'notClosed', 'caution', { at: null })];
  const params = { misclosure: Math.abs(closure.misclosure), setUps: closure.setUps };
  return graded(input, 'L1', 'L1', params.misclosure, { pass: 'ok', warn: 'doubtful', fail: 'open' }, { at: null, params });
}

function soilAt(input: CheckInput, sill: Sill, index: number, fall: number): Finding[] {
  const { document, limits } = input;
  const params = { sill: sill.name, fall, back: -fall };
  if (collected(document, sill.lowSpot)) return graded(input, 'L2', 'L2', fall, { pass: 'ok', warn: 'collected', fail: 'collected' }, { at: sill.id, params }).map((item) => ({ ...item, severity: 'note' }));
  const remedy = () => remedyOf('remedy.regrade', { sill: sill.name, fall: limits.L2.pass }, [{ path: `/site/sills/${index}/soilFall`, value: limits.L2.pass }]);
  return graded(input, 'L2', 'L2', fall, { pass: 'ok', warn: 'fallSmall', fail: 'fallMissing' }, { at: sill.id, params, remedy });
}

/** L2: soil falls away from the house, unless a collector lies between it and the sill. */
export function soilFall(input: CheckInput): Finding[] {
  return input.document.site.sills.flatMap((sill, index) => (sill.soilFall === null ? [] : soilAt(input, sill, index, sill.soilFall)));
}

function pavingAt(input: CheckInput, spot: LowSpot): Finding[] {
  const { document } = input;
  const near = document.site.spotLevels
    .filter((shot) => shot.station !== null && shot.station > 0 && shot.station < 10 * FOOT && shot.station < spot.station)
    .sort((a, b) => a.station! - b.station!)[0];
  if (near === undefined) return [];
  const slope = (near.level - spot.stageArea[0]!.level) / (spot.station - near.station!);
  const codes = collected(document, spot.id) ? { pass: 'ok' } as const : { pass: 'ok', warn: 'fallSmall', fail: 'fallMissing' } as const;
  return graded(input, 'L3', 'L3', slope, codes, { at: spot.id, params: { lowSpot: spot.name, slope } });
}

/** L3: paving that falls toward the house needs a collector before the sill. */
export const fallAtHouse = (input: CheckInput): Finding[] => input.document.site.lowSpots.flatMap((spot) => pavingAt(input, spot));

/** L4: what gravity can do. For a pumped design it is the reason, for a gravity design it must hold. */
export function gravity(input: CheckInput): Finding[] {
  const { document, results } = input;
  const pumped = partsOf(document, 'pump').length > 0;
  return results.gravity.map((answer) => {
    const outlet = nameOf(document.site.candidateOutlets, answer.outlet);
    const params = { outlet, shortfall: answer.shortfall, withMargin: answer.shortfallWithMargin, spare: -answer.shortfallWithMargin };
    if (!answer.feasible) return ruled(input, 'L4', 'L4', 'gravityShort', 'note', { at: answer.outlet, params });
    return ruled(input, 'L4', 'L4', pumped ? 'gravityPossible' : 'ok', pumped ? 'caution' : 'note', { at: answer.outlet, params });
  });
}

/** Kept in hand below the collector's invert [m]. Source: ours. */
const inHand = 2 * INCH;

function fallToOutlet(input: CheckInput, inlet: Channel | CatchBasin, first: Pipe, outlet: Outlet, length: number): Finding[] {
  const { document, limits } = input;
  const slope = (first.invertUp - outlet.level - inHand) / length;
  const remedy = () => higherPipe(document, first, outlet.level + inHand + limits.L4.pass * length);
  return graded(input, 'L4', 'L4', slope, { pass: 'fallEnough', warn: 'fallSmall', fail: 'fallMissing' }, { at: inlet.id, params: { inlet: inlet.name, outlet: outlet.name, slope, inHand }, remedy });
}

/** L4 for what is drawn: the fall between an inlet and its outlet. */
export function gravityPaths(input: CheckInput): Finding[] {
  return inletsOf(input.document).flatMap((inlet) => {
    const path = pathFrom(input.document, inlet.id);
    const outlet = path.find((part) => part.kind === 'outlet');
    const pipes = path.filter((part): part is Pipe => part.kind === 'pipe');
    const first = pipes[0];
    if (outlet?.kind !== 'outlet' || first === undefined || path.some((part) => part.kind === 'swale')) return [];
    return fallToOutlet(input, inlet, first, outlet, pipes.reduce((sum, pipe) => sum + pipe.length, 0));
  });
}

function stepAt(input: CheckInput, part: Channel | CatchBasin): Finding {
  const { document, limits } = input;
  const surface = document.site.lowSpots.find((item) => item.id === part.lowSpot)!.stageArea[0]!.level;
  const below = surface - part.grateLevel;
  const where = {
    at: part.id, params: { part: part.name, below, proud: -below },
    remedy: () => setFields(document, part, { grateLevel: surface - limits.L7Low.pass }, 'remedy.lowerGrate', { part: part.name, below: limits.L7Low.pass }),
  };
  const low = graded(input, 'L7', 'L7Low', below, { warn: 'low', fail: 'lip' }, where)[0];
  return low ?? graded(input, 'L7', 'L7', below, { pass: 'ok', warn: 'flush', fail: 'proud' }, where)[0]!;
}

/** L7: a grate lies 1/16 to 1/8 in below its surface, never proud of it. */
export const grateStep = (input: CheckInput): Finding[] => inletsOf(input.document).map((part) => stepAt(input, part));

/** L8: the works leave the step at a door no higher than it was, and within the code's step. */
export function landings(input: CheckInput): Finding[] {
  return input.document.site.sills.flatMap((sill, index) => {
    if (sill.landing === null) return [];
    const { kind, before, after } = sill.landing;
    const limit = kind === 'egress' ? 'L8Egress' : 'L8Other';
    const params = { sill: sill.name, before, after };
    const remedy = () => remedyOf('remedy.keepStep', { sill: sill.name, step: before }, [{ path: `/site/sills/${index}/landing/after`, value: before }]);
    if (after > before + 1e-6) return [ruled(input, 'L8', limit, 'higher', 'stop', { at: sill.id, params, remedy })];
    return graded(input, 'L8', limit, after, { pass: 'ok', warn: 'overCode', fail: 'overCode' }, { at: sill.id, params });
  });
}
