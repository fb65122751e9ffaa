import { asBuiltDocument, type DesignDocument, type Evaluation, type Pipe, type PipeShot } from '@yardfall/calc';
import { builtFrom, designs, type Built } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useMemo, useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { read } from '../../../lib/query.ts';
import { useText } from '../../../lib/reader.tsx';
import { factsOf } from '../model/evidence.ts';
import { designedAt, firstRows, judgeProfile, readRows, withRow, type ShotRow } from '../model/profile.ts';
import type { EvidenceProps } from './Evidence.tsx';
import { ProfileAsBuilt } from './ProfileAsBuilt.tsx';
import { ProfileVerdict } from './ProfileVerdict.tsx';

/** The inverts of a laid pipe, judged and put into the design while they are typed. */
export function ProfileEvidence(props: EvidenceProps) {
  const { list, view } = props;
  const { t } = useText();
  const revision = useQuery(read(designs.read, { params: { jobId: list.jobId, revisionId: list.revisionId } }));
  const document = (revision.data?.data.document ?? null) as DesignDocument | null;
  const pipe = document?.system.parts.find((part): part is Pipe => part.kind === 'pipe' && part.id === view.item.part);
  if (document === null || pipe === undefined) return <Loading what={t('checklists.profile.title')} />;
  return <Profile {...props} document={document} designed={(revision.data?.data.evaluation ?? null) as Evaluation | null} pipe={pipe} />;
}

interface ProfileProps extends EvidenceProps {
  readonly document: DesignDocument;
  readonly designed: Evaluation | null;
  readonly pipe: Pipe;
}

function Profile({ list, view, record, document, designed, pipe }: ProfileProps) {
  const { t } = useText();
  const recorded = factsOf(view, 'profile').at(-1)?.shots ?? null;
  const [rows, setRows] = useState<readonly ShotRow[]>(recorded ?? firstRows(pipe));
  const [typed, setTyped] = useState(false);
  const reading = readRows(rows);
  const shots = reading.state === 'whole' ? reading.shots : null;
  const built = useBuilt(document, list, pipe, shots);
  const change = (next: readonly ShotRow[]) => { setRows(next); setTyped(true); };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (shots !== null) record.record({ kind: 'profile', shots: shots.map(({ at, level }) => ({ at, level })) }, () => setTyped(false));
  };
  return (
    <form className="stack evidence" onSubmit={submit} aria-label={t('checklists.profile.title')}>
      <p className="faint">{t('checklists.profile.why')}</p>
      <ol className="shots">{rows.map((row, at) => <Shot key={at} n={at + 1} row={row} pipe={pipe} onChange={(next) => change(rows.map((one, i) => (i === at ? next : one)))} onDrop={rows.length > 2 ? () => change(rows.filter((_, i) => i !== at)) : null} />)}</ol>
      <div className="row"><Button size="crew" onClick={() => change(withRow(rows))}>{t('checklists.profile.add')}</Button></div>
      {reading.state === 'order' ? <p className="field-error" role="alert">{t('checklists.profile.order')}</p> : null}
      {shots === null ? null : (
        <div className="stack" aria-live="polite">
          <ProfileVerdict verdict={judgeProfile(pipe, shots, view.item.requirement)} />
          <ProfileAsBuilt document={document} designed={designed} built={built} />
        </div>
      )}
      <Button type="submit" size="crew" wide disabled={shots === null || !typed || record.busy}>{t('checklists.profile.record')}</Button>
    </form>
  );
}

/** The design with all that was shot, and with what is typed of this pipe. */
function useBuilt(document: DesignDocument, list: EvidenceProps['list'], pipe: Pipe, shots: readonly PipeShot[] | null): DesignDocument {
  const known = useMemo(() => builtFrom(document, list.items.map(({ item, facts }) => ({ part: item.part, facts }))), [document, list]);
  const others = known.pipes.filter(({ part }) => part !== pipe.id);
  const built: Built = { levels: known.levels, pipes: shots === null ? known.pipes : [...others, { part: pipe.id, shots }] };
  const key = JSON.stringify(built);
  // oxlint-disable-next-line react-hooks/exhaustive-deps -- the list is a new one every minute; the text of what was shot tells whether that changed
  return useMemo(() => asBuiltDocument(document, built.levels, built.pipes), [document, key]);
}

interface ShotProps {
  readonly n: number;
  readonly row: ShotRow;
  readonly pipe: Pipe;
  readonly onChange: (row: ShotRow) => void;
  readonly onDrop: (() => void) | null;
}

function Shot({ n, row, pipe, onChange, onDrop }: ShotProps) {
  const { t } = useText();
  return (
    <li>
      <fieldset className="shot">
        <legend>{t('checklists.profile.shot', { n })}</legend>
        <LengthField kind="length" label={t('checklists.profile.at')} value={row.at} onChange={(at) => onChange({ ...row, at })} />
        <LengthField kind="level" label={t('checklists.profile.level')} hint={row.at === null ? undefined : t('checklists.profile.designed', { level: designedAt(pipe, row.at) })} value={row.level} onChange={(level) => onChange({ ...row, level })} />
        {onDrop === null ? null : <Button kind="text" size="crew" onClick={onDrop}>{t('checklists.profile.drop', { n })}</Button>}
      </fieldset>
    </li>
  );
}
