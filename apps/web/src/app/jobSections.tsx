import type { Job, Permission } from '@yardfall/contracts';
import type { MessageCode } from '@yardfall/text';
import { lazy, type ComponentType } from 'react';

export interface JobSectionProps {
  readonly job: Job;
  /** Version of the job for If-Match. */
  readonly etag: string | null;
}

export const jobHeadings = ['site', 'levels', 'rain', 'design', 'price', 'offer', 'permits', 'locates', 'work', 'proof', 'handover', 'trail'] as const;
export type JobHeading = (typeof jobHeadings)[number];

export interface JobSection {
  readonly permission: Permission;
  readonly Body: ComponentType<JobSectionProps>;
}

export function headingCode(id: JobHeading): MessageCode {
  return `jobs.heading.${id}`;
}

/** The drawing at the top of every job page. */
export const SectionOnTop: ComponentType<JobSectionProps> | null = lazy(() => import('./sections/SectionOnTop.tsx').then((f) => ({ default: f.SectionOnTop })));

/**
 * One line for each heading of the job page, in the order of `jobHeadings`. The body of each is exported by its feature:
 * `proof: { permission: 'proof.read', Body: lazy(() => import('../features/proof/index.ts').then((f) => ({ default: f.ProofSection }))) },`
 */
export const jobSections: Partial<Record<JobHeading, JobSection>> = {
  site: { permission: 'jobs.read', Body: lazy(() => import('./sections/SitePart.tsx').then((f) => ({ default: f.SitePart }))) },
  levels: { permission: 'surveys.read', Body: lazy(() => import('./sections/LevelsPart.tsx').then((f) => ({ default: f.LevelsPart }))) },
  rain: { permission: 'rain.read', Body: lazy(() => import('../features/rain/index.ts').then((f) => ({ default: f.Rain }))) },
  design: { permission: 'designs.read', Body: lazy(() => import('../features/designs/index.ts').then((f) => ({ default: f.DesignSection }))) },
  price: { permission: 'prices.read', Body: lazy(() => import('../features/prices/index.ts').then((f) => ({ default: f.PriceSection }))) },
  offer: { permission: 'offers.read', Body: lazy(() => import('../features/offers/index.ts').then((f) => ({ default: f.OfferSection }))) },
  trail: { permission: 'audit.read', Body: lazy(() => import('../features/audit/index.ts').then((f) => ({ default: f.TrailSection }))) },
  permits: { permission: 'permits.read', Body: lazy(() => import('../features/permits/index.ts').then((f) => ({ default: f.PermitsSection }))) },
  locates: { permission: 'locates.read', Body: lazy(() => import('../features/locates/index.ts').then((f) => ({ default: f.LocatesSection }))) },
  work: { permission: 'checklists.read', Body: lazy(() => import('./sections/WorkSection.tsx').then((f) => ({ default: f.WorkSection }))) },
  proof: { permission: 'proof.read', Body: lazy(() => import('../features/proof/index.ts').then((f) => ({ default: f.ProofSection }))) },
  handover: { permission: 'handover.read', Body: lazy(() => import('../features/handover/index.ts').then((f) => ({ default: f.HandoverSection }))) },
};
