import { foldSurvey, surveys, type FoldedEntry, type Job } from '@yardfall/contracts';
import { useQueries } from '@tanstack/react-query';
import { Button } from '../../../components/Button.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useKeepSurveyFact } from '../../../hooks/useRecord.ts';
import { useSurveyFacts } from '../../../hooks/useSurveyFacts.ts';
import { read } from '../../../lib/query.ts';
import { useText } from '../../../lib/reader.tsx';
import { chosen, linesOf, type ChoiceLine } from '../model/entries.ts';
import './Waits.css';

/** Entries of which two phones said different things, side by side; a person chooses. */
export function Disputes({ jobs }: { readonly jobs: readonly Pick<Job, 'id'>[] }) {
  const { t } = useText();
  const answers = useQueries({ queries: jobs.map(({ id }) => read(surveys.list, { params: { jobId: id } })) });
  const disputed = answers.flatMap(({ data }) => data?.data.items.filter((survey) => survey.disputed.length > 0) ?? []);
  if (disputed.length === 0) return <p className="faint">{t('ui.waits.noDispute')}</p>;
  return disputed.map(({ id, jobId, name }) => <DisputesOf key={id} jobId={jobId} surveyId={id} name={name} />);
}

function DisputesOf({ jobId, surveyId, name }: { readonly jobId: string; readonly surveyId: string; readonly name: string }) {
  const survey = useSurveyFacts(jobId).surveys.find(({ id }) => id === surveyId);
  const entries = survey === undefined ? [] : foldSurvey(survey.facts, survey.base).entries.filter(({ disputed }) => disputed);
  return <section><h3>{name}</h3>{entries.map((entry) => <Dispute key={entry.key} jobId={jobId} surveyId={surveyId} entry={entry} />)}</section>;
}

function Dispute({ jobId, surveyId, entry }: { readonly jobId: string; readonly surveyId: string; readonly entry: FoldedEntry }) {
  const { t, say } = useText();
  const { mutate, isPending, error } = useKeepSurveyFact(jobId, surveyId);
  return (
    <div className="dispute" role="group" aria-label={say(`ui.waits.entry.${entry.kind}`)}>
      {entry.choices.map((choice) => (
        <div key={choice.facts.join()} className="dispute-side">
          <ul>{linesOf(choice).map((line, at) => <li key={at}><Line line={line} /></li>)}</ul>
          <Button size="crew" wide busy={isPending} onClick={() => mutate(chosen(entry, choice))}>{t('ui.waits.takeThis')}</Button>
        </div>
      ))}
      <ProblemNotice problem={error} />
    </div>
  );
}

function Line({ line }: { readonly line: ChoiceLine }) {
  const { say, q } = useText();
  if (line.kind === 'text') return line.value;
  return line.kind === 'code' ? say(line.value) : <span className="figure">{q('level', line.value)}</span>;
}
