import { GRAVITY, WATER_DENSITY } from '../common/constants.ts';
import type { Pipe, RoofLine, Swale } from '../document/document.ts';
import { PI } from '../math/constants.ts';
import { circleSection } from '../pipe/circleSection.ts';
import type { PipeResult, Working, WorkingStep } from '../results/results.ts';
import { bendLoss, entranceLoss, exitLoss } from '../routing/linkOf.ts';
import { partById, pathFrom } from '../routing/pathParts.ts';
import { flowTerms } from './flowTerms.ts';
import { fieldOf, step, symbol, working, type WorkingInput } from './working.ts';

const manning = 'Manning, Chow 1959 chapter 5';
const elements = 'Manning in a part-full circle, hydraulic elements of Chow 1959 table 2-1';

/** Section of a circle filled to the depth ratio r, as steps. */
function sectionSteps(diameter: number, ratio: number): WorkingStep[] {
  const { area, hydraulicRadius, wettedPerimeter } = circleSection(diameter, ratio);
  return [
    step('theta', 'wettedAngle', '2*acos(1 - 2*r)', (2 * wettedPerimeter) / diameter, 'number'), step('A', 'wettedArea', 'D^2*(theta - sin(theta))/8', area, 'area'),
    step('R', 'hydraulicRadius', 'A/(theta*D/2)', hydraulicRadius, 'length'),
  ];
}

function fullSheets({ document }: WorkingInput, item: PipeResult, index: number, pipe: Pipe): Working[] {
  const field = (name: string): string => fieldOf(document, pipe.id, name);
  const at = pipe.id;
  const pointer = `/results/pipes/${index}`;
  const symbols = [
    symbol('n', 'roughness', pipe.roughness, 'number', field('roughness')), symbol('D', 'pipeDiameter', pipe.diameter, 'diameter', field('diameter')),
    symbol('S', 'slope', item.slope, 'slope', `${pointer}/slope`),
  ];
  const radius = step('R', 'hydraulicRadius', 'D/4', pipe.diameter / 4, 'length');
  const area = step('A', 'area', 'pi/4*D^2', (PI / 4) * pipe.diameter * pipe.diameter, 'area');
  const slope = working({
    result: `${pointer}/slope`, at, formula: 'S = (z_1 - z_2)/L', value: item.slope, unit: 'slope', source: 'Geometry', tolerance: 1e-6, symbols: [
      symbol('z_1', 'invertUp', pipe.invertUp, 'level', field('invertUp')), symbol('z_2', 'invertDown', pipe.invertDown, 'level', field('invertDown')),
      symbol('L', 'length', pipe.length, 'length', field('length')),
    ],
  });
  if (item.slope <= 0) return [slope];
  return [
    slope,
    working({ result: `${pointer}/fullFlow`, at, formula: 'Q = 1/n*A*R^(2/3)*S^(1/2)', value: item.fullFlow, unit: 'flow', source: manning, symbols: [...symbols, symbol('pi', 'pi', PI, 'number')], steps: [area, radius], tolerance: 1e-6 }),
    working({ result: `${pointer}/fullVelocity`, at, formula: 'v = 1/n*R^(2/3)*S^(1/2)', value: item.fullVelocity, unit: 'velocity', source: manning, symbols, steps: [radius], tolerance: 1e-6 }),
  ];
}

/** What flows through in the design storm, and how full it runs. */
function designSheets(input: WorkingInput, item: PipeResult, index: number, pipe: Pipe): Working[] {
  const { document } = input;
  const pointer = `/results/pipes/${index}`;
  const at = pipe.id;
  const flow = symbol('Q', 'designFlow', item.designFlow, 'flow', `${pointer}/designFlow`);
  const diameter = symbol('D', 'pipeDiameter', pipe.diameter, 'diameter', fieldOf(document, at, 'diameter'));
  const slope = symbol('S', 'slope', item.slope, 'slope', `${pointer}/slope`);
  const roughness = symbol('n', 'roughness', pipe.roughness, 'number', fieldOf(document, at, 'roughness'));
  const full = symbol('Q_f', 'fullFlow', item.fullFlow, 'flow', `${pointer}/fullFlow`);
  const ratio = symbol('r', 'depthRatio', item.depthRatio, 'percent', `${pointer}/depthRatio`);
  const terms = flowTerms(input, pipe);
  const through = working({
    result: `${pointer}/designFlow`, at, formula: `Q = ${terms.formula}`, symbols: terms.symbols, steps: terms.steps, value: item.designFlow, unit: 'flow',
    source: 'Sum of what drains to it in the design storm', tolerance: 1e-6,
  });
  if (item.slope <= 0) return [through];
  const share = working({ result: `${pointer}/share`, at, formula: 'r_q = Q/Q_f', value: item.share, unit: 'percent', source: 'Design flow over full flow, check G2', symbols: [flow, full], tolerance: 1e-6 });
  if (item.designFlow <= 0) return [through, share];
  const steps = sectionSteps(pipe.diameter, item.depthRatio);
  const depth = item.depthRatio >= 1
    ? working({ result: `${pointer}/depthRatio`, at, formula: 'r = min(1, Q/Q_f)', value: 1, unit: 'percent', source: 'A flow above the full flow fills the pipe', symbols: [flow, full], tolerance: 0.08 })
    : working({
      result: `${pointer}/depthRatio`, at, formula: 'Q = A*R^(2/3)*S^(1/2)/n', solves: 'r', value: item.depthRatio, unit: 'percent', source: elements,
      symbols: [flow, diameter, slope, roughness, ratio], steps, tolerance: 1e-6,
    });
  return [
    through, share, depth,
    working({ result: `${pointer}/velocity`, at, formula: 'v = Q/A', value: item.velocity, unit: 'velocity', source: 'Flow over wetted area', symbols: [flow, diameter, ratio], steps: steps.slice(0, 2), tolerance: 1e-6 }),
    working({
      result: `${pointer}/tractiveStress`, at, formula: 'tau = rho*g*R*S', value: item.tractiveStress, unit: 'stress', source: 'Mean shear on the wetted wall, ASCE gravity sewer practice',
      symbols: [symbol('rho', 'waterDensity', WATER_DENSITY, 'number'), symbol('g', 'freeFall', GRAVITY, 'acceleration'), diameter, slope, ratio], steps, tolerance: 1e-6,
    }),
  ];
}

export function pipeWorkings(input: WorkingInput): Working[] {
  return input.results.pipes.flatMap((item, index) => {
    const pipe = partById(input.document, item.part) as Pipe;
    return [...fullSheets(input, item, index, pipe), ...designSheets(input, item, index, pipe)];
  });
}

export function roofLineWorkings(input: WorkingInput): Working[] {
  const { document, results } = input;
  return results.roofLines.flatMap((item, index) => {
    const line = partById(document, item.part) as RoofLine;
    const field = (name: string): string => fieldOf(document, line.id, name);
    const pointer = `/results/roofLines/${index}`;
    const diameter = symbol('D', 'pipeDiameter', line.diameter, 'diameter', field('diameter'));
    const length = symbol('L', 'length', line.length, 'length', field('length'));
    const pi = symbol('pi', 'pi', PI, 'number');
    const terms = flowTerms(input, line);
    const outlet = pathFrom(document, line.id).find((part) => part.kind === 'outlet');
    const lid = outlet?.kind === 'outlet' ? Math.max(outlet.level + outlet.openingHead, outlet.waterLevel) : line.unsealedJointLevel;
    const losses = exitLoss + entranceLoss + line.bends90 * bendLoss.long90 + line.bends45 * bendLoss.bend45;
    const speed = item.flow / ((PI / 4) * line.diameter * line.diameter);
    return [
      working({
        result: `${pointer}/flow`, at: line.id, formula: `Q = ${terms.formula}`, symbols: terms.symbols, steps: terms.steps, value: item.flow, unit: 'flow',
        source: 'Sum of what drains to it in the design storm', tolerance: 1e-6,
      }),
      working({
        result: `${pointer}/standingLevel`, at: line.id, formula: 'z = z_lid + n^2*L*v^2/(D/4)^(4/3) + K*v^2/(2*g)', value: item.standingLevel, unit: 'level', tolerance: 1e-6,
        source: 'Energy equation, Manning friction in a full pipe; loss coefficients as in FHWA HEC-22, from memory', symbols: [
          symbol('z_lid', 'lidLevel', lid, 'level', outlet === undefined ? field('unsealedJointLevel') : fieldOf(document, outlet.id, 'level')),
          symbol('n', 'roughness', line.roughness, 'number', field('roughness')), length, diameter, symbol('Q', 'designFlow', item.flow, 'flow', `${pointer}/flow`), pi,
          symbol('K', 'lossCoefficients', losses, 'number', field('bends90')), symbol('g', 'freeFall', GRAVITY, 'acceleration'),
        ], steps: [step('v', 'velocity', 'Q/(pi/4*D^2)', speed, 'velocity')],
      }),
      working({ result: `${pointer}/volume`, at: line.id, formula: 'V = pi/4*D^2*L', value: item.volume, unit: 'volume', source: 'Geometry: a sealed line on flat ground stays full', symbols: [pi, diameter, length] }),
    ];
  });
}

export function swaleWorkings(input: WorkingInput): Working[] {
  const { document, results } = input;
  return results.swales.flatMap((item, index) => {
    const swale = partById(document, item.part) as Swale;
    const field = (name: string): string => fieldOf(document, swale.id, name);
    const pointer = `/results/swales/${index}`;
    const at = swale.id;
    const terms = flowTerms(input, swale);
    const flow = symbol('Q', 'designFlow', item.flow, 'flow', `${pointer}/flow`);
    const side = symbol('m', 'sideSlope', swale.sideSlope, 'number', field('sideSlope'));
    const depth = symbol('y', 'swaleDepth', item.depth, 'height', `${pointer}/depth`);
    const start = step('k', 'conveyanceNeeded', 'n*Q/sqrt(S)', (swale.roughness * item.flow) / Math.sqrt(swale.slope), 'number');
    const source = 'Manning in a V section, Chow 1959 chapter 6';
    const through = working({
      result: `${pointer}/flow`, at, formula: `Q = ${terms.formula}`, symbols: terms.symbols, steps: terms.steps, value: item.flow, unit: 'flow',
      source: 'Sum of what drains to it in the design storm', tolerance: 1e-6,
    });
    if (item.flow <= 0) return [through];
    return [
      through,
      working({
        result: `${pointer}/depth`, at, formula: 'y = k^(3/8)*(4*(1 + m^2))^(1/8)/m^(5/8)', value: item.depth, unit: 'height', source, tolerance: 1e-6, steps: [start], symbols: [
          flow, side, symbol('n', 'roughness', swale.roughness, 'number', field('roughness')), symbol('S', 'slope', swale.slope, 'slope', field('slope')),
        ],
      }),
      working({ result: `${pointer}/velocity`, at, formula: 'v = Q/(m*y^2)', value: item.velocity, unit: 'velocity', source, symbols: [flow, side, depth], tolerance: 1e-6 }),
      working({ result: `${pointer}/topWidth`, at, formula: 'B = 2*m*y', value: item.topWidth, unit: 'length', source: 'Geometry', symbols: [side, depth] }),
      working({
        result: `${pointer}/share`, at, formula: 'r = y/D', value: item.share, unit: 'percent', source: 'Depth over the depth that is built', symbols: [depth, symbol('D', 'builtDepth', swale.depth, 'height', field('depth'))],
      }),
    ];
  });
}
