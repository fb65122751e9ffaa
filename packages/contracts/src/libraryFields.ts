import type { Part } from '@yardfall/calc';
import type { LibraryContent } from './library.ts';

/**
 * Fields that a part takes over from an entry of the library; null when the entry does not fit the part.
 * Levels stay where the yard has them: a basin keeps its rim and gets its floor by its height.
 */
export function libraryFields(content: LibraryContent, name: string, part: Part): Readonly<Record<string, unknown>> | null {
  switch (content.kind) {
    case 'pump': return part.kind === 'pump' ? { curveName: name, curve: content.curve, solids: content.solids, minSubmergence: content.minSubmergence } : null;
    case 'channel': {
      if (part.kind !== 'channel') return null;
      const { width, depth, outletDiameter, surround, roughness } = content;
      return { width, bottomWidth: part.shape === 'rectangular' ? width : Math.min(part.bottomWidth, width), depth, outletDiameter, surround, roughness };
    }
    case 'pipe': return part.kind === 'pipe' ? { diameter: content.diameter, roughness: content.roughness, material: content.material, joints: content.joints } : null;
    case 'basin': {
      if (part.kind !== 'basin') return null;
      return { diameter: content.diameter, floorLevel: part.rimLevel - content.height, emptyMass: content.emptyMass, wall: content.wall, lidFixed: content.lidFixed };
    }
    case 'channelGrate': {
      if (part.kind !== 'channel') return null;
      const { openAreaRatio, slotWidth, locked, loadClass } = content;
      return { grate: { ...part.grate, openAreaRatio, slotWidth, locked, loadClass } };
    }
    case 'basinGrate': return part.kind === 'catchBasin' ? { gratePerimeter: content.gratePerimeter, grateOpenArea: content.grateOpenArea } : null;
  }
}

/** Fields in which a part differs from an entry, as the part has them and as the entry would make them. */
export function libraryDifferences(content: LibraryContent, name: string, part: Part): { readonly field: string; readonly before: unknown; readonly after: unknown }[] {
  const fields = libraryFields(content, name, part) ?? {};
  const own = part as unknown as Readonly<Record<string, unknown>>;
  return Object.entries(fields).flatMap(([field, after]) => (JSON.stringify(own[field]) === JSON.stringify(after) ? [] : [{ field, before: own[field], after }]));
}
