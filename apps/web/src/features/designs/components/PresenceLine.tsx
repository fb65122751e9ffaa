import type { DesignDocument } from '@yardfall/calc';
import { useText } from '../../../lib/reader.tsx';
import { usePresence } from '../hooks/usePresence.ts';
import { nameOf } from '../model/editWords.ts';

interface PresenceLineProps {
  readonly jobId: string;
  readonly revisionId: string;
  readonly document: DesignDocument;
  /** The part that this person is at. */
  readonly part: string | null;
  /** Somebody else's edit has arrived in the office. */
  readonly onOthersEdit: () => void;
}

/** Who else is at this draft; nothing while one is alone. */
export function PresenceLine({ jobId, revisionId, document, part, onOthersEdit }: PresenceLineProps) {
  const { t } = useText();
  const others = usePresence(jobId, revisionId, part, onOthersEdit);
  const words = others.map(({ name, part: at }) => (at === null ? t('designs.here', { name }) : t('designs.hereAt', { name, part: nameOf([document], at) })));
  return <p className="presence" role="status">{words.join(' ')}</p>;
}
