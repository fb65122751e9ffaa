import type { DesignDocument, Plan, Position } from '@yardfall/calc';
import { photos, sha256Hex, type DraftOperation, type Photo } from '@yardfall/contracts';
import { pictureScale, shownScale, toPicture } from '@yardfall/drawing';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { v7 as uuidv7 } from 'uuid';
import { Button } from '../../../../components/Button.tsx';
import { FilePick } from '../../../../components/FilePick.tsx';
import { Heading } from '../../../../components/Heading.tsx';
import { LengthField } from '../../../../components/LengthField.tsx';
import { ProblemNotice } from '../../../../components/Notice.tsx';
import { NumberField } from '../../../../components/NumberField.tsx';
import { call } from '../../../../lib/api.ts';
import { useText } from '../../../../lib/reader.tsx';
import { setPicture, tiePicture } from '../../model/plan/operations.ts';

interface PicturePanelProps {
  readonly jobId: string;
  readonly document: DesignDocument;
  readonly plan: Plan;
  readonly edit: (operations: readonly DraftOperation[]) => void;
  readonly tying: boolean;
  /** Places tapped for the tie. */
  readonly path: readonly Position[];
  readonly onTie: () => void;
  readonly onDone: () => void;
}

/** The picture below the plan, what in it has a known length, and where north is. */
export function PicturePanel({ jobId, document, plan, edit, tying, path, onTie, onDone }: PicturePanelProps) {
  const { t } = useText();
  const [length, setLength] = useState<number | null>(null);
  const send = useMutation({ mutationFn: (file: File) => sent(jobId, file, t('plan.under')) });
  const { picture } = plan;
  const [from, to] = picture && tying ? path.map((at) => toPicture(picture, shownScale(picture), at)) : [];
  const tie = () => {
    if (!picture || !from || !to || length === null || length <= 0) return;
    const next = { ...picture, tie: { from, to, length } };
    const before = pictureScale(picture);
    edit(tiePicture(document, plan, next, before === null ? null : (pictureScale(next) ?? before) / shownScale(picture)));
    setLength(null);
    onDone();
  };
  const begin = ({ id, width, height }: Photo) => {
    if (width === null || height === null) return; // a video, which is not offered here
    edit(setPicture({ photo: id, width, height, tie: null }));
    onTie();
  };
  return (
    <section className="stack">
      <Heading level={3}>{t('plan.under')}</Heading>
      <FilePick label={t('plan.under')} hint={t('plan.underHint')} accept="image/jpeg,image/png" disabled={send.isPending}
        onPick={(file) => send.mutate(file, { onSuccess: begin })} />
      <ProblemNotice problem={send.error} />
      {picture?.tie ? <p>{t('plan.tied', { length: picture.tie.length })}</p> : null}
      {picture ? (
        <div className="row">
          {tying ? null : <Button kind={picture.tie ? 'plain' : 'main'} onClick={onTie}>{t('plan.tie')}</Button>}
          <Button kind="text" onClick={() => { edit(setPicture(null)); onDone(); }}>{t('plan.noPicture')}</Button>
        </div>
      ) : null}
      {picture && tying && from && to ? (
        <div className="plan-panel">
          <LengthField label={t('plan.tieLength')} value={length} onChange={setLength} />
          <div className="row plan-wide"><Button kind="main" disabled={length === null || length <= 0} onClick={tie}>{t('plan.tieSet')}</Button></div>
        </div>
      ) : null}
      <div className="plan-panel">
        <NumberField label={t('plan.north')} value={plan.north} decimals={1} unit="°"
          onChange={(north) => { if (north !== null && north >= 0 && north <= 360 && north !== plan.north) edit([{ kind: 'replace', path: ['site', 'plan', 'north'], value: north }]); }} />
      </div>
    </section>
  );
}

/** The picture goes to the office as a photo of the job; its size comes back with it. */
async function sent(jobId: string, file: File, note: string) {
  const sha256 = await sha256Hex(new Uint8Array(await file.arrayBuffer()));
  const meta = { id: uuidv7(), sha256, takenAt: new Date(file.lastModified).toISOString(), itemKey: null, part: null, note, forCustomer: false };
  return (await call(photos.add, { params: { jobId }, body: meta, file, fileName: 'plan' })).data;
}
