import { planChecks, planFigures, type DesignDocument } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';
import { Button } from '../../../../components/Button.tsx';
import { FindingMark } from '../../../../components/FindingMark.tsx';
import { Heading } from '../../../../components/Heading.tsx';
import { useText } from '../../../../lib/reader.tsx';

interface PlanChecksProps {
  readonly document: DesignDocument;
  readonly edit: (operations: readonly DraftOperation[]) => void;
  readonly onShow: (shape: string) => void;
}

/** What cannot be on the plan, and figures of the design that are not what the plan measures. */
export function PlanChecks({ document, edit, onShow }: PlanChecksProps) {
  const { t, q, say } = useText();
  const checks = planChecks(document);
  const differing = planFigures(document).filter(({ quantity, drawn, stated }) => q(quantity, drawn) !== q(quantity, stated));
  if (checks.length === 0 && differing.length === 0) return null;
  const nameOf = (id: string) => document.site.plan?.shapes.find((shape) => shape.id === id)?.name ?? id;
  return (
    <section className="stack">
      <Heading level={3}>{t('plan.checks')}</Heading>
      <ul className="findings">
        {checks.map(({ code, shapes: [first, ...others], params }, at) => (
          <li key={`${code} ${[first, ...others].join(' ')} ${String(at)}`}>
            <FindingMark severity="caution" />
            <div className="finding-body">
              <p>{say(code, params)}</p>
              {first === undefined ? null : <Button kind="text" onClick={() => onShow(first)}>{t('plan.show')}</Button>}
            </div>
          </li>
        ))}
        {differing.map(({ shape, quantity, path, drawn, stated }) => (
          <li key={`differs ${shape}`}>
            <FindingMark severity="note" />
            <div className="finding-body">
              <p>{t('plan.differs', { name: nameOf(shape), drawn: q(quantity, drawn), stated: q(quantity, stated) })}</p>
              <Button onClick={() => edit([{ kind: 'replace', path: [...path], value: drawn }])}>{t('plan.take')}</Button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
