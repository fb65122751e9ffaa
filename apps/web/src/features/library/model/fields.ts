import type { LibraryContent, LibraryKind } from '@yardfall/contracts';
import type { UnitKind } from './units.ts';

/** How a figure of an entry is typed and written in a file. */
export type EntryField =
  | { readonly name: string; readonly kind: Exclude<UnitKind, 'flow' | 'head'>; readonly optional?: true }
  | { readonly name: string; readonly kind: 'share' | 'number' | 'yesNo' | 'curve' }
  | { readonly name: string; readonly kind: 'choice'; readonly choices: readonly string[] };

/** Figures of each kind besides name and source, in the order in which they are asked. */
export const entryFields: Readonly<Record<LibraryKind, readonly EntryField[]>> = {
  pump: [{ name: 'curve', kind: 'curve' }, { name: 'solids', kind: 'length' }, { name: 'minSubmergence', kind: 'length' }],
  channel: [{ name: 'width', kind: 'length' }, { name: 'depth', kind: 'length' }, { name: 'outletDiameter', kind: 'length', optional: true }, { name: 'surround', kind: 'length' }, { name: 'roughness', kind: 'number' }],
  pipe: [
    { name: 'diameter', kind: 'length' }, { name: 'roughness', kind: 'number' }, { name: 'material', kind: 'choice', choices: ['smoothSolid', 'corrugatedSolid', 'perforated'] },
    { name: 'joints', kind: 'choice', choices: ['glued', 'gasketed', 'pushFit'] },
  ],
  basin: [{ name: 'diameter', kind: 'length' }, { name: 'height', kind: 'length' }, { name: 'emptyMass', kind: 'mass' }, { name: 'wall', kind: 'choice', choices: ['solid', 'perforated'] }, { name: 'lidFixed', kind: 'yesNo' }],
  channelGrate: [{ name: 'openAreaRatio', kind: 'share' }, { name: 'slotWidth', kind: 'length' }, { name: 'locked', kind: 'yesNo' }, { name: 'loadClass', kind: 'choice', choices: ['foot', 'car', 'truck'] }],
  basinGrate: [{ name: 'gratePerimeter', kind: 'length' }, { name: 'grateOpenArea', kind: 'area' }],
};

const inch = 0.0254;
/** A start for each kind: plain sizes of the trade, to be set right by the datasheet. */
export const startContent: Readonly<Record<LibraryKind, LibraryContent>> = {
  pump: { kind: 'pump', curve: [], solids: inch / 2, minSubmergence: 4 * inch },
  channel: { kind: 'channel', width: 4 * inch, depth: 5 * inch, outletDiameter: 4 * inch, surround: 4 * inch, roughness: 0.011 },
  pipe: { kind: 'pipe', diameter: 4 * inch, roughness: 0.011, material: 'smoothSolid', joints: 'glued' },
  basin: { kind: 'basin', diameter: 24 * inch, height: 36 * inch, emptyMass: 20, wall: 'solid', lidFixed: true },
  channelGrate: { kind: 'channelGrate', openAreaRatio: 0.4, slotWidth: inch / 4, locked: true, loadClass: 'foot' },
  basinGrate: { kind: 'basinGrate', gratePerimeter: 48 * inch, grateOpenArea: 50 * inch * inch },
};

/** A figure of an entry by its name. */
export const figureOf = (content: LibraryContent, name: string): unknown => (content as unknown as Readonly<Record<string, unknown>>)[name];
export const withFigure = (content: LibraryContent, name: string, value: unknown): LibraryContent => ({ ...content, [name]: value }) as LibraryContent;
