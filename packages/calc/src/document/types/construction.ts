// How it is built: cuts, trenches, power and what stands near.

export interface Construction {
  readonly slabCuts: readonly SlabCut[];
  readonly trenches: readonly Trench[];
  readonly electrical: Electrical | null;
  readonly restoration: { readonly sodArea: number; readonly paverArea: number };
  readonly treesNear: boolean;
  readonly poolWithin3m: boolean;
  readonly trenchNearFooting: boolean;
  readonly foundationWithin1ft: boolean;
}

export interface SlabCut {
  readonly id: string;
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly reinforcement: 'none' | 'mesh' | 'bar';
  readonly part: string;
}

export interface Trench {
  readonly id: string;
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly depth: number;
  readonly soil: 'sand' | 'loam' | 'clay';
  readonly part: string;
}

export interface Electrical {
  readonly dedicatedCircuit: boolean;
  readonly gfci: boolean;
  readonly extensionCord: boolean;
  readonly alarm: 'differentCircuit' | 'sameCircuitBattery' | 'none';
  readonly backup: 'none' | 'battery' | 'secondPump' | 'generatorInlet';
  readonly runLength: number;
  readonly current: number;
  /** Conductor resistance [ohm/m]. */
  readonly conductorResistance: number;
  readonly voltage: number;
  /** How the cable is buried and how deep [m]; null when not told. */
  readonly burial: { readonly method: 'direct' | 'conduit' | 'gfciCable'; readonly depth: number } | null;
  /** Level of the receptacle or junction that feeds the pump; null when not told. */
  readonly receptacleLevel: number | null;
}
