import { joined, tell, type Ground, type Paragraph, type Reader } from './tell.ts';

type Say = (ground: Ground, reader: Reader) => Paragraph[];

const partPath = (ground: Ground, id: string): string => `/system/parts/${ground.system.parts.findIndex((part) => part.id === id)}`;

export const gutters: Say = (ground, reader) => ground.results.gutters.map((item, index) => {
  const path = `/results/gutters/${index}`;
  return joined([
    tell(ground, reader, 'explain.gutter', { gutter: `${partPath(ground, item.part)}/name`, demand: `${path}/demand`, capacity: `${path}/capacity`, leaders: `${path}/leaderCapacity` }),
    ...(item.overflow > 0 ? [tell(ground, reader, 'explain.gutterOver', { overflow: `${path}/overflow` })] : []),
  ]);
});

export const roofLines: Say = (ground, reader) => ground.results.roofLines.map((item, index) => tell(ground, reader, 'explain.roofLine', {
  line: `${partPath(ground, item.part)}/name`, flow: `/results/roofLines/${index}/flow`, volume: `/results/roofLines/${index}/volume`,
}));

export const channels: Say = (ground, reader) => ground.results.channels.flatMap((item, index) => {
  if (item.returnPeriod !== ground.rain.designReturnPeriod) return [];
  const path = `/results/channels/${index}`;
  const part = partPath(ground, item.part);
  return [tell(ground, reader, 'explain.channel', { part: `${part}/name`, flow: `${path}/flow`, depth: `${path}/depth`, body: `${part}/depth`, share: `${path}/share` })];
});

export const grates: Say = (ground, reader) => ground.results.grates.map((item, index) => tell(ground, reader, 'explain.grate', {
  part: `${partPath(ground, item.part)}/name`, capacity: `/results/grates/${index}/capacity`, flow: `/results/grates/${index}/flow`,
}));

export const pipes: Say = (ground, reader) => ground.results.pipes.map((item, index) => {
  const path = `/results/pipes/${index}`;
  const part = `${partPath(ground, item.part)}/name`;
  if (item.slope <= 0) return tell(ground, reader, 'explain.pipeNoFall', { part });
  return tell(ground, reader, 'explain.pipe', { part, slope: `${path}/slope`, flow: `${path}/designFlow`, full: `${path}/fullFlow`, share: `${path}/share` });
});

export const swales: Say = (ground, reader) => ground.results.swales.map((item, index) => {
  const path = `/results/swales/${index}`;
  const part = partPath(ground, item.part);
  return tell(ground, reader, 'explain.swale', { part: `${part}/name`, flow: `${path}/flow`, depth: `${path}/depth`, width: `${path}/topWidth`, velocity: `${path}/velocity`, built: `${part}/depth` });
});

export const underdrains: Say = (ground, reader) => ground.results.underdrains.map((item, index) => tell(ground, reader, 'explain.underdrain', {
  part: `${partPath(ground, item.part)}/name`, inflow: `/results/underdrains/${index}/inflow`,
}));

export const pumps: Say = (ground, reader) => ground.results.pumps.map((item, index) => {
  const path = `/results/pumps/${index}`;
  return tell(ground, reader, 'explain.pump', {
    part: `${partPath(ground, item.part)}/name`, lift: `${path}/dutyAtOff/staticHead`, flow: `${path}/dutyAtOff/flow`, flowOn: `${path}/dutyAtOn/flow`, velocity: `${path}/dutyAtOff/velocity`,
  });
});

export const basins: Say = (ground, reader) => ground.results.basins.flatMap((item, index) => {
  const path = `/results/basins/${index}`;
  if (item.worstStartsPerHour === 0) return [];
  return [tell(ground, reader, 'explain.basin', {
    part: `${partPath(ground, item.part)}/name`, volume: `${path}/workingVolume`, starts: `${path}/worstStartsPerHour`, time: `${path}/aloneRunTime`,
  })];
});

export const outlets: Say = (ground, reader) => ground.results.outlets.flatMap((item, index) => {
  const path = `/results/outlets/${index}`;
  if (item.pitVolume === null) return [];
  return [tell(ground, reader, 'explain.pit', { part: `${partPath(ground, item.part)}/name`, pit: `${path}/pitVolume`, line: `${path}/lineVolume` })];
});

export const dryWells: Say = (ground, reader) => ground.results.dryWells.map((item, index) => {
  const path = `/results/dryWells/${index}`;
  const slots = { part: `${partPath(ground, item.part)}/name`, store: `${path}/store` };
  return item.emptyTime === null
    ? tell(ground, reader, 'explain.dryWellClosed', slots)
    : tell(ground, reader, 'explain.dryWell', { ...slots, soakage: `${path}/soakage`, time: `${path}/emptyTime` });
});

export const wellRuns: Say = (ground, reader) => ground.results.wells.map((item, index) => {
  const path = `/results/wells/${index}`;
  const slots = { part: `${partPath(ground, item.part)}/name`, years: `${path}/returnPeriod`, soaked: `${path}/soaked`, level: `${path}/highestLevel` };
  return item.overflowed > 0 ? tell(ground, reader, 'explain.wellOver', { ...slots, over: `${path}/overflowed` }) : tell(ground, reader, 'explain.well', slots);
});
