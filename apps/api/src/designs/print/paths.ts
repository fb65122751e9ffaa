/** One step of an outline, in the units of the sheet. */
export type Step =
  | { readonly op: 'M' | 'L'; readonly at: readonly [number, number] }
  | { readonly op: 'C'; readonly by: readonly [number, number, number, number, number, number] }
  | { readonly op: 'Z' };

const tokens = /[A-Za-z]|-?\d*\.?\d+(?:e-?\d+)?/g;

/** The outlines that the drawing package writes: M, L, H, V, Q and Z with absolute places. */
export function stepsOf(d: string): Step[] {
  const list = d.match(tokens) ?? [];
  const steps: Step[] = [];
  let [x, y, index, op] = [0, 0, 0, 'M'];
  const next = (): number => {
    const value = Number(list[index]);
    index += 1;
    if (Number.isNaN(value)) throw new RangeError(`an outline ends too early: ${d}`);
    return value;
  };
  while (index < list.length) {
    if (/[A-Za-z]/.test(list[index] ?? '')) {
      op = list[index] ?? '';
      index += 1;
      if (op === 'Z') steps.push({ op });
      if (op === 'Z') continue;
    }
    if (op === 'Q') {
      const [cx, cy, tx, ty] = [next(), next(), next(), next()];
      steps.push({ op: 'C', by: [x + (2 / 3) * (cx - x), y + (2 / 3) * (cy - y), tx + (2 / 3) * (cx - tx), ty + (2 / 3) * (cy - ty), tx, ty] });
      [x, y] = [tx, ty];
      continue;
    }
    if (op === 'M' || op === 'L') [x, y] = [next(), next()];
    else if (op === 'H') x = next();
    else if (op === 'V') y = next();
    else throw new RangeError(`an outline with ${op}: ${d}`);
    steps.push({ op: op === 'M' ? 'M' : 'L', at: [x, y] });
    if (op === 'M') op = 'L';
  }
  return steps;
}

/** Control points of a quarter circle lie this share of the radius away from its ends. */
const kappa = 0.5522847498;

export function circleSteps(cx: number, cy: number, r: number): Step[] {
  const k = r * kappa;
  return [
    { op: 'M', at: [cx + r, cy] },
    { op: 'C', by: [cx + r, cy + k, cx + k, cy + r, cx, cy + r] }, { op: 'C', by: [cx - k, cy + r, cx - r, cy + k, cx - r, cy] },
    { op: 'C', by: [cx - r, cy - k, cx - k, cy - r, cx, cy - r] }, { op: 'C', by: [cx + k, cy - r, cx + r, cy - k, cx + r, cy] }, { op: 'Z' },
  ];
}

/** The same outline in the language of a page. */
export function operators(steps: readonly Step[]): string {
  return steps.map((step) => {
    if (step.op === 'Z') return 'h';
    if (step.op === 'C') return `${step.by.map(figure).join(' ')} c`;
    return `${step.at.map(figure).join(' ')} ${step.op === 'M' ? 'm' : 'l'}`;
  }).join(' ');
}

const figure = (value: number): string => String(Math.round(value * 1000) / 1000);
