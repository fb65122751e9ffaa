/** Who must be called for what was seen, and what to keep away from until they have answered (common practice; the trade's list). */
interface Advice {
  readonly to: readonly string[];
  readonly cautions: readonly string[];
}

const structure: Advice = { to: ['jobs.referral.to.engineer'], cautions: ['jobs.referral.caution.keepAway', 'jobs.referral.caution.noLoad', 'jobs.referral.caution.noDigging'] };
const publicWater: Advice = { to: ['jobs.referral.to.authority'], cautions: ['jobs.referral.caution.noDigging'] };

const advice: Readonly<Record<string, Advice>> = {
  retainingWallOver4ft: structure,
  leaningWall: structure,
  slabOffset: structure,
  voidUnderSlab: structure,
  movingFooting: structure,
  postTensionSlab: { to: ['jobs.referral.to.engineerAndScan'], cautions: ['jobs.referral.caution.noCutting'] },
  publicPipe: publicWater,
  sewage: { to: ['jobs.referral.to.plumber'], cautions: ['jobs.referral.caution.noWater'] },
  waterOnDryDays: { to: ['jobs.referral.to.leakTest'], cautions: [] },
  externalFlood: { to: ['jobs.referral.to.floodplain'], cautions: ['jobs.referral.caution.noWater'] },
  neighbourFill: { to: ['jobs.referral.to.civil'], cautions: [] },
  lotLineDispute: { to: ['jobs.referral.to.civil'], cautions: [] },
  septicNear: { to: ['jobs.referral.to.health'], cautions: ['jobs.referral.caution.noDigging'] },
  wetland: { to: ['jobs.referral.to.civil'], cautions: ['jobs.referral.caution.noDigging'] },
};

export interface Observed {
  readonly kind: string;
  readonly note: string;
}

/** The letter's three lists as codes of texts; each adviser and caution once, in the order in which they were called for. */
export function letterOf(observations: readonly Observed[]): { observations: { code: string; note: string }[]; referTo: string[]; cautions: string[] } {
  const known = uniqueOf(observations.filter(({ kind }) => Object.hasOwn(advice, kind)));
  const collect = (pick: keyof Advice) => [...new Set(known.flatMap(({ kind }) => advice[kind]?.[pick] ?? []))];
  return {
    observations: known.map(({ kind, note }) => ({ code: `jobs.referral.observed.${kind}`, note })),
    referTo: collect('to'),
    cautions: collect('cautions'),
  };
}

function uniqueOf(list: readonly Observed[]): Observed[] {
  return [...new Map(list.map((item) => [`${item.kind} ${item.note}`, item])).values()];
}
