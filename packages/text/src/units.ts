/** SI value of one unit. Exact by the international inch (25.4 mm) and the US gallon (231 cubic inches). */
export const inch = 0.0254;
export const foot = 12 * inch;
export const gallon = 231 * inch ** 3;
export const gallonPerMinute = gallon / 60;
export const squareFoot = foot ** 2;
export const cubicYard = (3 * foot) ** 3;
export const litre = 0.001;
export const pound = 0.45359237;
export const poundForce = pound * 9.80665;
export const poundForcePerSquareFoot = 47.88025898033584;
export const inchPerHour = inch / 3600;
export const millimetrePerHour = 0.001 / 3600;
export const millimetresPerInch = 25.4;
