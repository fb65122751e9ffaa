/** Standard acceleration of free fall [m/s2]. Source: ISO 80000-3, conventional value. */
export const GRAVITY = 9.80665;

/** Density of water that drainage tables use: 62.4 lb/ft3 [kg/m3]. Source: common practice in US hydraulics. */
export const WATER_DENSITY = 999.552;

/** Kinematic viscosity of water at 20 C [m2/s]. Source: common handbook value, from memory. */
export const KINEMATIC_VISCOSITY = 1.0034e-6;

// Exact by definition of the international foot, the avoirdupois pound and the US gallon (231 in3).
export const FOOT = 0.3048;
export const INCH = 0.0254;
export const POUND = 0.45359237;
export const GALLON = 3.785411784e-3;
export const GALLON_PER_MINUTE = GALLON / 60;
export const CUBIC_FOOT = FOOT * FOOT * FOOT;
export const MINUTE = 60;
export const HOUR = 3600;
export const DAY = 86400;
