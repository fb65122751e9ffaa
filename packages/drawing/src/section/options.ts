import type { PartState } from '../display.ts';

export interface PaperScale {
  readonly across: number;
  readonly up: number;
  /** Lowest and highest level of the frame, so that two sections share one; the section's own where none is given. */
  readonly levels?: { readonly low: number; readonly high: number };
}

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
  /** Metres of one pixel, across and up, for a sheet of paper; null chooses them so that the picture is filled. Breaks are left to the sheets. */
  readonly scale: PaperScale | null;
  /** Water surfaces to show [m]; null leaves that water out. */
  readonly water: { readonly pond: number | null; readonly basin: number | null };
  readonly states: Readonly<Record<string, PartState>>;
  readonly photos: readonly { readonly part: string; readonly number: number }[];
  /** Photos by their place: a station and a level [m], or else the part. */
  readonly pins: readonly { readonly id: string; readonly part: string | null; readonly point: { readonly station: number; readonly level: number } | null }[];
  readonly measured: readonly { readonly part: string; readonly level: number }[];
  /** Shows where a pipe without a pump would have to run out. */
  readonly gravity: boolean;
  /** Shows buried utilities that were located along the section. */
  readonly utilities: boolean;
}

export const defaultSectionOptions: SectionOptions = {
  width: 1440, height: 460, lowSpot: null, window: 'whole', breaks: true, detail: 'full', scaleUnit: 'foot', scale: null,
  water: { pond: null, basin: null }, states: {}, photos: [], pins: [], measured: [], gravity: true, utilities: true,
};
