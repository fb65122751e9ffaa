import type { GravityWithBand } from '@yardfall/calc';
import { FindingMark } from '../../../../components/FindingMark.tsx';
import { useText, type Text } from '../../../../lib/reader.tsx';
import { fallSentence } from '../../model/fallSentence.ts';
import { pointsOf, type BookStanding, type FieldBook } from '../../model/fieldBook.ts';

const marks = { works: 'note', tight: 'caution', cannotTell: 'caution', short: 'stop' } as const;

function waiting(t: Text['t'], book: FieldBook, { levels }: BookStanding): string {
  const points = pointsOf(book);
  const collector = points.some(({ role }) => role === 'collectorInvert');
  const outlet = points.find(({ role, point }) => role === 'outlet' && levels.has(point));
  if (!collector) return t(outlet === undefined ? 'surveys.yard.verdict.none' : 'surveys.yard.verdict.noCollector');
  return outlet === undefined ? t('surveys.yard.verdict.noOutlet') : t('surveys.yard.verdict.noLength', { outlet: outlet.point });
}

/** A loop that does not close has to be mended before any outlet is looked at again. */
function answered(t: Text['t'], one: GravityWithBand, { reduced }: BookStanding): string {
  const loop = one.verdict === 'cannotTell' && reduced.verdict === 'fail' && reduced.misclosure !== null;
  return loop ? t('surveys.fall.loopFirst', { outlet: one.name, misclosure: Math.abs(reduced.misclosure ?? 0) }) : fallSentence(t, one);
}

function closing(t: Text['t'], { reduced }: BookStanding): string {
  if (reduced.misclosure === null) return t('surveys.yard.open');
  const misclosure = Math.abs(reduced.misclosure);
  const codes = { pass: 'surveys.yard.closes', warn: 'surveys.yard.poorly', fail: 'surveys.yard.misses', notClosed: 'surveys.yard.open' } as const;
  return t(codes[reduced.verdict], { misclosure });
}

/** Always in sight: whether gravity can work, and whether the book closes. */
export function VerdictLine({ book, standing }: { readonly book: FieldBook; readonly standing: BookStanding }) {
  const { t } = useText();
  const [best] = standing.gravity;
  return (
    <div className="yard-verdict" role="status">
      <p className="yard-verdict-fall">
        <FindingMark severity={best === undefined ? 'note' : marks[best.verdict]} wordUnseen />
        <span>{best === undefined ? waiting(t, book, standing) : answered(t, best, standing)}</span>
      </p>
      <p className="yard-verdict-loop">{closing(t, standing)}</p>
    </div>
  );
}

/** Every candidate outlet with the figures of its answer. */
export function EveryOutlet({ standing }: { readonly standing: BookStanding }) {
  const { t } = useText();
  if (standing.gravity.length === 0) return null;
  return (
    <section className="stack" aria-label={t('surveys.fall.all')}>
      <h2>{t('surveys.fall.all')}</h2>
      <ul className="yard-outlets">
        {standing.gravity.map((one) => (
          <li key={one.outlet}>
            <FindingMark severity={marks[one.verdict]} wordUnseen />
            <span>
              <strong>{answered(t, one, standing)}</strong><br />
              <span className="faint">{t('surveys.fall.detail', { available: one.fallAvailable, needed: one.fallNeeded, margin: one.margin, uncertainty: one.uncertainty })}</span>
            </span>
          </li>
        ))}
      </ul>
      {standing.reduced.misclosure === null ? <p className="faint">{t('surveys.fall.openBook')}</p> : null}
    </section>
  );
}
