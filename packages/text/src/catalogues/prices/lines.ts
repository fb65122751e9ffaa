import { catalogue } from '../../catalogue.ts';

export const priceLines = catalogue({
  'prices.line.labour': { en: 'Crew labor', es: 'Mano de obra de la cuadrilla' },
});
