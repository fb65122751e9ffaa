import type { DesignDocument, PlanShape, Utility } from '@yardfall/calc';
import { company, defaultSettings, type DraftOperation, jobs, locateRuleSets } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { Button } from '../../../../components/Button.tsx';
import { LengthField } from '../../../../components/LengthField.tsx';
import { Notice } from '../../../../components/Notice.tsx';
import { Select } from '../../../../components/Select.tsx';
import { read } from '../../../../lib/query.ts';
import { useText } from '../../../../lib/reader.tsx';
import { changeUtility, utilityFrom } from '../../model/plan/operations.ts';
import { isNarrower, stateStrip, type StateStrip } from '../../model/plan/stateStrip.ts';

interface UtilityFieldsProps {
  readonly document: DesignDocument;
  readonly shape: PlanShape;
  readonly edit: (operations: readonly DraftOperation[]) => void;
}

const kinds = ['power', 'gas', 'communication', 'water', 'reclaimed', 'sewer', 'private'] as const satisfies readonly Utility['kind'][];

/** What a marked line is, how wide the strip is that is dug by hand, and how high its top lies. */
export function UtilityFields({ document, shape, edit }: UtilityFieldsProps) {
  const { t } = useText();
  const { data } = useQuery(read(company.read));
  const { state, strip } = useStateStrip();
  const usual = Math.max(data?.data.settings.handDigTolerance ?? defaultSettings.handDigTolerance, strip?.tolerance ?? 0);
  const utility = document.site.utilities.find(({ id }) => id === shape.of);
  if (utility === undefined) {
    return <div className="plan-wide stack"><p>{t('plan.utility.why')}</p><div><Button kind="main" onClick={() => edit(utilityFrom(document, shape, usual))}>{t('plan.utility.make', { tolerance: usual })}</Button></div></div>;
  }
  return (
    <>
      <Select label={t('plan.utility.kind')} value={utility.kind} onChange={(kind) => edit(changeUtility(utility.id, 'kind', kind))} choices={kinds.map((value) => ({ value, label: t(`plan.utility.kind.${value}`) }))} />
      <LengthField kind="height" label={t('plan.utility.tolerance')} hint={t('plan.utility.toleranceHint')} value={utility.tolerance} onChange={(tolerance) => { if (tolerance !== null && tolerance >= 0) edit(changeUtility(utility.id, 'tolerance', tolerance)); }} />
      {strip === null ? null : <p className="plan-wide faint">{t(`plan.utility.rule.${strip.from}`, { state, tolerance: strip.tolerance })}</p>}
      {strip !== null && isNarrower(utility.tolerance, strip) ? (
        <Notice severity="caution" title={t('plan.utility.narrow')}><Button onClick={() => edit(changeUtility(utility.id, 'tolerance', strip.tolerance))}>{t('plan.utility.widen', { tolerance: strip.tolerance })}</Button></Notice>
      ) : null}
      <LengthField kind="level" optional label={t('plan.utility.level')} value={utility.level} onChange={(level) => edit(changeUtility(utility.id, 'level', level))} />
    </>
  );
}

/** What the rule of the property's state asks for each side of a line. */
function useStateStrip(): { readonly state: string; readonly strip: StateStrip | null } {
  const { jobId = '' } = useParams({ strict: false });
  const job = useQuery({ ...read(jobs.read, { params: { jobId } }), enabled: jobId !== '' }).data?.data;
  const rules = useQuery(read(locateRuleSets.list)).data?.data;
  const state = job?.property.state ?? '';
  return { state, strip: rules === undefined || state === '' ? null : stateStrip(rules, state) };
}
