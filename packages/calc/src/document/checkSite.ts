import { checkPlan } from './checkPlan.ts';
import { DocumentError } from './error.ts';
import { checkEach, checkFields, checkUniqueIds, checkWord } from './fields.ts';
import {
  breakpointRules, candidateRules, catchmentRules, closureRules, datumRules, existingDrainRules, landingRules, lineRules, lossRules, lowSpotRules, observationRules, positionRules, sillRules, siteRules, soilRules, spotLevelRules,
  stageAreaRules, utilityRules,
} from './rules.ts';
import type { Catchment, LowSpot, Site } from './document.ts';

const surfaces = ['roof', 'paving', 'lawn', 'bed', 'gravel', 'permeablePaving', 'pool', 'neighbour'];

function checkLowSpot(spot: LowSpot, path: string): void {
  const stages = spot.stageArea;
  if (stages.length < 2) throw new DocumentError('document.tooFew', `${path}/stageArea`, { least: 2 });
  if (stages.length > 500) throw new DocumentError('document.tooMany', `${path}/stageArea`, { most: 500 });
  checkEach(stages, stageAreaRules, `${path}/stageArea`);
  stages.forEach((stage, index) => {
    const before = stages[index - 1];
    if (before === undefined) return;
    if (stage.level <= before.level) throw new DocumentError('document.notRising', `${path}/stageArea/${index}/level`);
    if (stage.area < before.area) throw new DocumentError('document.notRising', `${path}/stageArea/${index}/area`);
    if (stage.area <= 0) throw new DocumentError('document.notPositive', `${path}/stageArea/${index}/area`, { value: stage.area });
  });
  if (spot.rimLevel <= stages[0]!.level) throw new DocumentError('document.levelOrder', `${path}/rimLevel`, { lower: 'document.level.lowestPoint', upper: 'document.level.rim' });
}

function checkCatchment(catchment: Catchment, path: string): void {
  checkWord(catchment.surface, surfaces, `${path}/surface`);
  checkWord(catchment.response, ['kinematic', 'instantaneous', 'unitHydrograph'], `${path}/response`);
  checkWord(catchment.loss.method, Object.keys(lossRules), `${path}/loss/method`);
  checkFields(catchment.loss, lossRules[catchment.loss.method], `${path}/loss`);
  if (catchment.loss.method === 'curveNumber' && catchment.loss.curveNumber > 100) {
    throw new DocumentError('document.outOfRange', `${path}/loss/curveNumber`, { low: 0, high: 100 });
  }
  if (catchment.loss.method === 'horton' && catchment.loss.final > catchment.loss.initial) {
    throw new DocumentError('document.outOfRange', `${path}/loss/final`, { low: 0, high: catchment.loss.initial });
  }
}

function checkLines(site: Site): void {
  const lists = [['breaklines', site.breaklines, breakpointRules], ['walls', site.walls, positionRules]] as const;
  for (const [name, list, rules] of lists) {
    list.forEach((line, index) => {
      const path = `/site/${name}/${index}/points`;
      if (line.points.length < 2) throw new DocumentError('document.tooFew', path, { least: 2 });
      if (line.points.length > 500) throw new DocumentError('document.tooMany', path, { most: 500 });
      checkEach(line.points, rules, path);
    });
  }
  site.spotLevels.forEach(({ position }, index) => {
    if (position !== null) checkFields(position, positionRules, `/site/spotLevels/${index}/position`);
  });
}

/** Water that escapes from one low spot to another never comes back to it. */
function checkSpills(site: Site): void {
  const spots = new Map(site.lowSpots.map((spot) => [spot.id, spot]));
  site.lowSpots.forEach((start, index) => {
    const path = `/site/lowSpots/${index}/spillsTo`;
    const walked = new Set<string>([start.id]);
    let next = start.spillsTo;
    while (next !== null) {
      const spot = spots.get(next);
      if (spot === undefined) throw new DocumentError('document.unknownId', path, { id: next });
      if (walked.has(next)) throw new DocumentError('document.loop', path, { id: start.id });
      walked.add(next);
      next = spot.spillsTo;
    }
  });
}

function checkSurvey(site: Site): void {
  if (site.closure !== null) checkFields(site.closure, closureRules, '/site/closure');
  site.sills.forEach(({ landing }, index) => {
    if (landing === null) return;
    checkFields(landing, landingRules, `/site/sills/${index}/landing`);
    checkWord(landing.kind, ['egress', 'other'], `/site/sills/${index}/landing/kind`);
  });
}

function checkTargets(site: Site, partIds: ReadonlySet<string>): void {
  const spots = new Set(site.lowSpots.map((spot) => spot.id));
  site.sills.forEach((sill, index) => {
    if (!spots.has(sill.lowSpot)) throw new DocumentError('document.unknownId', `/site/sills/${index}/lowSpot`, { id: sill.lowSpot });
  });
  site.catchments.forEach((catchment, index) => {
    const path = `/site/catchments/${index}/drainsTo`;
    checkWord(catchment.drainsTo.kind, ['lowSpot', 'part', 'offSite'], `${path}/kind`);
    if (catchment.drainsTo.kind === 'offSite') return;
    const known = catchment.drainsTo.kind === 'lowSpot' ? spots : partIds;
    if (!known.has(catchment.drainsTo.id)) throw new DocumentError('document.unknownId', `${path}/id`, { id: String(catchment.drainsTo.id) });
  });
}

export function checkSite(site: Site, partIds: ReadonlySet<string>): void {
  checkFields(site, siteRules, '/site');
  checkFields(site.datum, datumRules, '/site/datum');
  checkFields(site.soil, soilRules, '/site/soil');
  const lists = [
    ['sills', site.sills, sillRules], ['spotLevels', site.spotLevels, spotLevelRules],
    ['breaklines', site.breaklines, lineRules], ['walls', site.walls, lineRules], ['lowSpots', site.lowSpots, lowSpotRules],
    ['catchments', site.catchments, catchmentRules], ['candidateOutlets', site.candidateOutlets, candidateRules],
    ['existingDrains', site.existingDrains, existingDrainRules], ['utilities', site.utilities, utilityRules],
    ['observations', site.observations, observationRules],
  ] as const;
  for (const [name, list, rules] of lists) {
    if (list.length > 1000) throw new DocumentError('document.tooMany', `/site/${name}`, { most: 1000 });
    checkEach(list, rules, `/site/${name}`);
    checkUniqueIds(list, `/site/${name}`);
  }
  site.lowSpots.forEach((spot, index) => { checkLowSpot(spot, `/site/lowSpots/${index}`); });
  site.catchments.forEach((catchment, index) => { checkCatchment(catchment, `/site/catchments/${index}`); });
  checkSurvey(site);
  checkLines(site);
  checkPlan(site.plan);
  checkSpills(site);
  checkTargets(site, partIds);
}
