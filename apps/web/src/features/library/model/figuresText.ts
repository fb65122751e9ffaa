import type { LibraryContent } from '@yardfall/contracts';
import type { Text } from '../../../lib/reader.tsx';

/** The figures of an entry in one line, as this reader reads them. */
export function figuresText(content: LibraryContent, { t }: Pick<Text, 't'>): string {
  switch (content.kind) {
    case 'pump': {
      const flow = content.curve.reduce((most, point) => Math.max(most, point.flow), 0);
      const head = content.curve.reduce((most, point) => Math.max(most, point.head), 0);
      return t('library.says.pump', { flow, head, count: content.curve.length, solids: content.solids });
    }
    case 'channel': return t('library.says.channel', { width: content.width, depth: content.depth });
    case 'pipe': return t('library.says.pipe', { diameter: content.diameter, material: t(`designs.choice.${content.material}`) });
    case 'basin': return t('library.says.basin', { diameter: content.diameter, height: content.height, mass: content.emptyMass });
    case 'channelGrate': return t('library.says.channelGrate', { open: content.openAreaRatio, slot: content.slotWidth });
    case 'basinGrate': return t('library.says.basinGrate', { edge: content.gratePerimeter, area: content.grateOpenArea });
  }
}
