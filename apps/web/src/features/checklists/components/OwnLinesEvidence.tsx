import { privateStates } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { Choices } from '../../../components/Choices.tsx';
import { usePrivateLines } from '../../../hooks/usePrivateLines.ts';
import { useText } from '../../../lib/reader.tsx';
import { factsOf } from '../model/evidence.ts';
import { linesAsked, ownLineWords } from '../model/ownLines.ts';
import type { EvidenceProps } from './Evidence.tsx';

/** The homeowner's own lines, each answered by a press that is kept at once; "not known" is an answer too. */
export function OwnLinesEvidence({ list, view, record }: EvidenceProps) {
  const { t } = useText();
  const known = usePrivateLines(list.jobId);
  return (
    <section className="stack own-lines">
      <p>{t('checklists.private.ask')}</p>
      {linesAsked(view.item.requirement.texts).map(({ name, question }) => {
        const told = factsOf(view, 'written').findLast((fact) => fact.name === name)?.text ?? null;
        const state = privateStates.find((one) => one === told) ?? null;
        const office = known?.find((line) => line.question === question);
        const say = (answer: string) => record.record([{ kind: 'written', name, text: answer }]);
        return (
          <div key={name} className="own-line" data-text={name}>
            <Choices look="crew" label={t(`checklists.private.${question}`)} value={state} onChange={say} choices={privateStates.map((value) => ({ value, label: t(ownLineWords(question, value)) }))} />
            {state === null && office && office.at !== null ? <Button kind="text" size="crew" onClick={() => say(office.state)}>{t('checklists.private.asOffice', { state: ownLineWords(question, office.state) })}</Button> : null}
          </div>
        );
      })}
    </section>
  );
}
