import { useText } from '../lib/reader.tsx';
import { states, timeZones, zoneOf, type Place } from '../lib/places.ts';
import { Select } from './Select.tsx';

/** Choosing the state proposes its zone; legal clocks run in the zone. */
export function StateAndZone({ value, onChange }: { readonly value: Place; readonly onChange: (place: Place) => void }) {
  const { t, language } = useText();
  return (
    <>
      <Select label={t('ui.state')} choices={states.map((state) => ({ value: state, label: state }))} value={value.state}
        onChange={(state) => onChange({ state, timeZone: zoneOf(state) })} />
      <Select label={t('ui.timeZone')} hint={t('ui.timeZoneHint')} choices={timeZones.map((zone) => ({ value: zone, label: zoneName(zone, language) }))}
        value={value.timeZone} onChange={(timeZone) => onChange({ ...value, timeZone })} />
    </>
  );
}

function zoneName(zone: string, language: string): string {
  const parts = new Intl.DateTimeFormat(language, { timeZone: zone, timeZoneName: 'longGeneric' }).formatToParts();
  return parts.find((part) => part.type === 'timeZoneName')?.value ?? zone;
}
