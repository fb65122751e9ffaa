import type { DesignDocument, Pipe } from '../document/document.ts';
import type { Finding } from '../results/results.ts';
import { partsOf } from '../routing/pathParts.ts';
import { graded, setPart, stated, type CheckInput } from './finding.ts';
import { limits, judge } from './limits.ts';

const resultOf = ({ results }: CheckInput, pipe: Pipe) => results.pipes.find((item) => item.part === pipe.id)!;

/** G1: a drain pipe always falls. The remedy lowers its lower end. */
export function pipeFall(input: CheckInput): Finding[] {
  const { document } = input;
  return partsOf(document, 'pipe').flatMap((pipe) => {
    const { slope } = resultOf(input, pipe);
    const params = { pipe: pipe.name, slope };
    const needed = pipe.invertUp - limits.G1.pass * pipe.length;
    const remedy = setPart(document, pipe.id, 'invertDown', needed, 'remedy.lowerPipeEnd', { pipe: pipe.name, slope: limits.G1.pass, level: needed });
    if (slope <= 0) return [stated('G1', slope === 0 ? 'flat' : 'backFall', 'stop', pipe.id, params, limits.G1.source, remedy)];
    if (pipe.diameter < 0.09 && judge(slope, limits.G1) === 'warn') return [stated('G1', 'flatSmall', 'stop', pipe.id, params, limits.G1.source, remedy)];
    return graded('G1', 'G1', slope, pipe.id, { pass: 'ok', warn: 'small', fail: 'tooFlat' }, params, remedy);
  });
}

const nextSizes: readonly number[] = [0.0762, 0.1016, 0.1524, 0.2032, 0.254, 0.3048];

/** G2: share of the full flow at the design storm. The remedy is the next size. */
export function pipeCapacity(input: CheckInput): Finding[] {
  const { document } = input;
  return partsOf(document, 'pipe').flatMap((pipe) => {
    const result = resultOf(input, pipe);
    const larger = nextSizes.find((size) => size > pipe.diameter + 1e-4);
    const remedy = larger === undefined ? null : setPart(document, pipe.id, 'diameter', larger, 'remedy.largerPipe', { pipe: pipe.name, diameter: larger });
    const params = { pipe: pipe.name, flow: result.designFlow, capacity: result.fullFlow, share: result.share };
    return graded('G2', 'G2', result.share, pipe.id, { pass: 'ok', warn: 'nearFull', fail: 'tooSmall' }, params, remedy);
  });
}

/** G3: either of full-bore velocity and tractive stress keeps it clean; too fast wears it. */
export function pipeCleansing(input: CheckInput): Finding[] {
  return partsOf(input.document, 'pipe').flatMap((pipe) => {
    const result = resultOf(input, pipe);
    const params = { pipe: pipe.name, velocity: result.fullVelocity, stress: result.tractiveStress, design: result.velocity };
    if (result.fullVelocity > limits.G3Fast.pass) return graded('G3', 'G3Fast', result.fullVelocity, pipe.id, { warn: 'fast' }, params);
    if (judge(result.tractiveStress, limits.G3Stress) === 'pass') return [stated('G3', 'ok', 'note', pipe.id, params, limits.G3Stress.source)];
    return graded('G3', 'G3', result.fullVelocity, pipe.id, { pass: 'ok', warn: 'slow' }, params);
  });
}

const strong = (pipe: Pipe): boolean => pipe.material === 'smoothSolid' && pipe.joints === 'glued';

/** G4: cover in the lawn, and under wheels. A glued smooth pipe counts as schedule 40. */
export function pipeCover({ document }: CheckInput): Finding[] {
  return partsOf(document, 'pipe').flatMap((pipe) => {
    const params = { pipe: pipe.name, cover: pipe.coverMin };
    if (pipe.underWheels && judge(pipe.coverMin, limits.G4) !== 'pass') return [stated('G4', 'underWheels', 'stop', pipe.id, params, limits.G4.source)];
    return graded('G4', strong(pipe) ? 'G4Strong' : 'G4', pipe.coverMin, pipe.id, { pass: 'ok', warn: 'shallow', fail: 'tooShallow' }, params);
  });
}

/** G5: a dead end without a cleanout, and more than 100 ft between two. */
export function cleanouts({ document }: CheckInput): Finding[] {
  return partsOf(document, 'pipe').flatMap((pipe) => {
    const params = { pipe: pipe.name, count: pipe.cleanouts, length: pipe.length };
    const inletAtHead = document.system.parts.some((part) => part.drainsTo === pipe.id && part.kind !== 'leader');
    const remedy = setPart(document, pipe.id, 'cleanouts', Math.max(1, pipe.cleanouts + 1), 'remedy.addCleanout', { pipe: pipe.name });
    if (pipe.cleanouts === 0 && !inletAtHead) return [stated('G5', 'deadEnd', 'stop', pipe.id, params, limits.G5.source, remedy)];
    const spacing = pipe.length / (pipe.cleanouts + 1);
    const fine = pipe.cleanouts > 0 && spacing <= limits.G5.pass;
    return [stated('G5', fine ? 'ok' : 'few', fine ? 'note' : 'caution', pipe.id, params, limits.G5.source, fine ? null : remedy)];
  });
}

/** G7: bends. */
export function bends({ document }: CheckInput): Finding[] {
  const source = 'Common practice: bends of 45 degrees or long sweeps below grade';
  return partsOf(document, 'pipe').map((pipe) => {
    const params = { pipe: pipe.name, count: pipe.bends90 };
    if (pipe.bends90 === 0) return stated('G7', 'ok', 'note', pipe.id, params, source);
    if (!pipe.longSweep) return stated('G7', 'hardBend', 'stop', pipe.id, params, source, setPart(document, pipe.id, 'longSweep', true, 'remedy.longSweep', { pipe: pipe.name }));
    return stated('G7', 'sweeps', pipe.bends90 > 1 ? 'caution' : 'note', pipe.id, params, source);
  });
}

/** G8, G9: material by what the run does, joints by what grows near it. */
export function pipeMaterial(input: CheckInput): Finding[] {
  const { document } = input;
  return partsOf(document, 'pipe').flatMap((pipe) => [material(input, pipe), joints(document, pipe)]);
}

function material(input: CheckInput, pipe: Pipe): Finding {
  const source = 'Common practice: carrying runs are solid, corrugated ones with one and a half times the fall';
  const params = { pipe: pipe.name, slope: resultOf(input, pipe).slope };
  const solid = setPart(input.document, pipe.id, 'material', 'smoothSolid', 'remedy.smoothPipe', { pipe: pipe.name });
  if (pipe.material === 'perforated') return stated('G8', 'perforated', 'stop', pipe.id, params, source, solid);
  if (pipe.material === 'corrugatedSolid') {
    const steep = resultOf(input, pipe).slope >= 1.5 * limits.G1.pass - 1e-9;
    return stated('G8', steep ? 'corrugated' : 'corrugatedFlat', steep ? 'caution' : 'stop', pipe.id, params, source, solid);
  }
  return stated('G8', 'ok', 'note', pipe.id, params, source);
}

function joints(document: DesignDocument, pipe: Pipe): Finding {
  const source = 'Common practice: glued or gasketed joints keep roots out';
  const params = { pipe: pipe.name };
  if (pipe.joints !== 'pushFit') return stated('G9', 'ok', 'note', pipe.id, params, source);
  const remedy = setPart(document, pipe.id, 'joints', 'gasketed', 'remedy.tightJoints', params);
  return stated('G9', 'loose', document.construction.treesNear ? 'stop' : 'caution', pipe.id, params, source, remedy);
}
