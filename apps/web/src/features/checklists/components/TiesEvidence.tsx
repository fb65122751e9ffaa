import { lacks, tieFrom, tiesOf, type Tied } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { Typing } from '../api/useStepDraft.ts';
import { factsOf, lastMeasured } from '../model/evidence.ts';
import type { EvidenceProps } from './Evidence.tsx';
import { TextEvidence } from './TextEvidence.tsx';

const figures = ['level', 'one', 'two'] as const;

/** Where each buried part lies, so that it can be found again: the two fixed points, then part by part what still lacks. */
export function TiesEvidence(props: EvidenceProps & { readonly typing: Typing }) {
  const { t } = useText();
  const { list, view } = props;
  const ties = tiesOf(list.items.map(({ item, facts }) => ({ template: item.template, part: item.part, requirement: item.requirement, facts })));
  const [open, setOpen] = useState<string | null>(null);
  if (ties === null) return null;
  const shownOpen = open ?? ties.parts.find(lacks)?.part ?? null;
  return (
    <section className="stack ties">
      <p>{t('checklists.ties.from')}</p>
      {tieFrom.map((name) => <TextEvidence key={name} view={view} typing={props.typing} name={name} />)}
      <p className="notice-title">{t('checklists.ties.parts')}</p>
      {ties.parts.map((tied) => (
        <div key={tied.part} className="tied" data-tied={tied.part}>
          <button type="button" className="tied-row" aria-expanded={shownOpen === tied.part} onClick={() => setOpen(shownOpen === tied.part ? '' : tied.part)}><TiedRow tied={tied} /></button>
          {shownOpen === tied.part ? <TiedForm {...props} tied={tied} asksShot={view.item.requirement.measures.some(({ name }) => name === `shot:${tied.part}`)} onDone={() => setOpen(null)} /> : null}
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

interface TiedFormProps extends EvidenceProps {
  readonly tied: Tied;
  readonly asksShot: boolean;
  readonly onDone: () => void;
}

function TiedForm({ view, record, tied, asksShot, onDone }: TiedFormProps) {
  const { t } = useText();
  const names = [...(asksShot ? ['shot'] : []), 'tieOne', 'tieTwo'] as const;
  const [typed, setTyped] = useState<Readonly<Record<string, number | null>>>(() => Object.fromEntries(names.map((name) => [name, lastMeasured(view, `${name}:${tied.part}`)])));
  const points = tieFrom.map((name) => factsOf(view, 'written').findLast((fact) => fact.name === name)?.text ?? null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    record.record(names.flatMap((name) => {
      const value = typed[name] ?? null;
      return value === null || value === lastMeasured(view, `${name}:${tied.part}`) ? [] : [{ kind: 'measured' as const, name: `${name}:${tied.part}`, value }];
    }), onDone);
  };
  const field = (name: 'shot' | 'tieOne' | 'tieTwo', hint: string | null) => (
    <LengthField key={name} kind={name === 'shot' ? 'level' : 'length'} label={t(`checklists.measure.${name}`)} {...(hint === null ? {} : { hint })} value={typed[name] ?? null} onChange={(value) => setTyped({ ...typed, [name]: value })} />
  );
  return (
    <form className="stack" onSubmit={submit}>
      <p className="faint">{t(`checklists.ties.at.${tied.at}`)}</p>
      {asksShot ? field('shot', null) : <p className="faint">{t(tied.level === null ? 'checklists.ties.shotMissing' : 'checklists.ties.shotBefore')}</p>}
      {field('tieOne', points[0] ?? null)}
      {field('tieTwo', points[1] ?? null)}
      <Button type="submit" kind="main" size="crew" wide disabled={record.busy || names.every((name) => (typed[name] ?? null) === null)}>{t('checklists.ties.record')}</Button>
    </form>
  );
}
