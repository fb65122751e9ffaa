import { languages, unitSystems } from '@yardfall/text';
import { Choices } from '../../components/Choices.tsx';
import { themes, useReader, useText } from '../../lib/reader.tsx';

export function ReaderSwitches() {
  const reader = useReader();
  const { t } = useText();
  return (
    <>
      <Choices look="quiet" label={t('ui.switch.language')} value={reader.asked} onChange={(language) => reader.change({ language })}
        choices={languages.map((value) => ({ value, label: t(`ui.language.${value}`) }))} />
      <Choices look="quiet" label={t('ui.switch.units')} value={reader.units} onChange={(units) => reader.change({ units })}
        choices={unitSystems.map((value) => ({ value, label: t(`ui.units.${value}`) }))} />
      <Choices look="quiet" label={t('ui.switch.theme')} value={reader.theme} onChange={(theme) => reader.change({ theme })}
        choices={themes.map((value) => ({ value, label: t(`ui.theme.${value}`) }))} />
    </>
  );
}
