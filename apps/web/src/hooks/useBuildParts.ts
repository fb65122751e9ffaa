import { checklists, type Checklist } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../lib/query.ts';

export interface BuildPart {
  readonly id: string;
  readonly name: string;
}

/** The parts that are being built, in the order of the work; none before the job is released to dig. */
export function partsOf(checklist: Checklist | undefined, template: string | null = null): readonly BuildPart[] {
  const items = (checklist?.items ?? []).filter((item) => template === null || item.template === template);
  return [...new Map(items.flatMap(({ part, partName }) => (part === null ? [] : [[part, { id: part, name: partName ?? part }] as const]))).values()];
}

export function useBuildParts(jobId: string, template: string | null = null): readonly BuildPart[] {
  return partsOf(useQuery({ ...read(checklists.read, { params: { jobId } }), retry: false }).data?.data, template);
}
