/** Every sentence a drawing may ask for; the text package holds the words in English and Spanish. */
export const labelCodes = [
  'drawing.sill', 'drawing.lowSpot', 'drawing.slab', 'drawing.spot', 'drawing.waterTable',
  'drawing.water', 'drawing.waterBelowSill', 'drawing.waterOverSill', 'drawing.basinWater', 'drawing.energyLine',
  'drawing.channel', 'drawing.catchBasin', 'drawing.grate', 'drawing.invert', 'drawing.pipe', 'drawing.underdrain', 'drawing.swale',
  'drawing.cleanout', 'drawing.leader', 'drawing.gutter', 'drawing.roofLine',
  'drawing.basin', 'drawing.basinRim', 'drawing.inlet', 'drawing.floor', 'drawing.off', 'drawing.on', 'drawing.alarm',
  'drawing.pump', 'drawing.standbyPump', 'drawing.checkValve', 'drawing.checkValveMissing', 'drawing.weepHole', 'drawing.line', 'drawing.highPoint',
  'drawing.out.roof', 'drawing.out.pump', 'drawing.out.yard', 'drawing.outlet.daylight', 'drawing.outlet.emitter', 'drawing.outlet.percolationTee', 'drawing.outlet.dryWell',
  'drawing.outlet.curb', 'drawing.outlet.stormConnection', 'drawing.outlet.ditch', 'drawing.pit', 'drawing.beside', 'drawing.besideAlike', 'drawing.store', 'drawing.tailwater',
  'drawing.candidate', 'drawing.shortfall', 'drawing.toSpare', 'drawing.utility', 'drawing.measuredLevel', 'drawing.photo',
  'drawing.notDrawn', 'drawing.exaggeration', 'drawing.trueScale', 'drawing.scaleBar',
  'drawing.rain', 'drawing.inflow', 'drawing.pumpFlow', 'drawing.pond', 'drawing.basinLevel', 'drawing.start', 'drawing.stop',
  'drawing.minutesFromPeak', 'drawing.minute', 'drawing.cursor', 'drawing.peakIntensity', 'drawing.peakFlow', 'drawing.highestPond',
  'drawing.pumpCurve', 'drawing.systemAtStart', 'drawing.systemAtStop', 'drawing.duty', 'drawing.dutyRange', 'drawing.measuredPoint',
  'drawing.flow', 'drawing.head', 'drawing.axisFlow', 'drawing.axisHead', 'drawing.axisLevel', 'drawing.axisVolume', 'drawing.stageCurve',
  'drawing.front.money', 'drawing.front.cost', 'drawing.front.order', 'drawing.front.protection', 'drawing.front.comesIn',
  'drawing.volumeToSill', 'drawing.volumeToRim', 'drawing.rim',
  'drawing.plan.area', 'drawing.plan.length', 'drawing.plan.level', 'drawing.plan.lowest', 'drawing.plan.spill', 'drawing.plan.north',
  'drawing.value.level', 'drawing.value.height', 'drawing.value.length', 'drawing.value.head', 'drawing.value.slope', 'drawing.value.flow', 'drawing.value.volume',
  'drawing.value.intensity', 'drawing.value.minutes', 'drawing.value.name', 'drawing.value.area', 'drawing.value.none', 'drawing.value.place', 'drawing.value.ground', 'drawing.sheet.checks',
  'plan.crossesItself', 'plan.wallsCross', 'plan.throughHouse', 'plan.crossesUtility', 'plan.inToleranceStrip', 'plan.countedTwice', 'plan.outsideLot', 'plan.tiedToNothing',
  'drawing.key.level', 'drawing.key.findingStop', 'drawing.key.findingCaution', 'drawing.key.findingNote', 'drawing.key.photo', 'drawing.key.energy', 'drawing.key.gravity',
  'drawing.key.built', 'drawing.key.next', 'drawing.key.notYet', 'drawing.key.held',
  'drawing.key.contour', 'drawing.key.extent', 'drawing.key.arrow', 'drawing.key.handDig', 'drawing.key.spot', 'drawing.key.wall', 'drawing.key.breakline', 'drawing.key.check',
  'drawing.key.asDesigned', 'drawing.key.asBuilt', 'drawing.key.before', 'drawing.key.after', 'drawing.key.both', 'drawing.table.before', 'drawing.table.after', 'drawing.sheet.between',
  'drawing.profile.shot', 'drawing.profile.falls', 'drawing.profile.slack', 'drawing.profile.flat', 'drawing.profile.back',
  'drawing.changed', 'drawing.added', 'drawing.removed',
  'drawing.sheet.section', 'drawing.sheet.levels', 'drawing.sheet.plan', 'drawing.sheet.surfaces', 'drawing.sheet.storm', 'drawing.sheet.pump', 'drawing.sheet.compare', 'drawing.sheet.differences',
  'drawing.sheet.continued', 'drawing.sheet.matchNext', 'drawing.sheet.matchBefore', 'drawing.sheet.feetPerInch', 'drawing.sheet.ratio', 'drawing.sheet.across', 'drawing.sheet.up', 'drawing.sheet.acrossRatio', 'drawing.sheet.upRatio', 'drawing.sheet.notToScale',
  'drawing.sheet.property', 'drawing.sheet.revision', 'drawing.sheet.hash', 'drawing.sheet.issued', 'drawing.sheet.asOf', 'drawing.sheet.number',
  'drawing.sheet.draft', 'drawing.sheet.provisional', 'drawing.sheet.superseded', 'drawing.sheet.water', 'drawing.sheet.datum',
  'drawing.table.surface', 'drawing.table.coefficient', 'drawing.table.drainsTo', 'drawing.value.number', 'drawing.table.size', 'drawing.waterBelow',
  'designs.offSite', 'designs.surface.roof', 'designs.surface.paving', 'designs.surface.lawn', 'designs.surface.bed', 'designs.surface.gravel', 'designs.surface.permeablePaving', 'designs.surface.pool', 'designs.surface.neighbour',
  'plan.use.house', 'plan.use.roof', 'plan.use.paving', 'plan.use.lawn', 'plan.use.bed', 'plan.use.gravel', 'plan.use.permeablePaving', 'plan.use.pool', 'plan.use.neighbour', 'plan.use.septic', 'plan.use.lot',
  'plan.use.wall', 'plan.use.gutter', 'plan.use.pipe', 'plan.use.drain', 'plan.use.utility', 'plan.use.measure', 'plan.use.sill', 'plan.use.part', 'plan.use.tree',
  'drawing.table.section', 'drawing.table.storm', 'drawing.table.pump', 'drawing.table.stage', 'drawing.table.plan', 'drawing.table.measure',
  'drawing.table.part', 'drawing.table.what', 'drawing.table.level', 'drawing.table.time', 'drawing.table.rain', 'drawing.table.inflow',
  'drawing.table.pumpFlow', 'drawing.table.pond', 'drawing.table.basin', 'drawing.table.flow', 'drawing.table.pumpHead',
  'drawing.table.headAtStart', 'drawing.table.headAtStop', 'drawing.table.area', 'drawing.table.volume', 'drawing.table.finding',
] as const;

export type LabelCode = (typeof labelCodes)[number];

/** A sentence as code and values in SI; rendered by the text package in the reader's language and units. */
export interface Label {
  readonly code: LabelCode;
  readonly params: Readonly<Record<string, number | string>>;
}

export function label(code: LabelCode, params: Readonly<Record<string, number | string>> = {}): Label {
  return { code, params };
}
