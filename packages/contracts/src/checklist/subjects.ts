import type { DesignDocument, Part } from '@yardfall/calc';
import type { Ground } from './lines.ts';
import type { ItemTemplate, Subject } from './types.ts';

/** What a step is done at, each once: the job, its parts of some kinds, its cuts, what concrete is poured at, or the lines that are in the ground. */
export function subjectsOf(template: ItemTemplate, document: DesignDocument, ground: Ground): readonly Subject[] {
  return everySubject(template, document, ground).filter(template.concerns);
}

const none = { part: null, cut: null, line: null, parts: [] } as const;

function everySubject({ per }: ItemTemplate, document: DesignDocument, ground: Ground): readonly Subject[] {
  const { parts } = document.system;
  if (per === 'job') return [{ ...none, document }];
  if (per === 'slabCut') return document.construction.slabCuts.map((cut) => ({ ...none, document, cut }));
  if (per === 'pour') return parts.filter((part) => isPouredAt(document, part)).map((part) => ({ ...none, document, part }));
  if (per === 'line') return [...(document.site.utilities.length > 0 ? [{ ...none, document }] : []), ...ground.map((line) => ({ ...none, document, line }))];
  const own = parts.filter((part) => per.kinds.includes(part.kind));
  return per.together === true && own.length > 1 ? [{ ...none, document, parts: own }] : own.map((part) => ({ ...none, document, part }));
}

/** Concrete goes around every channel of a job with concrete, and back into each cut at whatever lies under it. */
function isPouredAt({ construction: { slabCuts } }: DesignDocument, part: Part): boolean {
  return slabCuts.some((cut) => cut.part === part.id) || (part.kind === 'channel' && slabCuts.length > 0);
}
