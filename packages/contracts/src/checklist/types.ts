import type { DesignDocument, Part, SlabCut } from '@yardfall/calc';
import type { EvidenceKind, Requirement, Signer } from '../checklists.ts';
import type { Cure } from './cure.ts';
import type { GroundLine } from './lines.ts';
import type { Trait } from './traits.ts';

export const itemGroups = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'I', 'J'] as const;
export type ItemGroup = (typeof itemGroups)[number];

export type Measure = Requirement['measures'][number];
export type TextParams = Readonly<Record<string, string | number>>;

/** What an item is about: the whole document, one part of the system, one cut of the slab, or one line that the design does not draw. */
export interface Subject {
  readonly document: DesignDocument;
  readonly part: Part | null;
  readonly cut: SlabCut | null;
  readonly line: GroundLine | null;
  /** Equal parts that are asked about in one step, two or more; none for any other subject. */
  readonly parts: readonly Part[];
}

/** One item for the job, for every cut of the slab, wherever concrete is poured, for the lines in the ground (one for those that are drawn, one for each other), or for every part of these kinds: one for each, or one for all of them together. */
export type Per = 'job' | 'slabCut' | 'pour' | 'line' | { readonly kinds: readonly Part['kind'][]; readonly together?: boolean };

/** The item applies when all of these hold for the build revision. */
export type Applies = readonly Trait[];

export interface ItemTemplate {
  readonly id: string;
  readonly group: ItemGroup;
  readonly applies: Applies;
  readonly per: Per;
  /** Leaves out parts of these kinds that the item says nothing about. */
  readonly concerns: (subject: Subject) => boolean;
  readonly holdPoint: string | null;
  readonly evidence: readonly EvidenceKind[];
  readonly minPhotos: number;
  /** How often these photos are taken: once for each joint, fitting, cap or line of the subject. */
  readonly pictures: (subject: Subject) => number;
  /**
   * Crew lead and owner sign by their own tick; electrician, homeowner and inspector sign on the phone,
   * which is asked for when `evidence` holds 'signature'.
   */
  readonly signers: readonly Signer[];
  /** How long before the guarded work a photo may have been taken [s]; null for no limit. */
  readonly freshFor: number | null;
  /** Figures that the sentences name, SI. */
  readonly params: TextParams;
  /** Which of the item's wordings names what this design has; null for the one that fits all. Kept in the requirement as `params.wording`. */
  readonly wording: (subject: Subject) => string | null;
  /** What this subject asks for otherwise: other evidence, other signers, a hold point that others have not. */
  readonly asks: (subject: Subject) => Partial<Pick<ItemTemplate, 'evidence' | 'signers' | 'holdPoint'>>;
  readonly measures: (subject: Subject) => readonly Measure[];
  /** Figures of this subject that the page reckons with, beside those of the sentences. */
  readonly figures: (subject: Subject) => TextParams;
  /** It is asked for again on each day of work, and after rain. */
  readonly daily: boolean;
  /** Not ticked before the customer's time to cancel is over. */
  readonly afterCancellation: boolean;
  /** How long what is glued cures before it bears pressure; null where nothing is. */
  readonly cure: (subject: Subject) => Cure | null;
  /** Serials and models that are written down; `evidence` gets 'text' where there are any. */
  readonly texts: (subject: Subject) => readonly string[];
}

type Given = Pick<ItemTemplate, 'id' | 'applies'> & Partial<Omit<ItemTemplate, 'id' | 'group' | 'applies'>> & { readonly photos?: number };

/** An item signed by the crew lead's tick, with as many photos as `photos` says. */
export function item(given: Given): ItemTemplate {
  const { photos = 0, ...rest } = given;
  const evidence = rest.evidence ?? (photos > 0 ? ['tick', 'photo'] : ['tick']);
  return {
    group: groupOf(rest.id), per: 'job', concerns: () => true, holdPoint: null, signers: ['crewLead'], freshFor: null, params: {}, wording: () => null, asks: () => ({}), measures: () => [], figures: () => ({}), daily: false, afterCancellation: false, cure: () => null, texts: () => [],
    ...rest, minPhotos: photos, evidence, pictures: rest.pictures ?? (() => 1),
  };
}

/** The group that an item stands in: the letter before its number or its name. */
export function groupOf(id: string): ItemGroup {
  const group = itemGroups.find((letter) => id.startsWith(letter));
  if (group === undefined) throw new RangeError(`item ${id} stands in no group`);
  return group;
}
