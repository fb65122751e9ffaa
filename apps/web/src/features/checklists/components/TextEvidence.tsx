import { plateCode } from '@yardfall/contracts';
import { isMessageCode } from '@yardfall/text';
import { TextField } from '../../../components/Field.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { Typing } from '../api/useStepDraft.ts';
import { factsOf } from '../model/evidence.ts';
import type { ItemView } from '../model/view.ts';

interface TextEvidenceProps {
  readonly view: ItemView;
  readonly typing: Typing;
  readonly name: string;
}

/** A serial or a model as it stands on the plate. */
export function TextEvidence({ view, typing: { draft, change }, name }: TextEvidenceProps) {
  const { say } = useText();
  const last = factsOf(view, 'written').findLast((fact) => fact.name === name);
  const code = plateCode(name);
  return (
    <div className="stack evidence" data-text={name}>
      <TextField label={isMessageCode(code) ? say(code) : name} maxLength={120} autoComplete="off" autoCapitalize="characters" value={draft.texts[name] ?? ''}
        onChange={(event) => change({ texts: { ...draft.texts, [name]: event.currentTarget.value } })} />
      {last && !view.missing.includes(`text:${name}`) ? <p className="verdict verdict-good"><span aria-hidden="true">{'✓'}</span>{last.text}</p> : null}
    </div>
  );
}
