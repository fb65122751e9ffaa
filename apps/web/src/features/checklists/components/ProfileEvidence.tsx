import { asBuiltDocument, type DesignDocument, type Evaluation, type Pipe, type PipeShot } from '@yardfall/calc';
import { builtFrom, designs, wholeShots, type Built } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { Button } from '../../../components/Button.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { read } from '../../../lib/query.ts';
import { useText } from '../../../lib/reader.tsx';
import type { Instrument } from '../api/useInstrument.ts';
import type { Typing } from '../api/useStepDraft.ts';
import { factsOf } from '../model/evidence.ts';
import { designedAt, firstRows, isWholePipe, judgeProfile, placeOf, readRows, withRow, type ShotRow } from '../model/profile.ts';
import type { ChecklistView, ItemView } from '../model/view.ts';
import { LevelField } from './LevelField.tsx';
import { ProfileAsBuilt } from './ProfileAsBuilt.tsx';
import { ProfilePicture } from './ProfilePicture.tsx';
import { ProfileVerdict } from './ProfileVerdict.tsx';

interface ProfileEvidenceProps {
  readonly list: ChecklistView;
  readonly view: ItemView;
  readonly typing: Typing;
  readonly instrument: Instrument;
}

/** The inverts of a laid pipe, judged and put into the design while they are typed. */
export function ProfileEvidence(props: ProfileEvidenceProps) {
  const { list, view } = props;
  const { t } = useText();
  const revision = useQuery(read(designs.read, { params: { jobId: list.jobId, revisionId: list.revisionId } }));
  const document = (revision.data?.data.document ?? null) as DesignDocument | null;
  const pipe = document?.system.parts.find((part): part is Pipe => part.kind === 'pipe' && part.id === view.item.part);
  if (document === null || pipe === undefined) return <Loading what={t('checklists.profile.title')} />;
  return <Profile {...props} document={document} designed={(revision.data?.data.evaluation ?? null) as Evaluation | null} pipe={pipe} />;
}

interface ProfileProps extends ProfileEvidenceProps {
  readonly document: DesignDocument;
  readonly designed: Evaluation | null;
  readonly pipe: Pipe;
}

function Profile({ list, view, typing, instrument, document, designed, pipe }: ProfileProps) {
  const { t } = useText();
  const { requirement } = view.item;
  const rows = typing.draft.rows ?? factsOf(view, 'profile').at(-1)?.shots ?? firstRows(pipe, requirement);
  const reading = readRows(rows);
  const shots = reading.state === 'whole' ? reading.shots : null;
  const built = useBuilt(document, list, pipe, shots);
  const change = (next: readonly ShotRow[]) => typing.change({ rows: next });
  return (
    <div role="group" className="stack evidence" aria-label={t('checklists.profile.title')}>
      <p className="faint">{t('checklists.profile.why')}</p>
      <ol className="shots">
        {rows.map((row, at) => (
          <Shot key={`${String(rows.length)} ${String(at)}`} n={at} rows={rows} row={row} pipe={pipe} instrument={instrument} onChange={(next) => change(rows.map((one, i) => (i === at ? next : one)))} onDrop={at > 0 && at < rows.length - 1 ? () => change(rows.filter((_, i) => i !== at)) : null} />
        ))}
      </ol>
      <div className="row"><Button size="crew" onClick={() => change(withRow(rows))}>{t('checklists.profile.add')}</Button></div>
      {reading.state === 'order' ? <p className="field-error" role="alert">{t('checklists.profile.order')}</p> : null}
      {shots === null ? null : <Shown pipe={pipe} shots={shots} view={view} document={document} designed={designed} built={built} />}
    </div>
  );
}

interface ShownProps extends Pick<ProfileProps, 'pipe' | 'view' | 'document' | 'designed'> {
  readonly shots: readonly PipeShot[];
  readonly built: DesignDocument;
}

/** What the shots show: a part of the pipe is drawn and named where it is wrong, the whole is judged. */
function Shown({ pipe, shots, view, document, designed, built }: ShownProps) {
  const verdict = judgeProfile(pipe, shots, view.item.requirement);
  return (
    <div className="stack" aria-live="polite">
      <ProfileVerdict verdict={verdict} isWhole={isWholePipe(view.item.requirement, shots)} />
      <ProfilePicture pipe={pipe} shots={shots} built={verdict.built} />
      <ProfileAsBuilt document={document} designed={designed} built={built} />
    </div>
  );
}

/** The design with all that was shot, and with what is typed of this pipe. */
function useBuilt(document: DesignDocument, list: ChecklistView, pipe: Pipe, shots: readonly PipeShot[] | null): DesignDocument {
  const known = useMemo(() => builtFrom(document, list.items.map(({ item, facts }) => ({ part: item.part, facts }))), [document, list]);
  const others = known.pipes.filter(({ part }) => part !== pipe.id);
  const built: Built = { levels: known.levels, pipes: shots === null ? known.pipes : [...others, { part: pipe.id, shots: wholeShots(pipe, shots) }] };
  const key = JSON.stringify(built);
  // oxlint-disable-next-line react-hooks/exhaustive-deps -- the list is a new one every minute; the text of what was shot tells whether that changed
  return useMemo(() => asBuiltDocument(document, built.levels, built.pipes), [document, key]);
}

interface ShotProps {
  readonly n: number;
  readonly rows: readonly ShotRow[];
  readonly row: ShotRow;
  readonly pipe: Pipe;
  readonly instrument: Instrument;
  readonly onChange: (row: ShotRow) => void;
  readonly onDrop: (() => void) | null;
}

function Shot({ n, rows, row, pipe, instrument, onChange, onDrop }: ShotProps) {
  const { t } = useText();
  return (
    <li>
      <fieldset className="shot">
        <legend>{t(`checklists.profile.${placeOf(rows, n)}`, { n: n + 1 })}</legend>
        <LengthField crew="bare" kind="length" label={t('checklists.profile.at')} value={row.at} onChange={(at) => onChange({ ...row, at })} />
        <LevelField label={t('checklists.profile.level')} hint={row.at === null ? undefined : t('checklists.profile.designed', { level: designedAt(pipe, row.at) })} value={row.level} onChange={(level) => onChange({ ...row, level })} instrument={instrument} />
        {onDrop === null ? null : <Button kind="text" size="crew" onClick={onDrop}>{t('checklists.profile.drop', { n: n + 1 })}</Button>}
      </fieldset>
    </li>
  );
}
