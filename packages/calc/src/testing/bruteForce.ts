import { asDesigned, Band } from '../evaluate/band.ts';
import { EvaluationContext } from '../evaluate/context.ts';
import { findingsOnSizes } from '../evaluate/evaluate.ts';
import { halfBlockedDocument, lowest, passes } from '../evaluate/protectedStorm.ts';
import type { DesignDocument } from '../document/document.ts';
import { limitsInForce } from '../findings/overrides.ts';
import type { Choice, CostIndex } from '../options/choices.ts';
import type { OptionPoint, WhyNotCheaper } from '../options/front.ts';
import { backupOf, dominates, type Candidate } from '../options/point.ts';
import { OptionSpace } from '../options/space.ts';

interface Known {
  readonly check: string | null;
  readonly lower: number;
  readonly held: number;
  readonly lowerAt: (returnPeriod: number) => number;
}

const knownOf = new Map<string, Known>();
const stopsOf = (document: DesignDocument) => findingsOnSizes(new EvaluationContext(document)).filter(({ severity }) => severity === 'stop');

/** One combination by itself: nothing is shared with any other, no draw is left out. */
function measured(base: DesignDocument, document: DesignDocument, touched: ReadonlySet<string>): Known {
  const key = JSON.stringify([document, [...touched]]);
  const before = knownOf.get(key);
  if (before !== undefined) return before;
  const own = new Set(stopsOf(base).map(({ code, at }) => `${code} ${at}`));
  const stops = stopsOf(document).filter(({ code, at }) => touched.has(at ?? '') || !own.has(`${code} ${at}`)).map(({ check }) => check);
  const check = stops.find((id) => 'CDGI'.includes(id[0]!)) ?? stops[0] ?? null;
  const bandOf = (made: DesignDocument): Band => new Band(new EvaluationContext(made), { offset: false });
  const counted = bandOf(halfBlockedDocument(document));
  const periods = document.rain.table.returnPeriods;
  let held = 0;
  if (check === null) while (held < periods.length && passes(counted, periods[held]!, asDesigned)) held += 1;
  const found: Known = {
    check, held, lower: check === null ? lowest(bandOf(document), document.rain.designReturnPeriod, asDesigned) : NaN,
    lowerAt: (returnPeriod) => lowest(counted, returnPeriod, asDesigned),
  };
  knownOf.set(key, found);
  return found;
}

/** The front of every combination measured one by one, with why the next cheaper one is not enough: the answer that the search must give. */
export function bruteForce(document: DesignDocument, choices: readonly Choice[], cost: CostIndex): readonly OptionPoint[] {
  const space = new OptionSpace(document, choices, cost);
  const all = Array.from({ length: space.count }, (_, index) => {
    const digits = space.digitsOf(index);
    const known = measured(document, space.documentOf(digits), space.touched());
    const picks = Object.fromEntries(choices.map(({ id, alternatives }, choice) => [id, alternatives[digits[choice]!]!.id]));
    return { index, cost: space.cost(digits), backup: backupOf(space, digits), picks, ...known };
  });
  type One = (typeof all)[number];
  const plain = ({ index, cost: price, backup, lower, held }: One): Candidate => ({ index, cost: price, backup, lower, held });
  const allowed = all.filter(({ check }) => check === null);
  const front = allowed.filter((one) => !allowed.some((other) => other !== one && dominates(plain(other), plain(one)))).sort((a, b) => a.cost - b.cost || a.index - b.index);
  const { table, designReturnPeriod, checkReturnPeriod } = document.rain;
  const L5 = limitsInForce(document.limits).L5;

  const why = (one: One, place: number): WhyNotCheaper | null => {
    const before = front.slice(0, place).reverse();
    const next = before.find(({ backup }) => String(backup) === String(one.backup)) ?? before[0];
    const stopped = all.filter((other) => other.check !== null && other.cost < one.cost).sort((a, b) => b.cost - a.cost || a.index - b.index)[0];
    if (next === undefined) return stopped === undefined ? null : { code: 'stops', check: stopped.check, returnPeriod: null, shortBy: null, cheaper: stopped.picks };
    if (next.held < one.held) {
      const returnPeriod = table.returnPeriods[next.held]!;
      const check = returnPeriod === checkReturnPeriod && returnPeriod !== designReturnPeriod ? 'L6' : 'L5';
      return { code: 'floods', check, returnPeriod, shortBy: -next.lowerAt(returnPeriod), cheaper: next.picks };
    }
    const missed = [L5.fail, L5.pass].find((limit) => next.lower < limit && one.lower >= limit);
    const designed = { check: 'L5', returnPeriod: designReturnPeriod, cheaper: next.picks };
    if (missed !== undefined) return { code: 'short', shortBy: missed - next.lower, ...designed };
    if (next.lower < one.lower) return { code: 'less', shortBy: one.lower - next.lower, ...designed };
    return { code: 'backup', check: null, returnPeriod: null, shortBy: null, cheaper: next.picks };
  };
  return front.map((one, place) => ({
    picks: one.picks, cost: one.cost, lower: one.lower, protectedStorm: one.held === 0 ? null : table.returnPeriods[one.held - 1]!,
    wholeTable: one.held === table.returnPeriods.length, passes: one.lower >= L5.fail, whyNotCheaper: why(one, place),
  }));
}
