import { z } from 'zod';
import { Instant, text } from '../common.ts';
import type { Trait } from './traits.ts';
import { holdPointRules } from './guards.ts';
import { itemTemplates } from './templates.ts';
import { coldest } from './cure.ts';
import { fits, isWider, limited, OwnFigure } from './ownFigures.ts';
import { scaled } from './scaled.ts';
import { item, itemGroups, type ItemTemplate } from './types.ts';

/** Which jobs a step of the company's own is for. */
export const ownTraits = ['always', 'digging', 'concrete', 'channel', 'areaDrain', 'roofTieIn', 'gravityPipe', 'pump', 'emitter'] as const satisfies readonly Trait[];

const curing = z.number().min(60).max(14 * 86_400);

/** A built-in step as the company does it: other words for it, a sentence more, another number of photos, stricter or wider limits, the cure of its own cement, or not at all. */
export const WantedChange = z
  .strictObject({
    item: text(8, 2), leftOut: z.boolean(), what: text(200), adds: text(400),
    /** null leaves the built-in number. */
    photos: z.number().int().min(0).max(12).nullable(),
    /** How wide the limits of its figures are, as a share of the built-in ones: less than 1 is stricter. Absent or null leaves them. */
    limits: z.number().min(0.1).max(3).nullable().optional(),
    /** How long its joints cure by the label of the company's cement [s]: from 60 °F on, from 40 °F on, and colder. Absent or null leaves the built-in table. */
    cure: z.strictObject({ product: text(80, 2), warm: curing, cool: curing, cold: curing }).nullable().optional(),
    /** Limits of its own for single figures, stricter or wider. Absent or null leaves them. */
    figures: z.array(OwnFigure).max(8).nullable().optional(),
    why: text(500),
  })
  .meta({ id: 'WantedChange' });
export type WantedChange = z.infer<typeof WantedChange>;

/** A step of the company's own. Its id is the letter of its group and a name: `C.silt1`. */
export const OwnStep = z
  .strictObject({
    id: z.string().regex(/^[A-J]\.[a-z0-9]{1,12}$/), applies: z.enum(ownTraits), what: text(200, 3), acceptance: text(400, 3), photo: text(300),
    photos: z.number().int().min(0).max(12), whyCrew: text(400), whyHome: text(400),
  })
  .meta({ id: 'OwnStep' });
export type OwnStep = z.infer<typeof OwnStep>;

const stamp = { by: text(120), at: Instant };
export const CompanyChecklist = z.strictObject({ changes: z.array(WantedChange.extend(stamp)).max(80), own: z.array(OwnStep).max(60) }).meta({ id: 'CompanyChecklist' });
export type CompanyChecklist = z.infer<typeof CompanyChecklist>;
/** As it is asked for: who and when are the office's to say. */
export const WantedChecklist = z.strictObject({ changes: z.array(WantedChange).max(80), own: z.array(OwnStep).max(60) }).meta({ id: 'WantedChecklist' });
export type WantedChecklist = z.infer<typeof WantedChecklist>;

const proofs = new Set(holdPointRules.flatMap(({ items }) => items));
const guarded = new Set(holdPointRules.flatMap(({ guards }) => guards));
const cured = new Set(holdPointRules.filter(({ id }) => id === 'HP-cure').flatMap(({ items }) => items));
const byId = new Map(itemTemplates.map((template) => [template.id, template]));

/** A step whose proof opens a hold point, or which waits for one, is never left out: with it the hold point would be gone. One job's exception is the owner's waiver. */
export function mayLeaveOut(id: string): boolean {
  return byId.has(id) && !proofs.has(id) && !guarded.has(id);
}

/** What the proof of a hold point is called is not the company's to change; a sentence may be added to it. */
export function mayReword(id: string): boolean {
  return byId.has(id) && !proofs.has(id);
}

type Asked = Pick<WantedChange, 'item' | 'leftOut' | 'photos' | 'limits' | 'cure' | 'figures'>;

/** Fewer photos or wider limits than are built in at the proof of a hold point, another cure, or a step left out that keeps people from harm: only an owner may, by name and with a reason. Stricter is free. */
export function isWeaker(change: Asked): boolean {
  return hasFewerPhotos(change) || hasWiderLimits(change) || hasOwnCure(change) || leavesOutCare(change);
}

export function hasFewerPhotos({ item: id, photos }: Asked): boolean {
  return proofs.has(id) && photos !== null && photos < (byId.get(id)?.minPhotos ?? 0);
}

function hasOwnCure({ item: id, cure = null }: Asked): boolean {
  return mayCure(id) && cure !== null;
}

function hasWiderLimits({ item: id, limits = null, figures = null }: Asked): boolean {
  return proofs.has(id) && ((limits !== null && limits > 1) || (figures ?? []).some((own) => isWider(id, own)));
}

/** Steps without which somebody can come to harm, though no other work waits for them: the contract, the owner's own lines, the fence around the pit, power in the cut zone, the alarm, the backup. Ours. */
const harm = new Set(['A1', 'A3', 'B7', 'B8', 'H2', 'H3']);

function leavesOutCare({ item: id, leftOut }: Asked): boolean {
  return leftOut && harm.has(id);
}

/** Steps of which a cement's label says when they bear pressure. */
export function mayCure(id: string): boolean {
  return cured.has(id);
}

/** Whether a step has figures with limits: nothing else of it can be made wider or stricter. */
export function hasLimits(id: string): boolean {
  return byId.get(id)?.evidence.includes('value') ?? false;
}

/** How short a reason for something weaker may be. */
export const leastReason = 10;

export type RuleFault = 'unknown' | 'limitUnfit' | 'twice' | 'leavesOutHoldPoint' | 'rewordsHoldPoint' | 'weakerWithoutReason';

/** The first thing in a company's rules that cannot stand, with the step; null when all can. */
export function ruleFault({ changes, own }: WantedChecklist): { readonly item: string; readonly fault: RuleFault } | null {
  for (const change of changes) {
    const { item: id } = change;
    if (!byId.has(id)) return { item: id, fault: 'unknown' };
    if (change.leftOut && !mayLeaveOut(id)) return { item: id, fault: 'leavesOutHoldPoint' };
    if (change.what !== '' && !mayReword(id)) return { item: id, fault: 'rewordsHoldPoint' };
    if ((change.figures ?? []).some((own) => !fits(id, own))) return { item: id, fault: 'limitUnfit' };
    if (isWeaker(change) && change.why.trim().length < leastReason) return { item: id, fault: 'weakerWithoutReason' };
  }
  const ids = [...changes.map(({ item: id }) => id), ...own.map(({ id }) => id)];
  const twice = ids.find((id, at) => ids.indexOf(id) !== at);
  return twice === undefined ? null : { item: twice, fault: 'twice' };
}

/** The steps as this company does them, in the order of the work; its own come last in their group. */
export function templatesOf({ changes, own }: CompanyChecklist): readonly ItemTemplate[] {
  const change = new Map(changes.map((one) => [one.item, one]));
  const glue = changes.find(({ item: id, cure = null }) => mayCure(id) && cure !== null);
  const kept = itemTemplates.map((template) => withCement(template, glue)).flatMap((template) => {
    const asked = change.get(template.id);
    return asked === undefined ? [template] : asked.leftOut && mayLeaveOut(template.id) ? [] : [changed(template, asked)];
  });
  const added = own.map(ownTemplate);
  return itemGroups.flatMap((group) => [...kept, ...added].filter((template) => template.group === group));
}

/** One cement is used for riser and line: what its label says of one holds for both. Colder never cures faster. */
function withCement(template: ItemTemplate, change: CompanyChecklist['changes'][number] | undefined): ItemTemplate {
  if (change === undefined || !mayCure(template.id)) return template;
  const { cure = null, why, by } = change;
  if (cure === null) return template;
  const [warm, cool] = [cure.warm, Math.max(cure.warm, cure.cool)];
  const waits = [{ from: 60, wait: warm }, { from: 40, wait: cool }, { from: coldest, wait: Math.max(cool, cure.cold) }];
  return { ...template, cure: () => waits, params: { ...template.params, ownCement: cure.product, weaker: why, weakerBy: by } };
}

function changed(template: ItemTemplate, change: CompanyChecklist['changes'][number]): ItemTemplate {
  const { photos, what, adds, limits = null, figures = null, why, by } = change;
  const minPhotos = photos ?? template.minPhotos;
  const others = template.evidence.filter((kind) => kind !== 'photo');
  return {
    ...template, minPhotos, measures: (subject) => template.measures(subject).map((measure) => limited(limits === null ? measure : scaled(measure, limits), figures ?? [])), evidence: minPhotos === 0 ? others : template.evidence.includes('photo') ? template.evidence : [...others, 'photo'],
    params: {
      ...template.params, ...(what !== '' && mayReword(template.id) ? { ownWhat: what } : {}), ...(adds === '' ? {} : { ownAdds: adds }),
      ...(limits === null ? {} : { ownLimits: limits }),
      ...(isWeaker(change) ? { weaker: why, weakerBy: by, ...(hasFewerPhotos(change) ? { builtInPhotos: template.minPhotos } : {}) } : {}),
    },
  };
}

function ownTemplate({ id, applies, what, acceptance, photo, photos, whyCrew, whyHome }: OwnStep): ItemTemplate {
  return item({ id, applies: [applies], photos, params: { ownWhat: what, ownAcceptance: acceptance, ownPhoto: photo, ownWhyCrew: whyCrew, ownWhyHome: whyHome } });
}
