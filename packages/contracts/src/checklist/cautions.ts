/** Hazards of the work, with the rule in short and its source in the text package: `safety.<hazard>` and `safety.<hazard>.source`. */
export const hazards = [
  'caveIn', 'silica', 'confinedSpace', 'electricity', 'lifting', 'concreteBurn', 'heat', 'noise', 'gasStrike', 'ladder', 'engine', 'insideSlab', 'drillDust', 'solvent', 'oldPipe', 'battery',
  'drum', 'pitBySlab', 'people', 'foulWater', 'storm',
] as const;
export type Hazard = (typeof hazards)[number];

/** What can hurt at each item, the worst first: told when the item is opened, and nowhere else. */
const hazardsOf: Readonly<Record<string, readonly Hazard[]>> = {
  A5: ['lifting'], A6: ['heat', 'storm'],
  B2: [], B5: ['insideSlab', 'drillDust'], B6: ['insideSlab'], B7: ['people'], B8: ['electricity'],
  C1: ['insideSlab', 'silica', 'noise', 'engine'], C2: ['lifting', 'noise', 'silica'], C3: ['gasStrike', 'oldPipe'], C4: ['caveIn', 'gasStrike'], C5: ['caveIn', 'people', 'storm'], C6: ['gasStrike', 'caveIn', 'pitBySlab', 'people'], C7: ['pitBySlab', 'caveIn'],
  D1: ['concreteBurn'], D2: ['lifting'], D3: ['solvent'], D7: ['ladder', 'solvent'],
  E1: ['caveIn'], E3: ['solvent'], E5: ['caveIn'], E6: ['noise'],
  F1: ['confinedSpace', 'lifting'], F2: ['confinedSpace', 'concreteBurn', 'lifting'], F4: ['solvent'], F5: ['noise'], F7: ['confinedSpace', 'electricity'], F8: ['confinedSpace'],
  G1: ['gasStrike', 'solvent', 'caveIn', 'storm'], G3: ['electricity'], G4: ['gasStrike', 'caveIn', 'storm'], G6: ['people'], G7: ['noise'],
  H1: ['electricity'], H2: ['electricity', 'battery'], H3: ['battery', 'engine'],
  I1: ['drillDust', 'noise'], I3: ['concreteBurn', 'lifting', 'heat'], I7: ['foulWater', 'confinedSpace'],
  J1: ['confinedSpace', 'electricity'], J2: ['confinedSpace', 'electricity'], J5: ['drum'],
};

export function hazardsAt(template: string): readonly Hazard[] {
  return hazardsOf[template] ?? [];
}
