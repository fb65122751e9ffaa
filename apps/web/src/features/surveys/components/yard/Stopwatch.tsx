import { useEffect, useState } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { keep, kept } from '../../../../lib/keep.ts';
import { useText } from '../../../../lib/reader.tsx';

interface StopwatchProps {
  /** Where the start is kept, so that a page that was closed goes on counting. */
  readonly name: string;
  readonly onStop: (seconds: number) => void;
}

export function Stopwatch({ name, onStop }: StopwatchProps) {
  const { t } = useText();
  const place = `timer.${name}`;
  const [started, setStarted] = useState<number | null>(() => { const at = kept(place); return typeof at === 'number' ? at : null; });
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    if (started === null) return undefined;
    const tick = setInterval(() => setNow(Date.now()), 250);
    return () => clearInterval(tick);
  }, [started]);
  const set = (at: number | null) => {
    keep(place, at);
    setStarted(at);
    setNow(Date.now());
  };
  const seconds = started === null ? 0 : Math.max(0, (now - started) / 1000);
  const whole = Math.floor(seconds);
  const stop = () => {
    const taken = started === null ? 0 : (Date.now() - started) / 1000;
    set(null);
    if (taken > 0) onStop(Math.round(taken * 10) / 10);
  };
  return (
    <div className="stopwatch" role="group" aria-label={t('surveys.tool.elapsed')}>
      <output>{t('surveys.tool.clock', { minutes: String(Math.floor(whole / 60)), seconds: String(whole % 60).padStart(2, '0') })}</output>
      {started === null ? <Button size="crew" onClick={() => set(Date.now())}>{t('surveys.tool.start')}</Button> : <Button kind="main" size="crew" onClick={stop}>{t('surveys.tool.stop')}</Button>}
    </div>
  );
}

/** A count by thumb. */
export function Counter({ label, value, onChange }: { readonly label: string; readonly value: number; readonly onChange: (value: number) => void }) {
  const { t } = useText();
  return (
    <div className="counter" role="group" aria-label={label}>
      <span>{label}</span>
      <Button aria-label={`${t('surveys.tool.less')}: ${label}`} disabled={value <= 0} onClick={() => onChange(value - 1)}>{'−'}</Button>
      <output>{value}</output>
      <Button aria-label={`${t('surveys.tool.more')}: ${label}`} onClick={() => onChange(value + 1)}>{'+'}</Button>
    </div>
  );
}
