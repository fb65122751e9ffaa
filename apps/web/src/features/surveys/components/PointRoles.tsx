import { pointRoles } from '@yardfall/contracts';
import { LengthField } from '../../../components/LengthField.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { pointNamed, shotPoints, withPoint } from '../model/content.ts';
import type { ContentProps } from './LevelBook.tsx';

/** What each point is: the sill, the low spot, the rim, an outlet with the pipe length to it. */
export function PointRoles({ content, onChange }: ContentProps) {
  const { t } = useText();
  const names = shotPoints(content);
  if (names.length === 0) return <p className="faint">{t('surveys.noShots')}</p>;
  return (
    <ol className="point-roles">
      {names.map((name) => {
        const point = pointNamed(content, name);
        return (
          <li key={name}>
            <Select label={name} value={point.role} choices={pointRoles.map((role) => ({ value: role, label: t(`surveys.role.${role}`) }))} onChange={(role) => onChange(withPoint(content, { ...point, role }))} />
            {point.role === 'outlet' ? (
              <>
                <LengthField label={t('surveys.distance', { point: name })} value={point.distance} onChange={(distance) => onChange(withPoint(content, { ...point, distance }))} />
                <LengthField label={t('surveys.tailwater', { point: name })} kind="height" optional value={point.tailwater} onChange={(tailwater) => onChange(withPoint(content, { ...point, tailwater }))} />
              </>
            ) : null}
            {point.role === 'other' || point.role === 'outlet' ? null : (
              <LengthField label={t('surveys.station', { point: name })} optional value={point.station} onChange={(station) => onChange(withPoint(content, { ...point, station }))} />
            )}
          </li>
        );
      })}
    </ol>
  );
}
