import { EvaluationContext } from '../evaluate/context.ts';
import { sizesOf, unrouted } from '../evaluate/sizes.ts';
import { checks } from '../findings/allFindings.ts';
import { limitsInForce } from '../findings/overrides.ts';
import type { Finding } from '../results/results.ts';
import { LazyResults } from './lazyResults.ts';
import type { SharedModels } from './models.ts';
import { Memo, type Reads } from './reads.ts';
import type { Digits, OptionSpace } from './space.ts';

/** Checks on inlets, channels, pipes and roof: they are told first. */
const gravityChecks = /^[CDGI]/;

type StopMemo = Memo<readonly string[]>;

/**
 * What may not be built whatever the storm: checks on sizes, levels and duties that give a stop. Each check is made once for the choices
 * that it reads and no other. Stops of the base design at parts that no choice touches are left out: no combination can cure them.
 */
export class Stops {
  private readonly memos: readonly StopMemo[];
  private readonly known: ReadonlySet<string>;
  private readonly touched: ReadonlySet<string>;

  constructor(space: OptionSpace, reads: Reads, models: SharedModels) {
    const { document } = space;
    const limits = limitsInForce(document.limits);
    const context = new EvaluationContext(document);
    const base = { document, results: { ...sizesOf(context), ...unrouted }, limits, withRemedies: false };
    this.known = new Set(checks.flatMap((check) => check(base)).filter(({ severity }) => severity === 'stop').map(nameOf));
    this.touched = space.touched();

    const { documents } = models;
    const results = new LazyResults(reads, models, context);
    this.memos = checks.map((check): StopMemo => new Memo(reads, (digits) => {
      return check({ document: documents.of(digits), results: results.of(digits), limits, withRemedies: false }).filter((finding) => this.counts(finding)).map((finding) => finding.check);
    }));
  }

  /** The check that stops a combination, null for none: the first on inlets, channels, pipes and roof, else the first of all others. */
  of(digits: Digits): string | null {
    const found = this.memos.flatMap((memo) => memo.get(digits));
    return found.find((check) => gravityChecks.test(check)) ?? found[0] ?? null;
  }

  /** What can still stop the combinations of some digits whose open choices are not settled; null when all of them are stopped. */
  among(digits: Digits, open: readonly boolean[]): ((of: Digits) => boolean) | null {
    const left: StopMemo[] = [];
    for (const memo of this.memos) {
      const found = memo.among(digits, open);
      if ('open' in found) left.push(memo);
      else if (found.value.length > 0) return null;
    }
    // What reads little is asked first: most that is stopped is stopped by it.
    left.sort((a, b) => a.size - b.size);
    return (of) => left.some((memo) => memo.get(of).length > 0);
  }

  private counts(finding: Finding): boolean {
    return finding.severity === 'stop' && (!this.known.has(nameOf(finding)) || this.touched.has(finding.at ?? ''));
  }
}

const nameOf = ({ code, at }: Finding): string => `${code} ${at ?? ''}`;

