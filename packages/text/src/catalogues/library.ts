import { catalogue } from '../catalogue.ts';

/** Pumps and parts that the company keeps: the page, and what is wrong with an entry. */
export const library = catalogue({
  'library.fewPoints': { en: 'The curve has {count:count} of at least {least:count} points.', es: 'La curva tiene {count:count} de al menos {least:count} puntos.' },
  'library.noShutOff': { en: 'The curve must begin at no flow: give the shut-off head of the datasheet.', es: 'La curva debe empezar sin caudal: dé la carga a válvula cerrada de la hoja técnica.' },
  'library.curveRises': { en: 'Point {point:count}: the head must fall while the flow rises.', es: 'Punto {point:count}: la carga debe bajar mientras el caudal sube.' },
});
