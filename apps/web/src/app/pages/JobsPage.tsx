import { jobs } from '@yardfall/contracts';
import { useDeferredValue, useState } from 'react';
import { Page } from '../../components/Page.tsx';
import { AllJobs } from '../../features/jobs/index.ts';
import { usePages } from '../../hooks/usePages.ts';
import { useText } from '../../lib/reader.tsx';

/** Every job that the reader may see, also the finished ones, found by any words of it. */
export function JobsPage() {
  const { t } = useText();
  const [words, setWords] = useState('');
  const asked = useDeferredValue(words.trim());
  const list = usePages(jobs.list, { query: { limit: 50, ...(asked === '' ? {} : { words: asked }) } });
  return (
    <Page title={t('jobs.all')}>
      <AllJobs list={list} words={words} onWords={setWords} />
    </Page>
  );
}
