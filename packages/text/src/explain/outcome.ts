import { tell, type Ground, type Paragraph, type Reader } from './tell.ts';

/** Every sill with the system, in the design storm and in the check storm. */
export function withSystem(ground: Ground, reader: Reader): Paragraph[] {
  if (ground.system.parts.length === 0) return [];
  const told = [ground.rain.designReturnPeriod, ground.rain.checkReturnPeriod];
  return ground.results.freeboards.flatMap((item, index) => {
    if (!told.includes(item.returnPeriod)) return [];
    const path = `/results/freeboards/${index}`;
    const slots = { years: `${path}/returnPeriod`, sill: `/site/sills/${ground.site.sills.findIndex((sill) => sill.id === item.sill)}/name` };
    const freeboard = `${path}/onTwin`;
    if (item.onTwin < 0) return [tell(ground, reader, 'explain.then.over', { ...slots, time: `${path}/minutesOverSill` })];
    if (item.lower < 0) return [tell(ground, reader, 'explain.then.maybe', { ...slots, freeboard })];
    if (item.lower === item.upper) return [tell(ground, reader, 'explain.then.belowAlone', { ...slots, freeboard })];
    return [tell(ground, reader, 'explain.then.below', { ...slots, freeboard, low: `${path}/lower`, high: `${path}/upper` })];
  });
}

/** A storm that was measured, with the system. */
export function measuredStorm(ground: Ground, reader: Reader): Paragraph[] {
  const { recorded } = ground.results;
  if (recorded === null) return [];
  return recorded.freeboards.map((item, index) => {
    const path = `/results/recorded/freeboards/${index}`;
    const slots = { storm: '/results/recorded/name', sill: `/site/sills/${ground.site.sills.findIndex((sill) => sill.id === item.sill)}/name` };
    return item.onTwin < 0 ? tell(ground, reader, 'explain.recorded.over', { ...slots, time: `${path}/minutesOverSill` })
      : tell(ground, reader, 'explain.recorded.below', { ...slots, freeboard: `${path}/onTwin` });
  });
}

/** The largest storm that is kept out, by the lower end of the band with the inlets half blocked. */
export function protectedStorm(ground: Ground, reader: Reader): Paragraph[] {
  const storm = ground.results.protection?.powerOn;
  if (storm === undefined) return [];
  const path = '/results/protection/powerOn';
  if (storm.returnPeriod === null) return [tell(ground, reader, 'explain.protection.none', { fails: `${path}/failsAt` })];
  const held = { years: `${path}/returnPeriod` };
  return [storm.wholeTable ? tell(ground, reader, 'explain.protection.all', held) : tell(ground, reader, 'explain.protection.upTo', { ...held, fails: `${path}/failsAt` })];
}

export function powerCut(ground: Ground, reader: Reader): Paragraph[] {
  const { outage } = ground.results;
  if (outage === null) return [];
  const years = '/results/outage/returnPeriod';
  return [
    outage.longestSafe > 0 ? tell(ground, reader, 'explain.outage', { years, time: '/results/outage/longestSafe' }) : tell(ground, reader, 'explain.outageNone', { years }),
  ];
}

/** Whose calculation this is, and how far it holds. Stands under everything that is printed. */
export function notice(ground: Ground, reader: Reader): Paragraph {
  return tell(ground, reader, 'designs.notSealed', { version: '/calcVersion' });
}
