import { checklists, itemText, type PhotoPlace } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useSectionDocument } from '../../hooks/useSectionDocument.ts';
import { read } from '../../lib/query.ts';
import { useText } from '../../lib/reader.tsx';
import { Button } from '../Button.tsx';
import { PartSelect } from '../PartSelect.tsx';
import { Select } from '../Select.tsx';
import { PlacePad } from './PlacePad.tsx';

interface PlaceFieldsProps {
  readonly jobId: string;
  readonly place: PhotoPlace;
  readonly onPlace: (place: PhotoPlace) => void;
}

/** No key of a step. */
const none = '-';

/** Section, part and step of a photo; what is touched in the section names the part. */
export function PlaceFields({ jobId, place, onPlace }: PlaceFieldsProps) {
  const { t, say } = useText();
  const document = useSectionDocument(jobId);
  const { data } = useQuery({ ...read(checklists.read, { params: { jobId } }), retry: false });
  const steps = (data?.data.items ?? []).map(({ key, requirement, partName }) => ({ value: key, label: [partName, say(itemText(requirement, 'what'), requirement.params)].filter(Boolean).join(': ') }));
  return (
    <div className="stack">
      {document === null ? null : <PlacePad document={document} point={place.point} onPoint={(point, part) => onPlace({ ...place, point, part: part !== null && document.system.parts.some(({ id }) => id === part) ? part : place.part })} />}
      {place.point === null ? null : <div><Button kind="text" size="crew" onClick={() => onPlace({ ...place, point: null })}>{t('photos.noPoint')}</Button></div>}
      <PartSelect jobId={jobId} value={place.part} onChange={(part) => onPlace({ ...place, part })} />
      {steps.length === 0 ? null : <Select label={t('photos.step')} choices={[{ value: none, label: t('photos.noStep') }, ...steps]} value={place.itemKey ?? none} onChange={(key) => onPlace({ ...place, itemKey: key === none ? null : key })} />}
    </div>
  );
}
