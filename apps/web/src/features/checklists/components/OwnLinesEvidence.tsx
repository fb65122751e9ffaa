import { privateStates } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { Choices } from '../../../components/Choices.tsx';
import { usePrivateLines } from '../../../hooks/usePrivateLines.ts';
import { useText } from '../../../lib/reader.tsx';
import { factsOf } from '../model/evidence.ts';
import { linesAsked, ownLineWords } from '../model/ownLines.ts';
import type { EvidenceProps } from './Evidence.tsx';

/**
 * The homeowner's own lines, each answered by a press that is kept at once; "not known" is an answer too. What was told to the office, or is not known, is one press for all
 * that is open. "Not there" is said of each line by itself: what is not there is not looked for.
 */
export function OwnLinesEvidence({ list, view, record }: EvidenceProps) {
  const { t } = useText();
  const known = usePrivateLines(list.jobId);
  const lines = linesAsked(view.item.requirement.texts).map(({ name, question }) => {
    const told = factsOf(view, 'written').findLast((fact) => fact.name === name)?.text ?? null;
    const office = known?.find((line) => line.question === question && line.at !== null)?.state ?? null;
    return { name, question, office, state: privateStates.find((one) => one === told) ?? null };
  });
  const open = lines.filter(({ state }) => state === null);
  const inOffice = open.flatMap(({ name, office }) => (office === null ? [] : [{ name, text: office }]));
  const write = (answers: readonly { readonly name: string; readonly text: string }[]) => record.record(answers.map(({ name, text }) => ({ kind: 'written', name, text })));
  return (
    <section className="stack own-lines">
      <p>{t('checklists.private.ask')}</p>
      {lines.map(({ name, question, office, state }) => (
        <div key={name} className="own-line" data-text={name}>
          <Choices look="crew" label={state === null && office !== null ? t('checklists.private.toldOffice', { line: `checklists.private.${question}`, state: ownLineWords(question, office) }) : t(`checklists.private.${question}`)} value={state} onChange={(text) => write([{ name, text }])}
            choices={privateStates.map((value) => ({ value, label: t(ownLineWords(question, value)) }))} />
        </div>
      ))}
      {inOffice.length > 0 ? <Button size="crew" wide disabled={record.busy} onClick={() => write(inOffice)}>{t('checklists.private.restOffice')}</Button> : null}
      {open.length > 1 ? <Button size="crew" wide disabled={record.busy} onClick={() => write(open.map(({ name }) => ({ name, text: 'unknown' })))}>{t('checklists.private.restUnknown')}</Button> : null}
    </section>
  );
}
