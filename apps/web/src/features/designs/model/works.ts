import type { DesignDocument, Electrical, SlabCut, Trench } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';

const INCH = 0.0254;

/** 12 AWG copper, 10 A at 120 V over 60 ft: a start for the electrician's own figures (conductor resistance from memory of the code's table). */
export const startingElectrical: Electrical = {
  dedicatedCircuit: true, gfci: true, extensionCord: false, alarm: 'differentCircuit', backup: 'none', runLength: 18.288, current: 10, conductorResistance: 0.00521, voltage: 120,
  burial: null, receptacleLevel: null,
};

/** Cuts and trenches as the parts need them: channel strip 12 in wider than the channel, trenches to the lower invert with 2 in of bedding (common practice, no source). */
export function worksFor(document: DesignDocument): DraftOperation[] {
  const slabCuts: SlabCut[] = [];
  const trenches: Trench[] = [];
  const grade = document.site.soil.gradeLevel;
  for (const part of document.system.parts) {
    const trench = (length: number, width: number, depth: number) =>
      trenches.push({ id: `T${String(trenches.length + 1)}`, name: part.name, length, width, depth: Math.max(0, depth), soil: 'loam', part: part.id });
    if (part.kind === 'channel') slabCuts.push({ id: `X${String(slabCuts.length + 1)}`, name: part.name, length: part.length + 6 * INCH, width: part.width + 12 * INCH, thickness: 4 * INCH, reinforcement: 'mesh', part: part.id });
    if (part.kind === 'pipe') trench(part.length, 12 * INCH, grade - part.invertDown + 2 * INCH);
    if (part.kind === 'roofLine') trench(part.length, 8 * INCH, 16 * INCH);
    if (part.kind === 'basin') trench(part.diameter + 18 * INCH, part.diameter + 18 * INCH, grade - part.floorLevel + 5 * INCH);
    if (part.kind === 'dischargeLine') trench(part.length, 6 * INCH, part.coverMin + part.innerDiameter + INCH);
  }
  return [
    { kind: 'replace', path: ['construction', 'slabCuts'], value: slabCuts as never },
    { kind: 'replace', path: ['construction', 'trenches'], value: trenches as never },
  ];
}
