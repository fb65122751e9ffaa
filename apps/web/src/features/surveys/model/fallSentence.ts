import { OUTLET_MARGIN, type GravityWithBand } from '@yardfall/calc';
import type { Text } from '../../../lib/reader.tsx';

/** From half a foot on a tenth is said; below it the tape is. */
const SMALL = 0.1524;

/** "Gravity is short by 1.0 ft": the answer for one outlet. */
export function fallSentence(t: Text['t'], { name, margin, uncertainty, verdict }: Pick<GravityWithBand, 'name' | 'margin' | 'uncertainty' | 'verdict'>): string {
  const height = Math.abs(margin);
  if (verdict === 'cannotTell') return t('surveys.fall.cannotTell', { outlet: name, uncertainty });
  if (verdict === 'tight') return t('surveys.fall.tight', { outlet: name, height, wanted: OUTLET_MARGIN });
  if (verdict === 'short') return t(height < SMALL ? 'surveys.fall.shortSmall' : 'surveys.fall.short', { outlet: name, height });
  return t(height < SMALL ? 'surveys.fall.worksSmall' : 'surveys.fall.works', { outlet: name, height });
}
