import { hazardsAt } from '@yardfall/contracts';
import { FindingMark } from '../../../components/FindingMark.tsx';
import { useText } from '../../../lib/reader.tsx';
import '../../../components/Cautions.css';

/** What can hurt at this step, each with its source: told here, where it matters, and nowhere else. */
export function ItemCautions({ template }: { readonly template: string }) {
  const { t } = useText();
  const hazards = hazardsAt(template);
  if (hazards.length === 0) return null;
  return (
    <ul className="cautions">
      {hazards.map((hazard) => (
        <li key={hazard}>
          <FindingMark severity="caution" wordUnseen />
          <span>{t(`safety.${hazard}`)} <span className="faint">{t(`safety.${hazard}.source`)}</span></span>
        </li>
      ))}
    </ul>
  );
}
