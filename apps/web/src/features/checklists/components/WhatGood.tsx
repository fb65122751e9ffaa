import { itemText, type ChecklistItem } from '@yardfall/contracts';
import { Notice } from '../../../components/Notice.tsx';
import { useText, type Text } from '../../../lib/reader.tsx';
import { reasonSentence } from '../model/sentences.ts';

function line({ say }: Pick<Text, 'say'>, { requirement }: ChecklistItem, what: 'acceptance' | 'whyCrew' | 'whyHome'): string | null {
  const code = itemText(requirement, what);
  return code.startsWith('checklists.own.no.') ? null : say(code, requirement.params);
}

/** How good is good enough, and what has changed about it. */
export function WhatGood({ item }: { readonly item: ChecklistItem }) {
  const text = useText();
  const { t, say } = text;
  const good = line(text, item, 'acceptance');
  const { ownAdds: adds, ownLimits, ownCement, weaker, builtInPhotos } = item.requirement.params;
  return (
    <>
      {weaker === undefined ? null : <Notice severity="caution"><p>{t(ownCement !== undefined ? 'checklists.own.cement' : builtInPhotos === undefined ? 'checklists.own.wider' : 'checklists.own.weaker', item.requirement.params)}</p></Notice>}
      {item.reopenedReason === null ? null : <Notice severity="caution"><p>{reasonSentence(say, { reason: item.reopenedReason })}</p></Notice>}
      {good === null && adds === undefined && ownLimits === undefined ? null : (
        <dl className="item-good">
          {good === null ? null : <div><dt>{t('checklists.goodEnough')}</dt><dd>{good}</dd></div>}
          {ownLimits === undefined ? null : <div><dt>{t('checklists.own.adds')}</dt><dd>{t('checklists.own.limits', item.requirement.params)}</dd></div>}
          {adds === undefined ? null : <div><dt>{t('checklists.own.adds')}</dt><dd>{adds}</dd></div>}
        </dl>
      )}
    </>
  );
}

/** Why, for the crew and for whoever asks them at the fence; folded, because it is read once. */
export function Whys({ item }: { readonly item: ChecklistItem }) {
  const text = useText();
  const { t } = text;
  const [why, home] = [line(text, item, 'whyCrew'), line(text, item, 'whyHome')];
  if (why === null && home === null) return null;
  return (
    <details className="fold">
      <summary>{t('checklists.whys')}</summary>
      <dl className="item-good">
        {why === null ? null : <div><dt>{t('checklists.why')}</dt><dd>{why}</dd></div>}
        {home === null ? null : <div><dt>{t('checklists.whyHome')}</dt><dd>{home}</dd></div>}
      </dl>
    </details>
  );
}
