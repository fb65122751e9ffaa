import type { DesignDocument } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';
import { PointListPick } from '../../../../components/PointListPick.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { putPoints } from '../../model/plan/operations.ts';

interface PointListPanelProps {
  readonly document: DesignDocument;
  readonly edit: (operations: readonly DraftOperation[]) => void;
}

/** A surveyor's points become the spot levels of the plan. */
export function PointListPanel({ document, edit }: PointListPanelProps) {
  const { t } = useText();
  return <PointListPick note={t('plan.listMore')} words={t('plan.listTake')} onTake={(points) => edit(putPoints(document, points))} />;
}
