import type { SurveyContent } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Choices } from '../../../components/Choices.tsx';
import { TextField } from '../../../components/Field.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useStoreSurvey } from '../api/surveys.ts';
import { tidied } from '../model/content.ts';
import { DrainTests } from './DrainTests.tsx';
import { LevelBook } from './LevelBook.tsx';
import { PointRoles } from './PointRoles.tsx';
import { StageArea } from './StageArea.tsx';
import './surveys.css';

interface SurveyFormProps {
  readonly jobId: string;
  readonly surveyId: string | null;
  readonly version: number;
  readonly name: string;
  readonly content: SurveyContent;
  readonly onDone: () => void;
}

/** The level book and the tests of one visit. */
export function SurveyForm({ jobId, surveyId, version, name: given, content: stored, onDone }: SurveyFormProps) {
  const { t } = useText();
  const [name, setName] = useState(given);
  const [content, setContent] = useState(stored);
  const store = useStoreSurvey(jobId);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    store.mutate({ surveyId, version, body: { name, content: tidied(content) } }, { onSuccess: onDone });
  };
  const book = content.levelBook;
  return (
    <form className="stack" onSubmit={submit} aria-label={t('surveys.form')}>
      <TextField label={t('surveys.name')} value={name} required onChange={(event) => setName(event.target.value)} />
      <Choices label={t('surveys.mode')} value={book.mode} onChange={(mode) => setContent({ ...content, levelBook: { ...book, mode } })}
        choices={[{ value: 'heightOfInstrument', label: t('surveys.mode.heightOfInstrument') }, { value: 'direct', label: t('surveys.mode.direct') }]} />
      <div className="row">
        <TextField label={t('surveys.benchMark')} value={book.benchMark.name} required onChange={(event) => setContent({ ...content, levelBook: { ...book, benchMark: { ...book.benchMark, name: event.target.value } } })} />
        <LengthField label={t('surveys.benchMarkLevel')} kind="level" value={book.benchMark.level} required
          onChange={(level) => { if (level !== null) setContent({ ...content, levelBook: { ...book, benchMark: { ...book.benchMark, level } } }); }} />
      </div>
      <Heading level={3}>{t('surveys.book')}</Heading>
      <LevelBook content={content} onChange={setContent} />
      <Heading level={3}>{t('surveys.roles')}</Heading>
      <PointRoles content={content} onChange={setContent} />
      <Heading level={3}>{t('surveys.stageArea')}</Heading>
      <StageArea content={content} onChange={setContent} />
      <Heading level={3}>{t('surveys.drains')}</Heading>
      <DrainTests content={content} onChange={setContent} />
      <ProblemNotice problem={store.error} />
      <div className="row">
        <Button type="submit" kind="main" busy={store.isPending}>{t('surveys.store')}</Button>
        <Button kind="text" onClick={onDone}>{t('ui.cancel')}</Button>
      </div>
    </form>
  );
}
