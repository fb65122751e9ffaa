import { readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import type { RainTableRow, Survey } from '@yardfall/contracts';

export type SiteName = 'tern-hollow' | 'ridgeback' | 'sallow-bend' | 'lindqvist';

/** The invented sites stand beside the migrations, so that the command line evaluates the same bytes. */
export function siteDocument(name: SiteName): DesignDocument {
  return JSON.parse(readFileSync(new URL(`../../../../../prisma/seed/sites/${name}.json`, import.meta.url), 'utf8')) as DesignDocument;
}

/** With the stamps of the survey and the rain table that its levels and depths were taken from. */
export function stamped(document: DesignDocument, survey: Survey, rain: RainTableRow, takenAt: Date): DesignDocument {
  const stampOf = ({ id, sha256 }: { id: string; sha256: string }) => ({ id, sha256, takenAt: takenAt.toISOString() });
  return { ...document, sources: { survey: stampOf(survey), rain: stampOf(rain) } };
}
