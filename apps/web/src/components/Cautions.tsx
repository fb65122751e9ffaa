import { useText } from '../lib/reader.tsx';
import { FindingMark } from './FindingMark.tsx';
import './Cautions.css';

export type CautionName = 'electricity' | 'sewage' | 'drillDust' | 'firstOneCall' | 'handDig' | 'privateLines' | 'gasStrike' | 'caveIn' | 'slab' | 'utility' | 'oldPipe' | 'pit';

/** Short cautions, each with where it comes from; local code and the one-call center come first. */
export function Cautions({ which }: { readonly which: readonly CautionName[] }) {
  const { t } = useText();
  return (
    <ul className="cautions">
      {which.map((name) => (
        <li key={name}>
          <FindingMark severity="caution" wordUnseen />
          <span>{t(`ui.caution.${name}`)} <span className="faint">{t(`ui.caution.${name}.source`)}</span></span>
        </li>
      ))}
    </ul>
  );
}
