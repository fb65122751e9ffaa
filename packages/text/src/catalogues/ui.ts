import { catalogue } from '../catalogue.ts';

/** Words of the frame: header, buttons, fields, saved states, sizes. */
export const ui = catalogue({
  'ui.unit.ft': { en: 'feet', es: 'pies' },
  'ui.unit.in': { en: 'inches', es: 'pulgadas' },
  'ui.unit.m': { en: 'meters', es: 'metros' },
  'ui.unit.cm': { en: 'centimeters', es: 'centímetros' },
  'ui.unit.mm': { en: 'millimeters', es: 'milímetros' },
  'ui.days': { en: '{n:plural|# day|# days}', es: '{n:plural|# día|# días}' },
});
