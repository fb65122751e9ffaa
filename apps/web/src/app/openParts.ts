import type { JobStage, Role } from '@yardfall/contracts';
import type { JobHeading } from './jobSections.tsx';

/** What a reader comes for while a job stands at a stage; the other parts of the record wait closed under their headings. */
const current: Readonly<Record<JobStage, readonly JobHeading[]>> = {
  intake: ['site'], visit: ['site', 'levels'], design: ['design'], pricing: ['price'], offered: ['offer'], accepted: ['offer', 'permits'], released: ['locates', 'work'],
  installing: ['work'], proving: ['work', 'proof'], handedOver: ['handover'], referred: ['site'], declined: ['site'],
};

/** While the job is in the ground, whoever only digs comes for the list, and for the proof when it is due. */
const ofCrew: Partial<Record<JobStage, readonly JobHeading[]>> = { released: ['work'], installing: ['work'], proving: ['proof', 'work'] };

export interface Opened {
  /** Headings in the order of the page: what this reader came for, then the rest of the record. */
  readonly order: readonly JobHeading[];
  readonly open: ReadonlySet<string>;
}

export function partsOpenAt(stage: JobStage, hash: string, roles: readonly Role[], all: readonly JobHeading[]): Opened {
  const asked = decodeURIComponent(hash.replace(/^#/, ''));
  const digs = roles.every((role) => role === 'crew') ? ofCrew[stage] : undefined;
  const first = digs ?? [];
  const open = digs ?? current[stage];
  return { order: [...first, ...all.filter((id) => !first.includes(id))], open: new Set(asked === '' ? open : [...open, asked]) };
}
