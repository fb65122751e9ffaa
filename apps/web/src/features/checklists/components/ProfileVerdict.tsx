import { FindingMark } from '../../../components/FindingMark.tsx';
import { useText, type Text } from '../../../lib/reader.tsx';
import type { ProfileVerdict as Verdict } from '../model/profile.ts';

/** What the inverts show, what to move, and what the pipe carries. */
export function ProfileVerdict({ verdict: { built, designed, least }, isWhole }: { readonly verdict: Verdict; readonly isWhole: boolean }) {
  const text = useText();
  const { t } = text;
  const wrong = faults({ built, designed, least }, text);
  const good = Math.min(...built.segments.map(({ slope }) => slope));
  return (
    <>
      {wrong.length === 0 && isWhole ? <p className="verdict verdict-good"><span aria-hidden="true">{'✓'}</span>{t('checklists.profile.good', { slope: good })}</p> : null}
      {wrong.map((sentence) => <p key={sentence} className="verdict verdict-off"><FindingMark severity="stop" wordUnseen />{sentence}</p>)}
      {built.corrections.length === 0 ? null : (
        <ul>
          {built.corrections.map(({ shot, at, raise }) => <li key={shot}><strong>{t(raise > 0 ? 'checklists.profile.raise' : 'checklists.profile.lower', { n: shot + 1, at, by: Math.abs(raise) })}</strong></li>)}
        </ul>
      )}
      {isWhole ? <p>{built.fullFlow > 0 ? t('checklists.profile.carries', { built: built.fullFlow, designed }) : t('checklists.profile.nothing', { designed })}</p> : <p className="faint">{t('checklists.profile.part')}</p>}
    </>
  );
}

function faults({ built, least }: Verdict, { t }: Text): string[] {
  const segments = built.segments.flatMap(({ from, to, fall, slope, kind }) => {
    if (kind === 'back') return [t('checklists.profile.back', { from, to, rise: -fall })];
    if (kind === 'flat') return [t('checklists.profile.flat', { from, to })];
    return kind === 'slack' ? [t('checklists.profile.slack', { from, to, slope, least })] : [];
  });
  return [...segments, ...built.bellies.map(({ at, depth }) => t('checklists.profile.belly', { at, depth }))];
}
