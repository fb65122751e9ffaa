import { jobs } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { Button } from '../../../components/Button.tsx';
import { useBuildRevision } from '../../../hooks/useBuildRevision.ts';
import { read } from '../../../lib/query.ts';
import { useText } from '../../../lib/reader.tsx';
import { materialsOf, type Material } from '../model/takeOff.ts';

/** The materials of what is being built, each a tap; none while the design is not on this phone. */
export function useMaterials(jobId: string): readonly Material[] {
  const { data } = useQuery({ ...read(jobs.read, { params: { jobId } }), staleTime: 60_000 });
  const { evaluation } = useBuildRevision(data?.data ?? { id: jobId, buildRevisionId: null });
  return materialsOf(evaluation?.results?.quantities ?? []);
}

interface MaterialPickProps {
  readonly materials: readonly Material[];
  readonly picked: string | null;
  readonly onPick: (material: Material | null) => void;
}

/** What came or was used, by the take-off; what stands in no list is written. */
export function MaterialPick({ materials, picked, onPick }: MaterialPickProps) {
  const { t, say } = useText();
  return (
    <div className="goods-pick" role="group" aria-label={t('daywork.field.what')}>
      {materials.map((material) => (
        <Button key={`${material.code} ${material.unit}`} size="crew" wide aria-pressed={picked === material.code} onClick={() => onPick(material)}>
          <span>{say(`prices.item.${material.code}`)}</span>
          <span className="faint">{t('daywork.designed', { amount: material.designed, unit: t(`daywork.unit.${material.unit}`) })}</span>
        </Button>
      ))}
      <Button size="crew" wide aria-pressed={picked === ''} onClick={() => onPick(null)}>{t('daywork.task.other')}</Button>
    </div>
  );
}
