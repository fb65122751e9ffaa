import type { PartState } from '../display.ts';

export interface SectionOptions {
  /** Size of the picture on screen or paper [px]; the vertical exaggeration is chosen to fill it. */
  readonly width: number;
  readonly height: number;
  /** Low spot through which the section runs; null takes the one of the first sill. */
  readonly lowSpot: string | null;
  /** `house` zooms to the stretch from the sill to the basin, so that the door can be read. */
  readonly window: 'whole' | 'house';
  /** Leaves the middle of long runs out, with a break mark. */
  readonly breaks: boolean;
  /** `mini` has no texts and only the marks that a list row needs. */
  readonly detail: 'full' | 'mini';
  readonly scaleUnit: 'foot' | 'metre';
  /** Water surfaces to show [m]; null leaves that water out. */
  readonly water: { readonly pond: number | null; readonly basin: number | null };
  readonly states: Readonly<Record<string, PartState>>;
  readonly photos: readonly { readonly part: string; readonly number: number }[];
  readonly measured: readonly { readonly part: string; readonly level: number }[];
  /** Shows where a pipe without a pump would have to run out. */
  readonly gravity: boolean;
  /** Shows buried utilities that were located along the section. */
  readonly utilities: boolean;
}

export const defaultSectionOptions: SectionOptions = {
  width: 1440, height: 460, lowSpot: null, window: 'whole', breaks: true, detail: 'full', scaleUnit: 'foot',
  water: { pond: null, basin: null }, states: {}, photos: [], measured: [], gravity: true, utilities: true,
};
