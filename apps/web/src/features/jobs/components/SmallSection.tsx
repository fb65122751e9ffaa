import type { JobStage, SystemPart } from '@yardfall/contracts';
import { useId } from 'react';
import { useText } from '../../../lib/reader.tsx';
import { sketched, standing, type SectionPart } from '../model/progress.ts';
import './SmallSection.css';

interface SmallSectionProps {
  readonly stage: JobStage;
  readonly held: boolean;
  /** What the newest design is made of; null before there is one. */
  readonly system: readonly SystemPart[] | null;
}

/** Not to scale: how far a job is, as the section of what it builds, with its state in words; the part that is held is hatched. */
export function SmallSection({ stage, held, system }: SmallSectionProps) {
  const { t } = useText();
  const id = useId().replace(/[^\w-]/g, '');
  const shown = sketched(system);
  const strokes = strokesFor(shown);
  const words = t(`jobs.stage.${stage}`);
  return (
    <figure className="small-section">
      <svg viewBox="0 0 140 64" width="140" height="64" role="img" aria-label={held ? t('jobs.smallSection.held', { stage: words }) : t('jobs.smallSection', { stage: words })}>
        <defs>
          <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path d="M0 0v6" className="small-section-hatch" />
          </pattern>
        </defs>
        <path d={groundFor(shown)} className="small-section-ground" />
        {[...standing(stage, shown)].map(([part, how]) => (
          <g key={part}>
            {held && how === 'next' ? <path d={outline[part]} fill={`url(#${id})`} /> : null}
            <path d={strokes[part]} className={`small-section-part small-section-${held && how === 'next' ? 'held' : how}`} />
          </g>
        ))}
        {stage === 'handedOver' && shown.includes('basin') ? <path d="M62 50h4M70 50h4M63 46l2 3h-4z" className="small-section-water" /> : null}
      </svg>
      <figcaption aria-hidden="true">{held ? t('jobs.smallSection.isHeld', { stage: words }) : words}</figcaption>
    </figure>
  );
}

/** By gravity the ground falls away from the house and the pipe runs out of it; a pump line ends under a lid. */
function strokesFor(shown: readonly SectionPart[]): Readonly<Record<SectionPart, string>> {
  const pumped = shown.includes('basin');
  const start = shown.includes('drain') ? 'M38 36L116 48M38 39L116 51' : 'M18 37L116 48M18 40L116 51';
  return {
    sill: 'M2 30h14v-18M6 12h10M10 12v18',
    roof: 'M8 8h12v29',
    drain: 'M22 30h18M24 30v9h14v-9M28 30v3M34 30v3',
    pipe: pumped ? 'M38 36l22 5M38 39l22 5' : start,
    basin: 'M60 30v26h16v-26M56 30h24',
    line: 'M68 56v-18q0 -4 4 -4h44',
    swale: 'M42 31L114 43',
    outlet: pumped ? 'M116 34h12v-4M122 30h14M126 26h8' : 'M116 42v12M116 52h18',
  };
}

function groundFor(shown: readonly SectionPart[]): string {
  if (shown.includes('basin')) return 'M16 30h6M40 30h16M80 30h42M136 30h4';
  return shown.includes('outlet') ? 'M16 30h26L116 43M116 52h24' : 'M16 30h124';
}

const outline: Readonly<Record<SectionPart, string>> = {
  sill: 'M2 8h18v26h-18z', roof: 'M6 4h18v36h-18z', drain: 'M20 24h22v20h-22z', pipe: 'M36 32l26 4v16l-26 -8z', basin: 'M56 30h24v28h-24z', line: 'M64 30h54v8h-46v20h-8z', swale: 'M40 26l76 12v10l-76 -12z', outlet: 'M112 24h26v32h-26z',
};
