import type { DesignDocument, Part } from '@yardfall/calc';

/** Kinds of part that are laid in a trench, bedded and covered like a pipe. */
export const buriedLines: readonly Part['kind'][] = ['pipe', 'roofLine', 'underdrain', 'dischargeLine'];

/** What a design has, in the words that the "applies when" column uses. */
const tests = {
  always: () => true,
  digging: ({ construction, system }) => construction.trenches.length > 0 || construction.slabCuts.length > 0 || system.parts.some(isBuried),
  outletPermission: ({ system }) => system.parts.some((part) => part.kind === 'outlet' && asksPermission(part.questions)),
  pump: has('pump'),
  concrete: ({ construction }) => construction.slabCuts.length > 0,
  pumpOrConcrete: (document) => has('pump')(document) || document.construction.slabCuts.length > 0,
  slabAtHouse: (document) => slabAtHouse(document),
  electricsOrPool: ({ construction }) => construction.electrical !== null || construction.poolWithin3m,
  // A trench that reaches under the footing is referred and never built; near the house is a trench beside the foundation, or at a slab that meets the house.
  trenchNearHouse: (document) => document.construction.foundationWithin1ft || document.construction.trenchNearFooting || slabAtHouse(document),
  foundationNear: ({ construction }) => construction.foundationWithin1ft,
  channel: has('channel'),
  areaDrain: has('catchBasin'),
  oldDrain: ({ site }) => site.existingDrains.length > 0,
  basin: has('basin'),
  /** Parts in which soil and slurry stay behind. */
  flushable: ({ system }) => system.parts.some(({ kind }) => ['channel', 'catchBasin', 'basin', 'pipe', 'roofLine', 'underdrain', 'dischargeLine'].includes(kind)),
  roofTieIn: ({ system }) => system.parts.some((part) => part.kind === 'leader' || part.kind === 'roofLine'),
  gravityPipe: has('pipe'),
  /** Buried pipe that holds water when it is filled. */
  sealedLine: ({ system }) => system.parts.some(({ kind }) => kind === 'pipe' || kind === 'roofLine'),
  /** Pipe of any kind that lies in a trench. */
  buriedLine: ({ system }) => system.parts.some(({ kind }) => buriedLines.includes(kind)),
  cleanout: ({ system }) => system.parts.some((part) => part.kind === 'cleanout' || (part.kind === 'pipe' && part.cleanouts > 0)),
  highWater: ({ site, system }) =>
    site.soil.seasonalHighWaterTable === null || system.parts.some((part) => part.kind === 'basin' && part.floorLevel < (site.soil.seasonalHighWaterTable ?? -Infinity)),
  percolationPit: ({ system }) => system.parts.some((part) => part.kind === 'outlet' && part.pit !== null),
  emitter: ({ system }) => system.parts.some((part) => part.kind === 'outlet' && isEmitter(part.outletKind)),
  pumpOrOutletLine: ({ system }) => system.parts.some((part) => part.kind === 'dischargeLine' || part.kind === 'outlet'),
  curbOrDitchPermit: ({ system }) => system.parts.some((part) => part.kind === 'outlet' && isPublic(part.outletKind)),
  alarm: ({ construction }) => construction.electrical !== null && construction.electrical.alarm !== 'none',
  backup: ({ construction }) => construction.electrical !== null && construction.electrical.backup !== 'none',
} satisfies Record<string, (document: DesignDocument) => boolean>;

export type Trait = keyof typeof tests;

export function hasTrait(document: DesignDocument, trait: Trait): boolean {
  return tests[trait](document);
}

/** The document does not say which slab meets the house; a cut beside a trench at the footing or within a foot of it is taken to. */
function slabAtHouse({ construction, site }: DesignDocument): boolean {
  return construction.slabCuts.length > 0 && (construction.trenchNearFooting || construction.foundationWithin1ft || site.sills.length > 0);
}

function has(kind: Part['kind']) {
  return ({ system }: DesignDocument): boolean => system.parts.some((part) => part.kind === kind);
}

function isBuried({ kind }: Part): boolean {
  return ['pipe', 'roofLine', 'underdrain', 'basin', 'dischargeLine', 'catchBasin', 'channel', 'swale'].includes(kind);
}

type Questions = Extract<Part, { kind: 'outlet' }>['questions'];

function asksPermission(questions: Questions): boolean {
  return [questions.permissionHeld, questions.associationAgrees, questions.rightOfWayPermit].some((answer) => answer !== 'notApplicable');
}

type OutletKind = Extract<Part, { kind: 'outlet' }>['outletKind'];

export function isEmitter(kind: OutletKind): boolean {
  return kind === 'emitter' || kind === 'percolationTee';
}

/** Connections that an authority inspects. */
export function isPublic(kind: OutletKind): boolean {
  return kind === 'curb' || kind === 'ditch' || kind === 'stormConnection';
}
