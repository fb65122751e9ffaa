import type { JobStage } from '@yardfall/contracts';
import type { JobHeading } from './jobSections.tsx';

/** What a reader comes for while a job stands at a stage; the other parts of the record wait closed under their headings. */
const current: Readonly<Record<JobStage, readonly JobHeading[]>> = {
  intake: ['site'], visit: ['site', 'levels'], design: ['design'], pricing: ['price'], offered: ['offer'], accepted: ['offer', 'permits'], released: ['locates', 'work'],
  installing: ['work'], proving: ['work', 'proof'], handedOver: ['handover'], referred: ['site'], declined: ['site'],
};

export function partsOpenAt(stage: JobStage, hash: string): ReadonlySet<string> {
  const asked = decodeURIComponent(hash.replace(/^#/, ''));
  return new Set(asked === '' ? current[stage] : [...current[stage], asked]);
}
