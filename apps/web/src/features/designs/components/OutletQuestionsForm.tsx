import type { Answer, Outlet } from '@yardfall/calc';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { questions } from '../model/openQuestions.ts';

const answers: readonly Answer[] = ['yes', 'no', 'unknown', 'notApplicable'];

/** O1 to O10: where the water goes, who owns that spot, who allowed it. An unknown keeps the design provisional. */
export function OutletQuestionsForm({ outlet, set }: { readonly outlet: Outlet; readonly set: (path: readonly string[], value: unknown) => void }) {
  const { t } = useText();
  const choices = answers.map((answer) => ({ value: answer, label: t(`designs.answer.${answer}`) }));
  return (
    <fieldset className="part-questions">
      <legend>{t('designs.outletQuestions')}</legend>
      <p className="field-hint">{t('designs.outletQuestionsWhy')}</p>
      {questions.map((question, at) => (
        <Select key={question} label={`O${String(at + 1)}. ${t(`designs.question.${question}`)}`} choices={choices} value={outlet.questions[question]} onChange={(answer) => set(['questions', question], answer)} />
      ))}
    </fieldset>
  );
}
