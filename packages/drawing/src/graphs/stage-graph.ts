import type { DesignDocument, LowSpot, StageArea } from '@yardfall/calc';
import type { DisplayList, Point } from '../display.ts';
import { label } from '../labels.ts';
import { GraphPen, roundStep, ticks } from './axis.ts';

export interface StageGraphOptions {
  readonly width: number;
  readonly height: number;
  readonly volumeUnit: number;
}

const defaults: StageGraphOptions = { width: 360, height: 240, volumeUnit: 0.003785411784 };

/** Volume below each typed level: the frustum rule between neighboring areas. */
export function stageVolumes(stageArea: readonly StageArea[]): { level: number; area: number; volume: number }[] {
  let volume = 0;
  return stageArea.map(({ level, area }, index) => {
    const before = stageArea[index - 1];
    if (before !== undefined) volume += ((level - before.level) / 3) * (area + before.area + Math.sqrt(area * before.area));
    return { level, area, volume };
  });
}

/** Water that the low spot holds below each level; x in m3, y in metres. */
export function stageGraph(document: DesignDocument, spot: LowSpot, given: Partial<StageGraphOptions> = {}): DisplayList {
  const options = { ...defaults, ...given };
  const pen = new GraphPen();
  const rows = stageVolumes(spot.stageArea);
  const most = Math.max(...rows.map(({ volume }) => volume), 1e-3) * 1.05;
  const low = rows[0]?.level ?? spot.rimLevel;
  const sill = document.site.sills.find(({ lowSpot }) => lowSpot === spot.id);
  const top = Math.max(spot.rimLevel, sill?.level ?? spot.rimLevel, ...rows.map(({ level }) => level), low + 0.01);
  const step = roundStep(most / options.volumeUnit, 4) * options.volumeUnit;
  const ground = low - (top - low) * 0.04;
  for (const volume of ticks(0, most, step)) {
    pen.line('ink', [[volume, ground], [volume, top]], 'hair');
    pen.text('faint', [volume, ground], label('drawing.value.volume', { value: volume }), 'below', 1, false);
  }
  pen.line('ink', [[0, top], [0, ground], [most, ground]], 'thin');
  pen.line('water', rows.map(({ volume, level }): Point => [volume, level]), 'bold', 'solid', spot.id);
  if (sill !== undefined) {
    pen.line('sill', [[0, sill.level], [most, sill.level]], 'normal', 'chain', sill.id);
    pen.text('sill', [most * 0.5, sill.level], label('drawing.sill', { name: sill.name, level: sill.level }), 'below', 0);
  }
  pen.line('ground', [[0, spot.rimLevel], [most, spot.rimLevel]], 'thin', 'dash', spot.id);
  pen.text('ground', [most * 0.2, spot.rimLevel], label('drawing.rim', { level: spot.rimLevel }), 'above', 1);
  const across = 14 * (most / Math.max(options.width - 40, 1));
  const up = (top - ground) / (options.height - 56);
  return {
    name: 'stage', extent: { x0: -across * 1.8, x1: most + across, y0: ground - up * 28, y1: top + up * 28 },
    exaggeration: null, breaks: [], items: pen.items, hits: [], handles: [],
  };
}
