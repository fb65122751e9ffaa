import { lineOf, measureCode, profileValue, type FieldFact, ownLineAnswer, plateCode } from '@yardfall/contracts';
import { useText, type Text } from '../../../lib/reader.tsx';
import { ownLineWords } from '../model/ownLines.ts';
import { writtenAs } from '../model/judge.ts';
import { reasonSentence } from '../model/sentences.ts';
import type { ItemView } from '../model/view.ts';

/** What was recorded of the item, the newest first; what does not count says why. */
export function Record({ view }: { readonly view: ItemView }) {
  const text = useText();
  const { t, say } = text;
  if (view.item.facts.length === 0) return null;
  return (
    <>
      {view.notCounted.length > 0 ? <ul className="stack">{view.notCounted.map((stored) => <li key={stored.fact.id} className="field-error">{reasonSentence(say, stored)}</li>)}</ul> : null}
      <details className="fold">
        <summary>{t('checklists.record', { n: view.item.facts.length })}</summary>
        <ol className="item-record">
          {view.item.facts.toReversed().map((stored) => (
            <li key={stored.fact.id}>
              <span>{factWords(stored.fact, view, text)}</span>
              <span className="faint">{t('checklists.recordBy', { by: stored.by, at: stored.fact.deviceTime })}</span>
            </li>
          ))}
        </ol>
      </details>
    </>
  );
}

/** What a fact of a step says, in words. */
export function useFactWords(view: ItemView): (fact: FieldFact) => string {
  const text = useText();
  return (fact) => factWords(fact, view, text);
}

function factWords(fact: FieldFact, { item }: ItemView, { t, q }: Text): string {
  switch (fact.kind) {
    case 'measured': {
      const quantity = item.requirement.measures.find(({ name }) => name === fact.name)?.quantity;
      return t('checklists.fact.measured', { measure: measureCode(fact.name), value: quantity === undefined ? String(fact.value) : quantity === 'check' ? t(fact.value === 1 ? 'checklists.check.yes' : 'checklists.check.no') : q(writtenAs[quantity], fact.value) });
    }
    case 'profile': {
      const slope = profileValue(fact, 'slope', lineOf(item.requirement));
      return slope === null ? t('checklists.fact.profilePart', { count: fact.shots.length }) : t('checklists.fact.profile', { count: fact.shots.length, slope });
    }
    case 'signed': return t('checklists.fact.signed', { name: fact.name, signer: `checklists.signer.${fact.signer}` });
    case 'written': {
      const answer = ownLineAnswer(fact);
      return t('checklists.fact.written', { what: plateCode(fact.name), value: answer === null ? fact.text : t(ownLineWords(answer.question, answer.state)) });
    }
    case 'document': return t('checklists.documentIs', { reference: fact.reference });
    case 'failed': case 'struck': case 'notApplicable': case 'waived': return t(`checklists.fact.${fact.kind}`, { reason: fact.reason });
    case 'corrected': return t('checklists.fact.corrected', { reason: fact.note });
    default: return t(`checklists.fact.${fact.kind}`);
  }
}
