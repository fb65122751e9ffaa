import type { DesignDocument } from '@yardfall/calc';
import type { Requirement } from '../checklists.ts';
import { canonicalBytes, sha256Hex } from '../document/canonical.ts';
import { holdPointRules } from './guards.ts';
import type { Ground } from './lines.ts';
import { subjectsOf } from './subjects.ts';
import { itemTemplates } from './templates.ts';
import { hasTrait } from './traits.ts';
import type { ItemGroup, ItemTemplate, Subject, TextParams } from './types.ts';
import { rulesVersion } from './version.ts';

/** An item of the checklist of one design document. The key is stable by template and part: `A1`, `D4:CH1`. */
export interface BuiltItem {
  readonly key: string;
  readonly template: string;
  readonly group: ItemGroup;
  readonly part: string | null;
  readonly position: number;
  readonly holdPoint: string | null;
  /** Hold points that guard this item. */
  readonly guards: readonly string[];
  readonly requirement: Requirement;
  readonly requirementBytes: Uint8Array<ArrayBuffer>;
  readonly requirementHash: string;
}

/** What the list takes from the property and the contract. */
export interface Place {
  readonly timeZone: string;
  /** The moment at which the customer's time to cancel ends; null where nothing was accepted. */
  readonly cancelUntil: string | null;
}

const anyPlace: Place = { timeZone: 'UTC', cancelUntil: null };

/**
 * @param templates the steps as the company does them; the built-in ones where it has no rules of its own
 * @param ground lines that the design does not draw
 */
export async function buildChecklist(document: DesignDocument, templates: readonly ItemTemplate[] = itemTemplates, ground: Ground = [], place: Place = anyPlace): Promise<readonly BuiltItem[]> {
  const wanted = templates
    .filter((template) => template.applies.every((trait) => hasTrait(document, trait)))
    .flatMap((template) => subjectsOf(template, document, ground).map((subject) => ({ template, subject })));
  return Promise.all(wanted.map(({ template, subject }, position) => build(template, subject, position, place)));
}

async function build(template: ItemTemplate, subject: Subject, position: number, place: Place): Promise<BuiltItem> {
  const { evidence, signers, holdPoint } = { ...template, ...template.asks(subject) };
  const wording = template.wording(subject);
  const texts = template.texts(subject);
  const about = subject.part?.id ?? subject.cut?.id ?? subject.line?.id ?? null;
  const requirement: Requirement = {
    template: template.id,
    rules: rulesVersion,
    part: subject.part?.id ?? subject.cut?.id ?? null,
    evidence: texts.length > 0 && !evidence.includes('text') ? [...evidence, 'text'] : [...evidence],
    signers: [...signers],
    minPhotos: template.minPhotos * picturesOf(template, subject),
    measures: template.measures(subject).map((measure) => ({ ...measure })),
    params: { ...template.params, ...builtInPhotos(template, subject), ...partNames(subject), ...template.figures(subject), ...(wording === null ? {} : { wording }) },
    freshFor: template.freshFor,
    ...timesOf(template, subject, place),
    ...(texts.length > 0 ? { texts: [...texts] } : {}),
  };
  const requirementBytes = canonicalBytes(requirement);
  return {
    key: about === null ? template.id : `${template.id}:${about}`,
    template: template.id, group: template.group, part: subject.cut?.part ?? subject.part?.id ?? null, position, holdPoint,
    guards: holdPointRules.filter((rule) => rule.guards.includes(template.id)).map((rule) => rule.id),
    requirement, requirementBytes, requirementHash: await sha256Hex(requirementBytes),
  };
}

/** Days, cures and the moment before which it is not ticked; nothing for a step that knows none. */
function timesOf({ daily, afterCancellation, cure }: ItemTemplate, subject: Subject, { timeZone, cancelUntil }: Place): Pick<Requirement, 'daily' | 'cure' | 'tickFrom'> {
  const glued = cure(subject);
  return {
    ...(daily ? { daily: timeZone } : {}), ...(glued === null ? {} : { cure: glued.map((row) => ({ ...row })) }),
    ...(afterCancellation && cancelUntil !== null ? { tickFrom: cancelUntil } : {}),
  };
}

/** Parts that are asked about together are seen each by itself. */
function picturesOf({ pictures }: ItemTemplate, subject: Subject): number {
  const each = subject.parts.length > 0 ? subject.parts.map((part) => ({ ...subject, part, parts: [] })) : [subject];
  return each.reduce((sum, one) => sum + Math.max(pictures(one), 1), 0);
}

function partNames({ parts }: Subject): TextParams {
  return Object.fromEntries(parts.map(({ id, name }) => [`at:${id}`, name]));
}

/** A company that asks for fewer photos does so at each. */
function builtInPhotos(template: ItemTemplate, subject: Subject): TextParams {
  const { builtInPhotos: base } = template.params;
  return typeof base === 'number' ? { builtInPhotos: base * picturesOf(template, subject) } : {};
}
