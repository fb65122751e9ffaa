import { lacks, tieFrom, tiesOf, type Tied } from '@yardfall/contracts';
import { useState } from 'react';
import { LengthField } from '../../../components/LengthField.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { Typing } from '../api/useStepDraft.ts';
import { factsOf, lastMeasured } from '../model/evidence.ts';
import type { EvidenceProps } from './Evidence.tsx';
import { TextEvidence } from './TextEvidence.tsx';

const figures = ['level', 'one', 'two'] as const;

/** Where each buried part lies, so that it can be found again: the two fixed points, then every part that still lacks something, one under the other; one press at the end records all of it. */
export function TiesEvidence({ list, view, typing }: EvidenceProps & { readonly typing: Typing }) {
  const { t } = useText();
  const ties = tiesOf(list.items.map(({ item, facts }) => ({ template: item.template, part: item.part, requirement: item.requirement, facts })));
  const [opened, setOpened] = useState<readonly string[]>([]);
  if (ties === null) return null;
  const turn = (part: string) => setOpened(opened.includes(part) ? opened.filter((one) => one !== part) : [...opened, part]);
  return (
    <section className="stack ties">
      <p>{t('checklists.ties.from')}</p>
      {tieFrom.map((name) => <TextEvidence key={name} view={view} typing={typing} name={name} />)}
      <p className="notice-title">{t('checklists.ties.parts')}</p>
      {ties.parts.map((tied) => (
        <div key={tied.part} className="tied" data-tied={tied.part}>
          {lacks(tied) ? <p className="tied-name"><TiedRow tied={tied} /></p> : <button type="button" className="tied-row" aria-expanded={opened.includes(tied.part)} onClick={() => turn(tied.part)}><TiedRow tied={tied} /></button>}
          {lacks(tied) || opened.includes(tied.part) ? <TiedFields view={view} typing={typing} tied={tied} /> : null}
        </div>
      ))}
    </section>
  );
}

function TiedRow({ tied }: { readonly tied: Tied }) {
  const { t } = useText();
  const missing = figures.filter((figure) => tied[figure] === null).map((figure) => t(`checklists.ties.lack.${figure}`));
  const { level, one, two } = tied;
  return (
    <>
      <span>{tied.name}</span>
      {level === null || one === null || two === null
        ? <span className="tied-lacks">{t('checklists.ties.lacks', { what: missing.join(', ') })}</span>
        : <span className="tied-complete"><span aria-hidden="true">{'✓'}</span> {t('checklists.ties.complete', { level, one, two })}</span>}
    </>
  );
}

interface TiedFieldsProps extends Pick<EvidenceProps, 'view'> {
  readonly typing: Typing;
  readonly tied: Tied;
}

function TiedFields({ view, typing: { draft, change }, tied }: TiedFieldsProps) {
  const { t } = useText();
  const asksShot = view.item.requirement.measures.some(({ name }) => name === `shot:${tied.part}`);
  const points = tieFrom.map((name) => draft.texts[name] ?? factsOf(view, 'written').findLast((fact) => fact.name === name)?.text ?? null);
  const field = (what: 'shot' | 'tieOne' | 'tieTwo', hint: string | null) => {
    const name = `${what}:${tied.part}`;
    const set = (value: number | null) => {
      const { [name]: _, ...rest } = draft.values;
      change({ values: value === null ? rest : { ...rest, [name]: value } });
    };
    return <LengthField key={name} kind={what === 'shot' ? 'level' : 'length'} label={t(`checklists.measure.${what}`)} {...(hint === null ? {} : { hint })} value={draft.values[name] ?? lastMeasured(view, name)} onChange={set} />;
  };
  return (
    <div className="stack tied-fields">
      <p className="faint">{t(`checklists.ties.at.${tied.at}`)}</p>
      {asksShot ? field('shot', null) : <p className="faint">{t(tied.level === null ? 'checklists.ties.shotMissing' : 'checklists.ties.shotBefore')}</p>}
      {field('tieOne', points[0] ?? null)}
      {field('tieTwo', points[1] ?? null)}
    </div>
  );
}
