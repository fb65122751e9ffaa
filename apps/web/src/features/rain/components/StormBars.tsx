import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useStorm } from '../api/rain.ts';
import './rain.css';

/** The storm by alternating block: rain hangs from the top, the heaviest block in the middle of the day. */
export function StormBars({ jobId, tableId, returnPeriod }: { readonly jobId: string; readonly tableId: string; readonly returnPeriod: number }) {
  const { t } = useText();
  const { data, error } = useStorm(jobId, tableId, returnPeriod);
  if (!data) return <ProblemNotice problem={error} />;
  const { depths, total, block } = data.data;
  const most = Math.max(...depths);
  const words = t('rain.stormWords', { total, peak: most, block, years: returnPeriod });
  return (
    <figure className="storm-bars">
      <svg viewBox={`0 0 ${String(depths.length)} 60`} preserveAspectRatio="none" role="img" aria-label={words}>
        {depths.map((depth, at) => <rect key={at} x={at} y={0} width={0.8} height={most > 0 ? (60 * depth) / most : 0} />)}
      </svg>
      <figcaption>{words}</figcaption>
    </figure>
  );
}
