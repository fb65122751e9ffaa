import type { LibraryContent, LibraryEntry, LibraryKind } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { CheckField, TextField } from '../../../components/Field.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useAddEntry, useChangeEntry } from '../api/library.ts';
import { entryFields, figureOf, startContent, withFigure } from '../model/fields.ts';
import { clean } from '../model/units.ts';
import { CurveField } from './CurveField.tsx';
import { FigureField } from './FigureField.tsx';

interface EntryDialogProps {
  /** Null for a new one. */
  readonly entry: LibraryEntry | null;
  readonly kind: LibraryKind;
  readonly onClose: () => void;
}

/** One pump or part: name, where its figures are from, and the figures that the engine needs. */
export function EntryDialog({ entry, kind, onClose }: EntryDialogProps) {
  const { t } = useText();
  const [now, setNow] = useState({ name: entry?.name ?? '', source: entry?.source ?? '', priceCode: entry?.priceCode ?? '', active: entry?.active ?? true });
  const [content, setContent] = useState<LibraryContent>(entry?.content ?? startContent[kind]);
  const [unread, setUnread] = useState(kind === 'pump' && entry === null);
  const adding = useAddEntry(onClose);
  const changing = useChangeEntry(onClose);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const body = { name: now.name.trim(), source: now.source.trim(), priceCode: now.priceCode.trim() || null, content };
    if (entry === null) adding.write({ body });
    else changing.write({ params: { entryId: entry.id }, body: { ...body, active: now.active }, ifMatch: `"${String(entry.version)}"` });
  };
  const set = (name: string, value: unknown) => setContent(withFigure(content, name, typeof value === 'number' ? clean(value) : value));
  return (
    <Dialog open title={entry === null ? t('library.newOf', { kind: t(`library.kind.${kind}`) }) : t('library.change', { name: entry.name })} onClose={onClose}>
      <form className="stack" onSubmit={submit}>
        <TextField label={t('library.name')} required maxLength={120} value={now.name} onChange={(event) => setNow({ ...now, name: event.target.value })} />
        <TextField label={t('library.source')} hint={t('library.sourceHint')} maxLength={300} value={now.source} onChange={(event) => setNow({ ...now, source: event.target.value })} />
        {entryFields[kind].map((field) => field.kind === 'curve'
          ? <CurveField key={field.name} points={content.kind === 'pump' ? content.curve : []} onPoints={(points) => { setUnread(points === null); if (points !== null) setContent(withFigure(content, field.name, points)); }} />
          : <FigureField key={field.name} field={field} value={figureOf(content, field.name)} onChange={(value) => set(field.name, value)} />)}
        <TextField label={t('library.priceCode')} hint={t('library.priceCodeHint')} optional maxLength={60} value={now.priceCode} onChange={(event) => setNow({ ...now, priceCode: event.target.value })} />
        {entry === null ? null : <CheckField label={t('library.active')} checked={now.active} onChange={(event) => setNow({ ...now, active: event.target.checked })} />}
        {entry === null ? null : <p className="faint">{t('library.keepsCopies')}</p>}
        <ProblemNotice problem={adding.problem ?? changing.problem} />
        <div className="row"><Button type="submit" kind="main" busy={adding.busy || changing.busy} disabled={unread}>{t('library.save')}</Button></div>
      </form>
    </Dialog>
  );
}
