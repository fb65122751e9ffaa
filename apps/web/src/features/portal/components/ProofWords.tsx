import type { Portal } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';

/** The result of the pump test in words. */
export function ProofWords({ proof }: { readonly proof: NonNullable<Portal['proof']> }) {
  const { t, say } = useText();
  const { measured, predicted, difference, uncertainty, within, verdict } = proof;
  return (
    <section className="stack" aria-labelledby="proof">
      <Heading id="proof">{t('portal.proof')}</Heading>
      <div className="drain-text">
        <p>{t('portal.proof.said', { measured })}</p>
        <p>{t('portal.proof.expected', { predicted })} {t(difference < 0 ? 'portal.proof.less' : 'portal.proof.more', { share: Math.abs(difference) })}</p>
        <p>{t('portal.proof.uncertain', { uncertainty })}</p>
        <p>{t('portal.proof.within', { within })} <strong>{say(`portal.proof.${verdict}`)}</strong></p>
      </div>
    </section>
  );
}
