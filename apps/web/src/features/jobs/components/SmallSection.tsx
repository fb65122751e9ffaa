import type { JobStage } from '@yardfall/contracts';
import { useId } from 'react';
import { useText } from '../../../lib/reader.tsx';
import { sectionParts, standing, type SectionPart } from '../model/progress.ts';
import './SmallSection.css';

const strokes: Readonly<Record<SectionPart, string>> = {
  sill: 'M2 30h14v-18M6 12h10M10 12v18',
  drain: 'M22 30h18M24 30v9h14v-9M28 30v3M34 30v3',
  pipe: 'M38 36l22 5M38 39l22 5',
  basin: 'M60 30v26h16v-26M56 30h24',
  line: 'M68 56v-18q0 -4 4 -4h44',
  outlet: 'M116 34h12v-4M122 30h14M126 26h8',
};

/** Not to scale: how far a job is, as the section it will become; the part that is held is hatched. */
export function SmallSection({ stage, held }: { readonly stage: JobStage; readonly held: boolean }) {
  const { t } = useText();
  const id = useId().replace(/[^\w-]/g, '');
  const parts = standing(stage);
  const words = t(`jobs.stage.${stage}`);
  return (
    <svg className="small-section" viewBox="0 0 140 64" width="140" height="64" role="img" aria-label={held ? t('jobs.smallSection.held', { stage: words }) : t('jobs.smallSection', { stage: words })}>
      <defs>
        <pattern id={id} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0v5" className="small-section-hatch" />
        </pattern>
      </defs>
      <path d="M16 30h6M40 30h16M80 30h42M136 30h4" className="small-section-ground" />
      {sectionParts.map((part) => (
        <g key={part}>
          {held && parts[part] === 'next' ? <path d={outline[part]} fill={`url(#${id})`} /> : null}
          <path d={strokes[part]} className={`small-section-part small-section-${parts[part]}`} />
        </g>
      ))}
      {stage === 'handedOver' ? <path d="M62 50h4M70 50h4M63 46l2 3h-4z" className="small-section-water" /> : null}
    </svg>
  );
}

const outline: Readonly<Record<SectionPart, string>> = {
  sill: 'M2 8h18v26h-18z', drain: 'M20 24h22v20h-22z', pipe: 'M36 32h26v16h-26z', basin: 'M56 30h24v28h-24z', line: 'M64 30h54v8h-46v20h-8z', outlet: 'M112 22h26v18h-26z',
};
