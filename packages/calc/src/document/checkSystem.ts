import { DocumentError } from './error.ts';
import { checkEach, checkFields, checkUniqueIds, checkWord } from './fields.ts';
import { curveRules, dryWellRules, fittingRules, grateRules, markRules, partRules, pitRules, returnRules, seepageRules, stepRules } from './rules.ts';
import type { Basin, Channel, DischargeLine, Outlet, Part, PartKind, Pump, Site, System, Underdrain } from './document.ts';

/** Which kinds may stand downstream of which; an empty list means that the part ends a path or belongs to another. */
const mayDrainTo: Readonly<Record<PartKind, readonly PartKind[]>> = {
  gutter: ['leader', 'roofLine', 'pipe', 'outlet'],
  leader: ['roofLine', 'pipe', 'catchBasin', 'basin', 'outlet'],
  roofLine: ['outlet'],
  channel: ['pipe', 'catchBasin', 'basin', 'outlet'],
  catchBasin: ['pipe', 'basin', 'outlet'],
  pipe: ['pipe', 'catchBasin', 'cleanout', 'swale', 'basin', 'outlet'],
  cleanout: ['pipe', 'basin', 'outlet'],
  underdrain: ['pipe', 'catchBasin', 'cleanout', 'basin', 'outlet'],
  swale: ['outlet', 'swale', 'pipe'],
  basin: [],
  pump: ['checkValve', 'dischargeLine'],
  checkValve: ['dischargeLine'],
  weepHole: [],
  dischargeLine: ['outlet'],
  outlet: [],
};
const endsAlone: readonly PartKind[] = ['basin', 'outlet', 'weepHole'];

function checkCurve(pump: Pump, path: string): void {
  if (pump.curve.length < 2) throw new DocumentError('document.tooFew', path, { least: 2 });
  if (pump.curve.length > 200) throw new DocumentError('document.tooMany', path, { most: 200 });
  checkEach(pump.curve, curveRules, path);
  const rising = pump.curve[0]!.flow < pump.curve[pump.curve.length - 1]!.flow;
  const points = rising ? pump.curve : [...pump.curve].reverse();
  points.forEach((point, index) => {
    const before = points[index - 1];
    if (before === undefined) return;
    const at = rising ? index : points.length - 1 - index;
    if (point.flow <= before.flow) throw new DocumentError('document.notRising', `${path}/${at}/flow`);
    if (point.head >= before.head) throw new DocumentError('document.notFalling', `${path}/${at}/head`);
  });
  if (points[0]!.flow !== 0) throw new DocumentError('document.missing', `${path}/${rising ? 0 : points.length - 1}/flow`, { expected: 0 });
}

function checkMarks({ marks, floorLevel }: Basin, path: string): void {
  if (marks.length === 0) return;
  if (marks.length < 2) throw new DocumentError('document.tooFew', path, { least: 2 });
  if (marks.length > 200) throw new DocumentError('document.tooMany', path, { most: 200 });
  checkEach(marks, markRules, path);
  if (marks[0]!.level < floorLevel) throw new DocumentError('document.levelOrder', `${path}/0/level`, { lower: 'document.level.floorLevel', upper: 'document.level.mark' });
  marks.forEach((mark, index) => {
    const before = marks[index - 1];
    if (before !== undefined && mark.level <= before.level) throw new DocumentError('document.notRising', `${path}/${index}/level`);
    if (before !== undefined && mark.volume <= before.volume) throw new DocumentError('document.notRising', `${path}/${index}/volume`);
  });
}

function checkPump(pump: Pump, path: string): void {
  checkCurve(pump, `${path}/curve`);
  checkWord(pump.role, ['duty', 'standby'], `${path}/role`);
  checkWord(pump.power, ['mains', 'battery'], `${path}/power`);
  if (pump.power === 'battery' && (pump.energy === null || pump.inputPower === null)) {
    throw new DocumentError('document.missing', `${path}/${pump.energy === null ? 'energy' : 'inputPower'}`);
  }
}

function checkSeepage({ seepage }: Underdrain, path: string): void {
  if (seepage === null) return;
  checkWord(seepage.method, Object.keys(seepageRules), `${path}/method`);
  checkFields(seepage, seepageRules[seepage.method], path);
  if (seepage.method === 'relief' && seepage.sides !== 1 && seepage.sides !== 2) throw new DocumentError('document.outOfRange', `${path}/sides`, { low: 1, high: 2 });
}

function checkBasin(basin: Basin, path: string): void {
  checkWord(basin.wall, ['solid', 'perforated'], `${path}/wall`);
  const order = [
    ['floorLevel', basin.floorLevel, 'offLevel', basin.offLevel], ['offLevel', basin.offLevel, 'onLevel', basin.onLevel],
    ['onLevel', basin.onLevel, 'rimLevel', basin.rimLevel],
  ] as const;
  for (const [lower, low, upper, high] of order) {
    if (low >= high) throw new DocumentError('document.levelOrder', `${path}/${upper}`, { lower: `document.level.${lower}`, upper: `document.level.${upper}` });
  }
  checkMarks(basin, `${path}/marks`);
  if (basin.onLevel - basin.offLevel < 0.01) throw new DocumentError('document.outOfRange', `${path}/onLevel`, { low: basin.offLevel + 0.01, high: basin.rimLevel });
}

function checkChannel(channel: Channel, path: string): void {
  checkFields(channel.grate, grateRules, `${path}/grate`);
  checkWord(channel.shape, ['rectangular', 'trapezoidal', 'roundBottomed'], `${path}/shape`);
  if (channel.bottomWidth > channel.width) throw new DocumentError('document.outOfRange', `${path}/bottomWidth`, { low: 0, high: channel.width });
  if (channel.steps.length > 100) throw new DocumentError('document.tooMany', `${path}/steps`, { most: 100 });
  checkEach(channel.steps, stepRules, `${path}/steps`);
  channel.steps.forEach(({ at }, index) => {
    if (at > channel.length) throw new DocumentError('document.outOfRange', `${path}/steps/${index}/at`, { low: 0, high: channel.length });
    if (index > 0 && at <= channel.steps[index - 1]!.at) throw new DocumentError('document.notRising', `${path}/steps/${index}/at`);
  });
  if (channel.outletSides !== 1 && channel.outletSides !== 2) throw new DocumentError('document.outOfRange', `${path}/outletSides`, { low: 1, high: 2 });
  if (channel.grateLevel <= channel.invertUp) throw new DocumentError('document.levelOrder', `${path}/grateLevel`, { lower: 'document.level.invertUp', upper: 'document.level.grateLevel' });
  if (channel.grateLevel <= channel.invertDown) throw new DocumentError('document.levelOrder', `${path}/grateLevel`, { lower: 'document.level.invertDown', upper: 'document.level.grateLevel' });
}

function checkOutlet(outlet: Outlet, path: string): void {
  checkWord(outlet.outletKind, ['daylight', 'emitter', 'percolationTee', 'dryWell', 'curb', 'stormConnection', 'ditch'], `${path}/outletKind`);
  if (outlet.pit !== null) checkFields(outlet.pit, pitRules, `${path}/pit`);
  if (outlet.dryWell !== null) checkFields(outlet.dryWell, dryWellRules, `${path}/dryWell`);
  if (outlet.dryWell !== null && outlet.dryWell.voids <= 0) throw new DocumentError('document.notPositive', `${path}/dryWell/voids`, { value: outlet.dryWell.voids });
  if (outlet.exitGround !== null) checkWord(outlet.exitGround, ['grass', 'denseGrass', 'stone'], `${path}/exitGround`);
  if (outlet.returns !== null) checkFields(outlet.returns, returnRules, `${path}/returns`);
  for (const [name, answer] of Object.entries(outlet.questions)) {
    checkWord(answer, ['yes', 'no', 'unknown', 'notApplicable'], `${path}/questions/${name}`);
  }
}

function checkLine(line: DischargeLine, path: string): void {
  if (line.fittings.length > 100) throw new DocumentError('document.tooMany', `${path}/fittings`, { most: 100 });
  checkEach(line.fittings, fittingRules, `${path}/fittings`);
}

function checkOne(part: Part, path: string): void {
  checkFields(part, partRules[part.kind], path);
  if (part.kind === 'pump') checkPump(part, path);
  if (part.kind === 'underdrain') checkSeepage(part, `${path}/seepage`);
  if (part.kind === 'basin') checkBasin(part, path);
  if (part.kind === 'channel') checkChannel(part, path);
  if (part.kind === 'outlet') checkOutlet(part, path);
  if (part.kind === 'dischargeLine') checkLine(part, path);
  if (part.kind === 'pipe') checkWord(part.material, ['smoothSolid', 'corrugatedSolid', 'perforated'], `${path}/material`);
}

function checkReference(id: string, kind: 'pump' | 'basin', parts: ReadonlyMap<string, Part>, path: string): void {
  const found = parts.get(id);
  if (found === undefined) throw new DocumentError('document.unknownId', path, { id });
  if (found.kind !== kind) throw new DocumentError('document.wrongKind', path, { id, kind: found.kind });
}

function checkOutletSpots(outlet: Outlet, spots: ReadonlySet<string>, path: string): void {
  const named = [['dryWell/overflowsTo', outlet.dryWell?.overflowsTo ?? null], ['returns/lowSpot', outlet.returns?.lowSpot ?? null]] as const;
  for (const [field, id] of named) if (id !== null && !spots.has(id)) throw new DocumentError('document.unknownId', `${path}/${field}`, { id });
}

function checkLinks(part: Part, parts: ReadonlyMap<string, Part>, spots: ReadonlySet<string>, path: string): void {
  const allowed = mayDrainTo[part.kind];
  if (part.drainsTo === null) {
    if (!endsAlone.includes(part.kind)) throw new DocumentError('document.noOutlet', `${path}/drainsTo`, { id: part.id });
  } else {
    const next = parts.get(part.drainsTo);
    if (next === undefined) throw new DocumentError('document.unknownId', `${path}/drainsTo`, { id: part.drainsTo });
    if (!allowed.includes(next.kind)) throw new DocumentError('document.wrongKind', `${path}/drainsTo`, { id: next.id, kind: next.kind });
  }
  if (part.kind === 'pump') checkReference(part.basin, 'basin', parts, `${path}/basin`);
  if (part.kind === 'weepHole') checkReference(part.pump, 'pump', parts, `${path}/pump`);
  const spot = part.kind === 'channel' || part.kind === 'catchBasin' ? part.lowSpot : part.kind === 'gutter' ? part.overflowsTo : null;
  if (part.kind === 'outlet') checkOutletSpots(part, spots, path);
  if (spot !== null && !spots.has(spot)) {
    throw new DocumentError('document.unknownId', `${path}/${part.kind === 'gutter' ? 'overflowsTo' : 'lowSpot'}`, { id: spot });
  }
}

/** Follows every part downstream; a part met twice on the way is a loop. */
function checkLoops(parts: ReadonlyMap<string, Part>, list: readonly Part[]): void {
  const cleared = new Set<string>();
  list.forEach((start, index) => {
    const walked = new Set<string>();
    let part: Part | undefined = start;
    while (part !== undefined && !cleared.has(part.id)) {
      if (walked.has(part.id)) throw new DocumentError('document.loop', `/system/parts/${index}/drainsTo`, { id: start.id });
      walked.add(part.id);
      part = part.drainsTo === null ? undefined : parts.get(part.drainsTo);
    }
    for (const id of walked) cleared.add(id);
  });
}

export function checkSystem(system: System, site: Site): void {
  const { parts } = system;
  if (parts.length > 500) throw new DocumentError('document.tooMany', '/system/parts', { most: 500 });
  parts.forEach((part, index) => {
    checkFields(part, { id: 'text', kind: 'text' }, `/system/parts/${index}`);
    checkWord(part.kind, Object.keys(partRules), `/system/parts/${index}/kind`);
    checkOne(part, `/system/parts/${index}`);
  });
  checkUniqueIds(parts, '/system/parts');
  const byId = new Map(parts.map((part) => [part.id, part]));
  const spots = new Set(site.lowSpots.map((spot) => spot.id));
  checkLoops(byId, parts);
  parts.forEach((part, index) => { checkLinks(part, byId, spots, `/system/parts/${index}`); });
}
