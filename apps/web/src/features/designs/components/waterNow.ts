import { createContext } from 'react';

/** Level of the water at the moment of the storm that the slider stands on [m]; null while nothing is computed. The plan draws it as the section does. */
export const WaterNow = createContext<number | null>(null);
