import type { BuiltInLocateRule, locateRuleSets, ResponseOf, SignedLocateRule } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import { useRuleSets } from '../api/rules.ts';
import { CountedBy, CountedToo } from './CountedBy.tsx';
import { RuleForm } from './RuleForm.tsx';

type Sets = ResponseOf<typeof locateRuleSets.list>;

/** What the locate clocks are counted by, state by state, each with its source and date. Without one nobody may dig there. */
export function RuleSets() {
  const { t } = useText();
  const { may } = useMe();
  const { data, error, isPending } = useRuleSets();
  const [adding, setAdding] = useState(false);
  if (isPending) return <Loading what={t('locates.rules.loading')} />;
  return (
    <section className="stack" aria-labelledby="locate-rules">
      <Heading id="locate-rules">{t('locates.rules')}</Heading>
      <p className="measure">{t('locates.rules.lead')}</p>
      <ProblemNotice problem={error} />
      {data ? <BuiltIn sets={data.data} /> : null}
      {data?.data.entered.map((signed) => <Signed key={signed.id} signed={signed} />)}
      {!may('company.manage') ? <p className="faint">{t('locates.rules.ownerOnly')}</p>
        : adding ? <RuleForm onDone={() => setAdding(false)} />
          : <div><Button onClick={() => setAdding(true)}>{t('locates.rules.add')}</Button></div>}
    </section>
  );
}

function BuiltIn({ sets: { builtIn, unconfirmed, entered } }: { readonly sets: Sets }) {
  const { t, say } = useText();
  const signed = new Set(entered.map(({ rule }) => rule.state));
  const open = unconfirmed.filter(({ state }) => !signed.has(state));
  return (
    <>
      <Table stacks caption={t('locates.rules.builtIn')}
        columns={[{ key: 'state', head: t('ui.state') }, { key: 'counted', head: t('locates.rules.counted') }, { key: 'source', head: t('locates.rules.source') }]}
        rows={builtIn.map((rule) => ({
          key: rule.version,
          cells: {
            state: <span>{signed.has(rule.state) ? t('locates.rules.replaced', { state: rule.state }) : rule.state}<Requests rule={rule} /></span>,
            counted: <><CountedBy rule={rule} /><details className="fold"><summary>{t('locates.rules.more')}</summary><CountedToo rule={rule} holidays={rule.holidays} /></details></>,
            source: <span>{rule.source}<span className="faint ticket-note">{t('locates.rules.asOf', { day: rule.asOf })}</span>{rule.undated ? <span className="faint ticket-note">{t('locates.rule.check')}</span> : null}</span>,
          },
        }))} />
      {open.length === 0 ? null : (
        <Notice severity="caution" title={t('locates.rules.unconfirmed')}>
          <ul className="ticket-history">{open.map(({ state }) => <li key={state}>{t('locates.rules.open', { state, why: say(`locates.rules.why.${state}`) })}</li>)}</ul>
        </Notice>
      )}
    </>
  );
}

/** A law that changes has two rule sets, told apart by the day of the request. */
function Requests({ rule: { from, until } }: { readonly rule: BuiltInLocateRule }) {
  const { t } = useText();
  if (from === null && until === null) return null;
  const parts = [from === null ? '' : t('locates.rules.since', { day: from }), until === null ? '' : t('locates.rules.upTo', { day: until })];
  return <span className="faint ticket-note">{t('locates.rules.forRequests', { from: parts[0] ?? '', until: parts[1] ?? '' })}</span>;
}

function Signed({ signed: { rule, signedName, at, inForce } }: { readonly signed: SignedLocateRule }) {
  const { t, q } = useText();
  return (
    <article className="stack">
      <Heading level={3} aside={inForce ? t('locates.rules.inForce') : t('locates.rules.before')}>{t('locates.rules.of', { state: rule.state })}</Heading>
      <CountedBy rule={rule} />
      <p className="faint">{rule.received === null ? t('locates.rules.anyHour') : t('locates.rules.hoursOf', rule.received)}</p>
      <p className="faint">{t('locates.rules.signedBy', { name: signedName, at, source: rule.source, readOn: q('date', rule.readOn) })}</p>
    </article>
  );
}
