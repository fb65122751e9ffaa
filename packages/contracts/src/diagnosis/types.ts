/** What was answered at one step: what was picked, and measured figures in SI by name. */
export interface StepAnswer {
  readonly picks: readonly string[];
  readonly figures: Readonly<Record<string, number>>;
}

export const stepFamilies = ['first', 'leak', 'surface', 'ground', 'pipe', 'before', 'limits'] as const;
export type StepFamily = (typeof stepFamilies)[number];

/** Where a step could hurt someone. */
export type StepCaution = 'electricity' | 'pit' | 'caveIn' | 'sewage' | 'firstOneCall' | 'privateLines' | 'drillDust' | 'slab' | 'oldPipe';

/** Holds when the step was answered with one of these outcomes. */
export interface When<S extends string = string> {
  readonly step: S;
  readonly is: readonly string[];
}

/** A figure that makes an outcome of its own: `below` leaves the limit out, `from` takes it in. SI. */
export interface Outcome {
  readonly outcome: string;
  readonly figure: string;
  readonly below?: number;
  readonly from?: number;
}

/** What is timed, counted or measured at a step; the page opens the tool for it. */
export type StepTool = 'hose' | 'drain' | 'percolation' | 'waterHole' | 'slabHoles' | 'gutters' | 'camera' | 'outline';

export interface DiagnosisStep {
  readonly id: string;
  readonly family: StepFamily;
  /** `one`: exactly one pick; `signs`: any number, at least one; `tool`: figures, with picks where the tool has them. */
  readonly kind: 'one' | 'signs' | 'tool';
  readonly picks: readonly string[];
  /** The pick that means none of the others. */
  readonly none?: string;
  readonly tool?: StepTool;
  readonly outcomes?: readonly Outcome[];
  /** Asked when one of these holds; always when there are none. */
  readonly when: readonly When[];
  readonly cautions: readonly StepCaution[];
}

export interface Cause {
  readonly id: string;
  /** One of these makes it a suspect. */
  readonly signs: readonly When[];
  /** One of these proves it. */
  readonly proofs: readonly When[];
  /** One of these clears it. */
  readonly clears: readonly When[];
}

/** `stop`: nothing is designed here; `decline`: say no in writing; `along`: go on, with somebody else for a part. */
export type ReferWeight = 'stop' | 'decline' | 'along';

export interface Referral {
  readonly id: string;
  readonly weight: ReferWeight;
  readonly when: readonly When[];
  readonly call: readonly Callee[];
  /** The observation of the survey that says the same to the design and to the referral letter. */
  readonly observation: string | null;
}

export const callees = ['plumber', 'irrigation', 'poolFirm', 'airConditioning', 'engineer', 'scanner', 'civil', 'authority', 'utility', 'health', 'electrician', 'floodplain', 'nobody'] as const;
export type Callee = (typeof callees)[number];
