import type { Portal } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';

/** The result of the pump test in words. */
export function ProofWords({ proof }: { readonly proof: NonNullable<Portal['proof']> }) {
  const { t, say } = useText();
  const { measured, predicted, uncertainty, verdict } = proof;
  return (
    <section className="stack" aria-labelledby="proof">
      <Heading id="proof">{t('portal.proof')}</Heading>
      <div className="drain-text">
        <p>{t('portal.proof.said', { measured })}</p>
        <p>{t('portal.proof.expected', { predicted, uncertainty })}</p>
        <p><strong>{say(`portal.proof.${verdict}`)}</strong></p>
      </div>
    </section>
  );
}
