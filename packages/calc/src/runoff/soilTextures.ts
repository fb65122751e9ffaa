import { HOUR } from '../common/constants.ts';
import type { SoilTexture } from './soilGroup.ts';

export interface TextureSoil {
  readonly porosity: number;
  readonly effectivePorosity: number;
  /** Suction at the wetting front [m]. */
  readonly suction: number;
  /** Saturated conductivity [m/s]. */
  readonly conductivity: number;
}

const CM = 0.01;

function soil(porosity: number, effectivePorosity: number, suctionCm: number, cmPerHour: number): TextureSoil {
  return { porosity, effectivePorosity, suction: suctionCm * CM, conductivity: (cmPerHour * CM) / HOUR };
}

/**
 * Green-Ampt values of the eleven soil textures.
 *
 * Limits: class means with a wide spread: screening only. The effective porosity of clay loam is printed 0.309 and is probably 0.390.
 * Source: Rawls, Brakensiek and Miller 1983, J. Hydraulic Engineering 109, 62-70, table 2
 * Checked against: fixtures/runoff/greenAmptTextures.csv, every number
 */
export const soilTextures: Readonly<Record<SoilTexture, TextureSoil>> = {
  sand: soil(0.437, 0.417, 4.95, 11.78),
  loamySand: soil(0.437, 0.401, 6.13, 2.99),
  sandyLoam: soil(0.453, 0.412, 11.01, 1.09),
  loam: soil(0.463, 0.434, 8.89, 0.34),
  siltLoam: soil(0.501, 0.486, 16.68, 0.65),
  sandyClayLoam: soil(0.398, 0.330, 21.85, 0.15),
  clayLoam: soil(0.464, 0.309, 20.88, 0.1),
  siltyClayLoam: soil(0.471, 0.432, 27.3, 0.1),
  sandyClay: soil(0.430, 0.321, 23.9, 0.06),
  siltyClay: soil(0.479, 0.423, 29.22, 0.05),
  clay: soil(0.475, 0.385, 31.63, 0.03),
};
