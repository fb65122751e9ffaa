import { joined, tell, type Ground, type Paragraph, type Reader } from './tell.ts';

const indexOf = <T extends { readonly id: string }>(list: readonly T[], id: string): number => list.findIndex((item) => item.id === id);

export function opening(ground: Ground, reader: Reader): Paragraph {
  return joined([
    tell(ground, reader, 'explain.title', { title: '/title' }),
    tell(ground, reader, 'explain.storm', { years: '/rain/designReturnPeriod', check: '/rain/checkReturnPeriod', table: '/rain/table/name' }),
  ]);
}

/** What hands the site to an engineer: what was seen, or what is too big. */
export function referral(ground: Ground, reader: Reader): Paragraph[] {
  const reasons = ground.findings.flatMap(({ severity, code, params }, index) => {
    if (severity !== 'refer') return [];
    const path = `/findings/${index}/params`;
    if (code === 'R.bigCatchment') return [tell(ground, reader, 'explain.refer.bigCatchment', { area: `${path}/area`, pass: `${path}/pass` })];
    if (code === 'R.bigFlow') return [tell(ground, reader, 'explain.refer.bigFlow', { flow: `${path}/flow`, pass: `${path}/pass` })];
    if (typeof params['note'] === 'string') return [tell(ground, reader, 'explain.refer.seen', { note: `${path}/note` })];
    return [tell(ground, reader, 'explain.refer.other', {})];
  });
  return reasons.length === 0 ? [] : [tell(ground, reader, 'explain.refer.lead', {}), ...reasons];
}

/** The site as it is: what runs where, and what comes in. */
export function asItIs(ground: Ground, reader: Reader): Paragraph[] {
  const { results, rain, site } = ground;
  const years = '/rain/designReturnPeriod';
  return site.lowSpots.map((lowSpot, index) => {
    const spot = `/site/lowSpots/${index}/name`;
    const peak = results.peaks.findIndex((item) => item.target === `${lowSpot.id}:bare` && item.returnPeriod === rain.designReturnPeriod);
    const flow = results.peaks[peak];
    const volume = results.lowSpots.findIndex((item) => item.lowSpot === lowSpot.id);
    return joined([
      flow === undefined || flow.flow <= 0 ? tell(ground, reader, 'explain.now.dry', { spot }) : tell(ground, reader, 'explain.now.flow', { years, flow: `/results/peaks/${peak}/flow`, spot }),
      ...(volume < 0 ? [] : [tell(ground, reader, 'explain.now.volume', { spot, volume: `/results/lowSpots/${volume}/volumeToSill` })]),
      ...sillsToday(ground, reader, lowSpot.id),
    ]);
  });
}

function sillsToday(ground: Ground, reader: Reader, lowSpot: string): Paragraph[] {
  return ground.results.freeboards.flatMap((item, index) => {
    const place = indexOf(ground.site.sills, item.sill);
    if (item.returnPeriod !== ground.rain.designReturnPeriod || ground.site.sills[place]?.lowSpot !== lowSpot) return [];
    const sill = `/site/sills/${place}/name`;
    const path = `/results/freeboards/${index}`;
    return item.withoutSystem < 0
      ? [tell(ground, reader, 'explain.now.over', { sill, time: `${path}/minutesOverSillWithoutSystem` })]
      : [tell(ground, reader, 'explain.now.below', { sill, height: `${path}/withoutSystem` })];
  });
}

export function oldDrains(ground: Ground, reader: Reader): Paragraph[] {
  return ground.results.existingDrains.flatMap((item, index) => {
    const place = indexOf(ground.site.existingDrains, item.drain);
    if (item.backedUpVolume === null || item.blindLength === null) return [];
    const path = `/results/existingDrains/${index}`;
    return [tell(ground, reader, 'explain.oldDrain', { drain: `/site/existingDrains/${place}/name`, volume: `${path}/backedUpVolume`, length: `${path}/blindLength` })];
  });
}

export function gravity(ground: Ground, reader: Reader): Paragraph[] {
  return ground.results.gravity.map((item, index) => {
    const place = indexOf(ground.site.candidateOutlets, item.outlet);
    const path = `/results/gravity/${index}`;
    const slots = { outlet: `/site/candidateOutlets/${place}/name`, level: `/site/candidateOutlets/${place}/level`, needed: `${path}/neededLevel` };
    if (item.feasible) return tell(ground, reader, 'explain.gravity.enough', slots);
    return item.shortfall > 0 ? tell(ground, reader, 'explain.gravity.short', { ...slots, shortfall: `${path}/shortfall` }) : tell(ground, reader, 'explain.gravity.thin', slots);
  });
}
