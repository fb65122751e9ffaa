import { itemText, type ChecklistItem } from '@yardfall/contracts';
import { Notice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { reasonSentence } from '../model/sentences.ts';

/** How good is good enough, what the photo must show, and why. */
export function WhatGood({ item }: { readonly item: ChecklistItem }) {
  const { t, say } = useText();
  const line = (what: 'acceptance' | 'photo' | 'whyCrew' | 'whyHome') => {
    const code = itemText(item.requirement, what);
    return code.startsWith('checklists.own.no.why') ? null : say(code, item.requirement.params);
  };
  const photo = item.requirement.evidence.includes('photo') ? line('photo') : null;
  const [good, why, home] = [line('acceptance'), line('whyCrew'), line('whyHome')];
  const { ownAdds: adds, weaker } = item.requirement.params;
  return (
    <>
      {weaker === undefined ? null : <Notice severity="caution"><p>{t('checklists.own.weaker', item.requirement.params)}</p></Notice>}
      {item.reopenedReason === null ? null : <Notice severity="caution"><p>{reasonSentence(say, { reason: item.reopenedReason })}</p></Notice>}
      <dl className="item-good">
        {good === null ? null : <div><dt>{t('checklists.goodEnough')}</dt><dd>{good}</dd></div>}
        {adds === undefined ? null : <div><dt>{t('checklists.own.adds')}</dt><dd>{adds}</dd></div>}
        {photo === null ? null : <div><dt>{t('checklists.photoShows')}</dt><dd>{photo}</dd></div>}
        {why === null ? null : <div><dt>{t('checklists.why')}</dt><dd>{why}</dd></div>}
        {home === null ? null : <div><dt>{t('checklists.whyHome')}</dt><dd>{home}</dd></div>}
      </dl>
    </>
  );
}
