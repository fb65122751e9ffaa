import type { Finding } from '../results/results.ts';
import { partsOf } from '../routing/pathParts.ts';
import { graded, stated, type CheckInput } from './finding.ts';
import { setFields } from './patch.ts';

/** N9: whether a line is clear of frost, by depth or because it empties whole. Ice in a line bursts it and floods the site. */
export function freeze(input: CheckInput): Finding[] {
  const { document } = input;
  const { frostDepth } = document.site.soil;
  const source = 'Extension advice: bury below frost or slope to drain';
  return partsOf(document, 'dischargeLine').map((line) => {
    const params = { line: line.name, cover: line.coverMin, frost: frostDepth ?? 0 };
    if (frostDepth === null) return stated('N9', 'unknown', 'note', source, { at: line.id, params });
    if (line.coverMin >= frostDepth - 1e-6) return stated('N9', 'ok', 'note', source, { at: line.id, params });
    const valve = document.system.parts.some((part) => part.kind === 'checkValve' && part.present && part.drainsTo === line.id);
    if (!valve && line.lowestSag === null) return stated('N9', 'drains', 'note', source, { at: line.id, params });
    const deeper = () => setFields(document, line, { coverMin: frostDepth }, 'remedy.deeperLine', { line: line.name, cover: frostDepth });
    return stated('N9', 'holdsWater', 'caution', source, { at: line.id, params, remedy: deeper });
  });
}

/** N11: cover of the discharge line. */
export function lineCover(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return partsOf(document, 'dischargeLine').flatMap((line) => {
    const cover = limits.N11.pass;
    const remedy = () => setFields(document, line, { coverMin: cover }, 'remedy.deeperLine', { line: line.name, cover });
    return graded(input, 'N11', 'N11', line.coverMin, { pass: 'ok', warn: 'shallow', fail: 'tooShallow' }, { at: line.id, params: { line: line.name, cover: line.coverMin }, remedy });
  });
}
