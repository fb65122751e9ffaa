import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { splitWhy, type CodedText } from '../model/why.ts';

/** Why it is built this way, in plain words with the live numbers. */
export function Why({ texts }: { readonly texts: readonly CodedText[] }) {
  const { t, say } = useText();
  if (texts.length === 0) return null;
  const { first, more } = splitWhy(texts);
  return (
    <section className="stack" aria-labelledby="why">
      <Heading id="why">{t('portal.why')}</Heading>
      <div className="drain-text">{first.map(({ code, params }) => <p key={code}>{say(code, params)}</p>)}</div>
      {more.length > 0 ? (
        <details className="drain-fold">
          <summary>{t('portal.why.more')}</summary>
          <div className="drain-text">{more.map(({ code, params }) => <p key={code}>{say(code, params)}</p>)}</div>
        </details>
      ) : null}
    </section>
  );
}
