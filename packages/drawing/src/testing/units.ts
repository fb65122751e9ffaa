export const ft = (feet: number): number => feet * 0.3048;
export const inch = (inches: number): number => inches * 0.0254;
export const gpm = (gallons: number): number => (gallons * 0.003785411784) / 60;
