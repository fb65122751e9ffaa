import { hazardsAt } from '@yardfall/contracts';
import { FindingMark } from '../../../components/FindingMark.tsx';
import { useText } from '../../../lib/reader.tsx';
import '../../../components/Cautions.css';

/** What can hurt at this step: the worst in one line, all of it with its sources a tap away. Told here, where it matters, and nowhere else. */
export function ItemCautions({ template }: { readonly template: string }) {
  const { t } = useText();
  const hazards = hazardsAt(template);
  const [worst] = hazards;
  if (worst === undefined) return null;
  return (
    <details className="fold caution-line">
      <summary>
        <FindingMark severity="caution" wordUnseen />
        <span>{firstSentence(t(`safety.${worst}`))} <span className="more">{hazards.length > 1 ? t('checklists.cautionMore', { n: hazards.length - 1 }) : t('checklists.cautionAll')}</span></span>
      </summary>
      <ul className="cautions">
        {hazards.map((hazard) => (
          <li key={hazard}>
            <FindingMark severity="caution" wordUnseen />
            <span>{t(`safety.${hazard}`)} <span className="faint">{t(`safety.${hazard}.source`)}</span></span>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** As far as it says something by itself; a word before a colon does not. */
function firstSentence(text: string): string {
  return /^.{24,}?[.;](?=\s|$)/.exec(text)?.[0].replace(/;$/, '.') ?? text;
}
