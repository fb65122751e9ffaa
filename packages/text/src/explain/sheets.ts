import type { Working } from '@yardfall/calc';
import { isNumericQuantity, type NumericQuantity } from '../format.ts';
import { joined, tell, type Ground, type Paragraph, type Reader } from './tell.ts';

const unitOf = (unit: string): NumericQuantity => (isNumericQuantity(unit) ? unit : 'number');

/** One working as sentences: what it is, the formula, every symbol with its value, every step, the source. */
function sheet(ground: Ground, reader: Reader, working: Working, index: number): Paragraph {
  const path = `/workings/${index}`;
  const head = { title: `workings.${working.code}`, formula: `${path}/formula`, value: { path: `${path}/value`, unit: unitOf(working.unit) }, source: `${path}/source` };
  return joined([
    working.solves === null ? tell(ground, reader, 'explain.sheet.direct', head) : tell(ground, reader, 'explain.sheet.trial', { ...head, symbol: `${path}/solves` }),
    ...working.symbols.map(({ unit, meaning }, at) => tell(ground, reader, 'explain.sheet.symbol', {
      symbol: `${path}/symbols/${at}/symbol`, value: { path: `${path}/symbols/${at}/value`, unit: unitOf(unit) }, meaning: `workings.meaning.${meaning}`,
    })),
    ...working.steps.map(({ unit, meaning }, at) => tell(ground, reader, 'explain.sheet.step', {
      symbol: `${path}/steps/${at}/symbol`, formula: `${path}/steps/${at}/formula`, value: { path: `${path}/steps/${at}/value`, unit: unitOf(unit) }, meaning: `workings.meaning.${meaning}`,
    })),
  ]);
}

/** Every working, for whoever checks the calculation. */
export function sheets(ground: Ground, reader: Reader): Paragraph[] {
  return ground.workings.map((working, index) => sheet(ground, reader, working, index));
}
