import { markOfSeverity } from '../display.ts';
import type { FindingMark, Role } from '../display.ts';
import { label } from '../labels.ts';
import type { Scene } from './scene.ts';

const order = ['findingStop', 'findingCaution', 'findingNote'];

/** Findings, photo ticks and measured levels stand at the part they concern. */
export function drawMarks(scene: Scene): void {
  const { evaluation, options, pen } = scene;
  const rows = new Map<string, number>();
  const next = (id: string): number => {
    const index = rows.get(id) ?? 0;
    rows.set(id, index + 1);
    return index;
  };
  const findings = (evaluation?.findings ?? []).map((finding) => ({ ...finding, mark: markOfSeverity(finding.severity) }));
  findings.sort((a, b) => order.indexOf(a.mark) - order.indexOf(b.mark));
  const noted = new Set<string>();
  for (const finding of findings) {
    const at = finding.at === null ? null : pen.anchorOf(finding.at);
    if (finding.at === null || at === null) continue;
    // A check that was passed says nothing at its part.
    if (finding.code.endsWith('.ok')) continue;
    if (finding.mark === 'findingNote') {
      // A part may carry a dozen notes, and a row of dashes would read as a dashed line: one dash says that there are any.
      if (options.detail === 'mini' || noted.has(finding.at)) continue;
      noted.add(finding.at);
    }
    pen.mark(finding.at, roleOf(finding.mark), finding.mark, at, next(finding.at), finding.code);
    pen.legend(`drawing.key.${finding.mark}`, { kind: 'mark', mark: finding.mark, role: roleOf(finding.mark) });
  }
  for (const photo of options.photos) {
    const at = pen.anchorOf(photo.part);
    if (at === null || options.detail !== 'full') continue;
    pen.legend('drawing.key.photo', { kind: 'mark', mark: 'photoTick', role: 'ink' });
    pen.mark(photo.part, 'ink', 'photoTick', at, next(photo.part), String(photo.number));
  }
  drawMeasured(scene);
}

function roleOf(mark: FindingMark): Role {
  if (mark === 'findingStop') return 'sill';
  return mark === 'findingCaution' ? 'watch' : 'faint';
}

function drawMeasured(scene: Scene): void {
  const { options, pen, frame } = scene;
  for (const { part, level } of options.measured) {
    const at = pen.anchorOf(part);
    if (at === null) continue;
    pen.level(part, 'sound', [at[0] + 12 * frame.mx, level], label('drawing.measuredLevel', { level }), 'right', 1);
  }
}
