import { GRAVITY } from '../common/constants.ts';
import type { Channel, Pipe } from '../document/document.ts';
import { peakIntensity } from '../evaluate/flows.ts';
import { criticalDepth } from '../channel/criticalDepth.ts';
import { MINIMUM_FALL } from '../levels/gravityFall.ts';
import { PI } from '../math/constants.ts';
import { partById } from '../routing/pathParts.ts';
import type { Working } from '../results/results.ts';
import { fieldOf, symbol, working, type WorkingInput } from './working.ts';

export function gravityWorkings({ document, results }: WorkingInput): Working[] {
  return results.gravity.map((answer) => {
    const index = document.site.candidateOutlets.findIndex((outlet) => outlet.id === answer.outlet);
    const outlet = document.site.candidateOutlets[index]!;
    const path = `/site/candidateOutlets/${index}`;
    return working(`gravity.${outlet.id}.shortfall`, 'h = z_o + t - (z_c - S L)', [
      symbol('z_o', 'outletLevel', outlet.level, 'level', `${path}/level`), symbol('t', 'tailwater', outlet.tailwater, 'length', `${path}/tailwater`),
      symbol('z_c', 'collectorInvert', outlet.collectorInvert, 'level', `${path}/collectorInvert`), symbol('S', 'minimumFall', MINIMUM_FALL, 'slope'),
      symbol('L', 'length', outlet.distance, 'length', `${path}/distance`),
    ], answer.shortfall, 'length', 'Geometry; least fall 0.5 %, check L4');
  });
}

/** Peak flow onto each low spot in the design storm. */
export function peakWorkings({ document, results }: WorkingInput): Working[] {
  const { designReturnPeriod } = document.rain;
  const intensity = peakIntensity(document, designReturnPeriod);
  return results.peaks.filter((peak) => peak.returnPeriod === designReturnPeriod).map((peak) => working(
    `peaks.${peak.target}`, 'Q = i (sum of C A)', [
      symbol('i', 'peakIntensity', intensity, 'intensity', '/rain/table'), symbol('CA', 'runoffArea', intensity > 0 ? peak.flow / intensity : 0, 'area', '/site/catchments'),
    ], peak.flow, 'flow', 'Rational method, FHWA HEC-22 chapter 3; mean rain of five minutes',
  ));
}

export function channelWorkings({ document, results }: WorkingInput): Working[] {
  return results.channels.filter((item) => item.returnPeriod === document.rain.designReturnPeriod).flatMap((item) => {
    const channel = partById(document, item.part) as Channel;
    const side = item.flow / channel.outletSides;
    const critical = criticalDepth(side, channel.width);
    const flow = symbol('Q', 'flowFromOneSide', side, 'flow', `channels.${item.part}.flow`);
    const width = symbol('B', 'channelWidth', channel.width, 'length', fieldOf(document, item.part, 'width'));
    return [
      working(`channels.${item.part}.criticalDepth`, 'y_c = (Q^2 / (g B^2))^(1/3)', [flow, width, symbol('g', 'freeFall', GRAVITY, 'acceleration')], critical, 'height',
        'Chow 1959, chapter 4'),
      working(`channels.${item.part}.depthFreeFrictionless`, 'y_up = sqrt(3) y_c', [symbol('y_c', 'criticalDepth', critical, 'height', `channels.${item.part}.criticalDepth`)],
        item.depthFreeFrictionless, 'height', 'Level channel with even inflow, free end, no friction: Beij 1934, Chow 1959 section 12-2'),
      working(`channels.${item.part}.depth`, 'd(Q^2/(g A) + A y/2)/dx = A (S_0 - S_f)', [
        flow, width, symbol('n', 'roughness', channel.roughness, 'number', fieldOf(document, item.part, 'roughness')),
        symbol('D', 'outletDiameter', channel.outletDiameter ?? 0, 'length', fieldOf(document, item.part, 'outletDiameter')),
      ], item.depth, 'height', 'Spatially varied flow from the real end upstream, Chow 1959 section 12-2; outlet by FHWA HDS-5'),
    ];
  });
}

export function pipeWorkings({ document, results }: WorkingInput): Working[] {
  return results.pipes.filter((item) => item.fullFlow > 0).map((item) => {
    const pipe = partById(document, item.part) as Pipe;
    return working(`pipes.${item.part}.fullFlow`, 'Q = (1/n) A R^(2/3) S^(1/2)', [
      symbol('n', 'roughness', pipe.roughness, 'number', fieldOf(document, item.part, 'roughness')),
      symbol('A', 'area', (PI / 4) * pipe.diameter * pipe.diameter, 'area', fieldOf(document, item.part, 'diameter')),
      symbol('R', 'hydraulicRadius', pipe.diameter / 4, 'length', fieldOf(document, item.part, 'diameter')),
      symbol('S', 'slope', item.slope, 'slope', fieldOf(document, item.part, 'invertDown')),
    ], item.fullFlow, 'flow', 'Manning, Chow 1959 chapter 5');
  });
}
