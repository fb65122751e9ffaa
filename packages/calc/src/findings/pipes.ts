import type { Pipe } from '../document/document.ts';
import type { Finding, PipeResult } from '../results/results.ts';
import { partsOf } from '../routing/pathParts.ts';
import { graded, isMet, ruled, stated, type CheckInput } from './finding.ts';
import { judge } from './limit.ts';
import { setFields } from './patch.ts';
import { addCleanouts, bendsOf45, cleanoutsNeeded, cleansingFall, deeperPipe, largerPipe, smoothPipe, steeperPipe } from './remedies/pipes.ts';

function forPipes(input: CheckInput, check: (pipe: Pipe, result: PipeResult) => Finding[]): Finding[] {
  return partsOf(input.document, 'pipe').flatMap((pipe) => check(pipe, input.results.pipes.find((item) => item.part === pipe.id)!));
}

/** Pipes under four inches need the full fall. Source: plumbing-code table of least slopes. */
const smallPipe = 0.09;

/** G1: a drain pipe always falls. The remedy lowers its lower end and what follows. */
export function pipeFall(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return forPipes(input, (pipe, { slope }) => {
    const where = { at: pipe.id, params: { pipe: pipe.name, slope, diameter: pipe.diameter }, remedy: () => steeperPipe(document, pipe, limits.G1.pass, limits) };
    if (slope <= 0) return [ruled(input, 'G1', 'G1', slope === 0 ? 'flat' : 'backFall', 'stop', where)];
    if (pipe.diameter < smallPipe && judge(slope, limits.G1) === 'warn') return [ruled(input, 'G1', 'G1', 'flatSmall', 'stop', where)];
    return graded(input, 'G1', 'G1', slope, { pass: 'ok', warn: 'small', fail: 'tooFlat' }, where);
  });
}

/** G2: share of the full flow at the design storm. The remedy is the first size that is enough. */
export function pipeCapacity(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return forPipes(input, (pipe, result) => {
    const params = { pipe: pipe.name, flow: result.designFlow, capacity: result.fullFlow, share: result.share };
    return graded(input, 'G2', 'G2', result.share, { pass: 'ok', warn: 'nearFull', fail: 'tooSmall' }, { at: pipe.id, params, remedy: () => largerPipe(document, pipe, limits) });
  });
}

/** G3: either of full-bore velocity and tractive stress keeps it clean; too fast wears it. */
export function pipeCleansing(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return forPipes(input, (pipe, result) => {
    const params = { pipe: pipe.name, velocity: result.fullVelocity, stress: result.tractiveStress, design: result.velocity };
    const fast = graded(input, 'G3', 'G3Fast', result.fullVelocity, { warn: 'fast', fail: 'fast' }, { at: pipe.id, params });
    if (fast.length > 0) return fast;
    if (isMet(input, 'G3Stress', result.tractiveStress)) return [ruled(input, 'G3', 'G3Stress', 'ok', 'note', { at: pipe.id, params })];
    return graded(input, 'G3', 'G3', result.fullVelocity, { pass: 'ok', warn: 'slow', fail: 'slow' }, { at: pipe.id, params, remedy: () => cleansingFall(document, pipe, limits) });
  });
}

const strong = (pipe: Pipe): boolean => pipe.material === 'smoothSolid' && pipe.joints === 'glued';

/** G4: cover in the lawn, and under wheels. A glued smooth pipe counts as schedule 40. */
export function pipeCover(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return forPipes(input, (pipe) => {
    const params = { pipe: pipe.name, cover: pipe.coverMin };
    const id = pipe.underWheels ? 'G4Wheels' : strong(pipe) ? 'G4Strong' : 'G4';
    const codes = pipe.underWheels ? { pass: 'ok', warn: 'underWheels', fail: 'underWheels' } as const : { pass: 'ok', warn: 'shallow', fail: 'tooShallow' } as const;
    return graded(input, 'G4', id, pipe.coverMin, codes, { at: pipe.id, params, remedy: () => deeperPipe(document, pipe, limits[id].pass, limits) });
  });
}

/** G5: a dead end without a cleanout, and too far or too bent between two. */
export function cleanouts(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return forPipes(input, (pipe) => {
    const where = { at: pipe.id, params: { pipe: pipe.name, count: pipe.cleanouts, length: pipe.length }, remedy: () => addCleanouts(document, pipe, limits) };
    const inletAtHead = document.system.parts.some((part) => part.drainsTo === pipe.id && part.kind !== 'leader');
    if (pipe.cleanouts === 0 && !inletAtHead) return [ruled(input, 'G5', 'G5', 'deadEnd', 'stop', where)];
    const fine = pipe.cleanouts >= cleanoutsNeeded(pipe, limits);
    return [ruled(input, 'G5', 'G5', fine ? 'ok' : 'few', fine ? 'note' : 'caution', where)];
  });
}

const footingSource = 'IRC P2604.4, from memory: no trench inside the 45 degree plane below a footing';

/** G6: a trench near a footing is an engineer's; ground at a foundation may be treated against termites. */
export function footings({ document }: CheckInput): Finding[] {
  const { trenchNearFooting, foundationWithin1ft, trenches } = document.construction;
  const found: Finding[] = [];
  if (trenchNearFooting) found.push(stated('G6', 'underFooting', 'refer', footingSource, { at: null }));
  else if (trenches.length > 0) found.push(stated('G6', 'ok', 'note', footingSource, { at: null }));
  if (foundationWithin1ft) found.push(stated('G6', 'termiteZone', 'caution', 'Common practice: ground disturbed at a foundation can end a termite contract', { at: null }));
  return found;
}

/** G7: bends. */
export function bends(input: CheckInput): Finding[] {
  const source = 'Common practice: bends of 45 degrees or long sweeps below grade';
  const { document } = input;
  return forPipes(input, (pipe) => {
    const where = { at: pipe.id, params: { pipe: pipe.name, count: pipe.bends90 } };
    if (pipe.bends90 === 0) return [stated('G7', 'ok', 'note', source, where)];
    const sweep = () => setFields(document, pipe, { longSweep: true }, 'remedy.longSweep', { pipe: pipe.name });
    if (!pipe.longSweep) return [stated('G7', 'hardBend', 'stop', source, { ...where, remedy: sweep })];
    const severity = pipe.bends90 > 1 ? 'caution' : 'note';
    return [stated('G7', pipe.bends90 > 1 ? 'manySweeps' : 'sweeps', severity, source, { ...where, remedy: () => bendsOf45(document, pipe) })];
  });
}

function material(input: CheckInput, pipe: Pipe, slope: number): Finding {
  const { document, limits } = input;
  const where = { at: pipe.id, params: { pipe: pipe.name, slope }, remedy: () => smoothPipe(document, pipe) };
  if (pipe.material === 'perforated') return stated('G8', 'perforated', 'stop', 'Common practice: carrying runs are solid', where);
  if (pipe.material !== 'corrugatedSolid') return ruled(input, 'G8', 'G8', 'ok', 'note', where);
  const steep = isMet(input, 'G8', slope / limits.G1.pass);
  return ruled(input, 'G8', 'G8', steep ? 'corrugated' : 'corrugatedFlat', steep ? 'caution' : 'stop', where);
}

function joints({ document }: CheckInput, pipe: Pipe): Finding {
  const source = 'Common practice: glued or gasketed joints keep roots out';
  const where = { at: pipe.id, params: { pipe: pipe.name }, remedy: () => setFields(document, pipe, { joints: 'gasketed' }, 'remedy.tightJoints', { pipe: pipe.name }) };
  if (pipe.joints !== 'pushFit') return stated('G9', 'ok', 'note', source, where);
  return stated('G9', document.construction.treesNear ? 'roots' : 'loose', document.construction.treesNear ? 'stop' : 'caution', source, where);
}

/** G8, G9: material by what the run does, joints by what grows near it. */
export const pipeMaterial = (input: CheckInput): Finding[] => forPipes(input, (pipe, { slope }) => [material(input, pipe, slope), joints(input, pipe)]);
