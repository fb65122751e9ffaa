import type { locateRuleSets, ResponseOf } from '@yardfall/contracts';

/** Hand-dig strip each side of a line [m], counted from its edge or from the mark. */
export interface StateStrip {
  readonly tolerance: number;
  readonly from: 'edge' | 'mark';
}

type Rules = Pick<ResponseOf<typeof locateRuleSets.list>, 'builtIn' | 'entered'>;

/** What the rule of a state asks for: the one that the owner signed, else the newest built in; null while nobody knows. */
export function stateStrip({ builtIn, entered }: Rules, state: string): StateStrip | null {
  const rule = entered.find((signed) => signed.inForce && signed.rule.state === state)?.rule ?? builtIn.findLast((one) => one.state === state);
  return rule === undefined || rule.tolerance === null ? null : { tolerance: rule.tolerance, from: rule.toleranceFrom };
}

/** A figure that was rounded to the unit it was typed in is not narrower [m] (ours). */
const rounding = 0.003;

export function isNarrower(tolerance: number, strip: StateStrip | null): boolean {
  return strip !== null && tolerance < strip.tolerance - rounding;
}
