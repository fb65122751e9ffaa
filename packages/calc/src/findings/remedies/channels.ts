import type { CatchBasin, Channel, DesignDocument } from '../../document/document.ts';
import { channelResults } from '../../evaluate/gravityParts.ts';
import { inletPeak } from '../../evaluate/flows.ts';
import { sagGrateFlow, ALLOWED_GRATE_HEAD } from '../../inlet/sagGrate.ts';
import type { Remedy } from '../../results/results.ts';
import { partById } from '../../routing/pathParts.ts';
import { judge } from '../limit.ts';
import type { Limits } from '../overrides.ts';
import { fieldsOf, firstThat, remedyOf, setFields } from '../patch.ts';
import { followDown } from './follow.ts';
import { pipeSizes } from './pipes.ts';
import { roundUp } from './round.ts';

/** Widths in which channels come [m]. Source: common practice, 4 to 12 in. */
const channelWidths: readonly number[] = [0.1016, 0.127, 0.1524, 0.2032, 0.254, 0.3048];

/** A wider body, with an outlet and a pipe behind it as wide as they may be. */
function wider(document: DesignDocument, channel: Channel, width: number, outletSides: 1 | 2): Remedy {
  const bottomWidth = channel.bottomWidth * (width / channel.width);
  const outlet = channel.outletDiameter === null ? null : pipeSizes.filter((size) => size <= width + 1e-4 && size >= channel.outletDiameter!).at(-1) ?? channel.outletDiameter;
  const next = partById(document, channel.drainsTo);
  const pipe = outlet !== null && next?.kind === 'pipe' && next.diameter < outlet - 1e-4 ? fieldsOf(document, next, { diameter: outlet }) : [];
  const fields = { width, bottomWidth, ...(outlet === null ? {} : { outletDiameter: outlet }), ...(outletSides === channel.outletSides ? {} : { outletSides }) };
  return remedyOf('remedy.widerChannel', { part: channel.name, width }, [...fieldsOf(document, channel, fields), ...pipe]);
}

/** Water to the outlet from both sides, or a wider body, whichever comes first and is enough. */
export function shallowerFlow(document: DesignDocument, channel: Channel, limits: Limits): Remedy | null {
  const middle = channel.outletSides === 1 ? [setFields(document, channel, { outletSides: 2 }, 'remedy.middleOutlet', { part: channel.name })] : [];
  const widths = channelWidths.filter((width) => width > channel.width + 1e-4);
  const candidates = [...middle, ...widths.map((width) => wider(document, channel, width, channel.outletSides)), ...widths.map((width) => wider(document, channel, width, 2))];
  const period = document.rain.designReturnPeriod;
  return firstThat(document, candidates, (left) => {
    const result = channelResults(left, [period]).find(({ part }) => part === channel.id);
    return result !== undefined && judge(result.share, limits.C1) === 'pass';
  });
}

/** Orifice capacity grows with the square of the outlet: the first size that carries what is asked, and the pipe behind it. */
export function largerOutlet(document: DesignDocument, channel: Channel, share: number, limits: Limits): Remedy | null {
  const now = channel.outletDiameter;
  if (now === null || share <= 0) return null;
  const diameter = pipeSizes.find((size) => judge((share * size * size) / (now * now), limits.C4) === 'pass' && size > now);
  if (diameter === undefined) return null;
  const next = partById(document, channel.drainsTo);
  const pipe = next?.kind === 'pipe' && next.diameter < diameter - 1e-4 ? fieldsOf(document, next, { diameter }) : [];
  return remedyOf('remedy.largerOutlet', { part: channel.name, diameter }, [...fieldsOf(document, channel, { outletDiameter: diameter }), ...pipe]);
}

/** A level floor, at the lower of its two ends, and what must follow. */
export function levelChannel(document: DesignDocument, channel: Channel, limits: Limits): Remedy | null {
  const level = channel.invertUp < channel.invertDown ? channel.invertUp : channel.invertDown;
  const rest = followDown(document, partById(document, channel.drainsTo), level, limits);
  if (rest === null) return null;
  const end = level === channel.invertDown ? 'invertUp' : 'invertDown';
  return remedyOf('remedy.levelChannel', { part: channel.name }, [...fieldsOf(document, channel, { [end]: level }), ...rest]);
}

/** The pipe begins at the floor of the channel, and what must follow. */
export function pipeAtFloor(document: DesignDocument, channel: Channel, limits: Limits): Remedy | null {
  const next = partById(document, channel.drainsTo);
  if (next?.kind !== 'pipe') return null;
  const rest = followDown(document, next, channel.invertDown, limits);
  return rest === null ? null : remedyOf('remedy.lowerPipe', { pipe: next.name }, rest);
}

/** Share of a channel's grate that can be open [-]. Source: common range of heel-safe to bar grates, up to 0.6. */
const mostOpen = 0.6;

/** More opening in the grate of a channel, or a larger grate on a box, until it takes the design flow. */
export function largerGrate(document: DesignDocument, inlet: Channel | CatchBasin, limits: Limits): Remedy | null {
  const needed = limits.I1.pass * inletPeak(document, inlet, document.rain.designReturnPeriod);
  if (inlet.kind === 'channel') {
    const { clogging } = inlet.grate;
    const grate = (ratio: number) => ({ perimeter: 2 * (inlet.length + inlet.width), openArea: inlet.length * inlet.width * ratio, clogging });
    const ratios = [0.2, 0.3, 0.4, 0.5, mostOpen].filter((ratio) => ratio > inlet.grate.openAreaRatio);
    const enough = ratios.find((ratio) => sagGrateFlow(grate(ratio), ALLOWED_GRATE_HEAD).capacity >= needed);
    return enough === undefined ? null : setFields(document, inlet, { 'grate/openAreaRatio': enough }, 'remedy.openGrate', { part: inlet.name, share: enough });
  }
  if (inlet.grateOpenArea <= 0 || inlet.clogging <= 0) return null;
  const flow = sagGrateFlow({ perimeter: inlet.gratePerimeter, openArea: inlet.grateOpenArea, clogging: inlet.clogging }, ALLOWED_GRATE_HEAD);
  const edge = Math.max(1, needed / flow.weir, Math.sqrt(needed / flow.orifice));
  const fields = { gratePerimeter: roundUp(inlet.gratePerimeter * edge), grateOpenArea: roundUp(inlet.grateOpenArea * edge * edge) };
  return setFields(document, inlet, fields, 'remedy.largerGrate', { part: inlet.name, perimeter: fields.gratePerimeter });
}
