import { readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import { DesignDocumentSchema } from '../document/schema.ts';

/** A demo site as the service ships it. */
export function site(name: 'tern-hollow' | 'ridgeback'): DesignDocument {
  const file = new URL(`../../../../prisma/seed/sites/${name}.json`, import.meta.url);
  return DesignDocumentSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
}

/** A lawn drained by gravity: one inlet, one pipe to daylight; no pump, no concrete. Taken from the demo site of this kind. */
export function lawn(): DesignDocument {
  const base = site('ridgeback');
  const pipe = base.system.parts.find(({ kind }) => kind === 'pipe');
  const outlet = base.system.parts.find(({ kind }) => kind === 'outlet');
  if (pipe === undefined || outlet === undefined) throw new Error('the site has no pipe to an outlet');
  const inlet = {
    kind: 'catchBasin' as const, id: 'CB1', name: 'Lawn inlet', drainsTo: pipe.id, lowSpot: base.site.lowSpots[0]?.id ?? '', grateLevel: 30, gratePerimeter: 1.2,
    grateOpenArea: 0.03, clogging: 0.5, invertOut: 29.5, sumpDepth: 0.2,
  };
  return {
    ...base,
    system: { parts: [inlet, pipe, outlet] },
    construction: { ...base.construction, slabCuts: [], electrical: null, trenchNearFooting: false, foundationWithin1ft: false, poolWithin3m: false },
  };
}
