import { catalogue } from '../catalogue.ts';

/** Words of the rain tables and the storm. */
export const rain = catalogue({
  'rain.loading': { en: 'the rain', es: 'la lluvia' },
  'rain.none': { en: 'No rain table yet', es: 'Aún no hay tabla de lluvia' },
  'rain.noneWhy': { en: 'Every number of the design hangs on how hard it rains here. Take the point table of the NOAA Atlas 14 server for this address.', es: 'Cada número del diseño depende de cuánto llueve aquí. Tome la tabla del servidor NOAA Atlas 14 para esta dirección.' },
  'rain.another': { en: 'Take another table', es: 'Tomar otra tabla' },
  'rain.earlier': { en: '{n:plural|# earlier table is|# earlier tables are} kept.', es: 'Se {n:plural|conserva # tabla anterior|conservan # tablas anteriores}.' },
  'rain.by': { en: '{by:text}, {at:dateTime}', es: '{by:text}, {at:dateTime}' },
  'rain.illustrative': { en: 'This table is invented, for showing the product. Never build from it.', es: 'Esta tabla es inventada, para mostrar el producto. Nunca construya con ella.' },
  'rain.depths': { en: 'Rain depth by duration', es: 'Lluvia por duración' },
  'rain.duration': { en: 'Duration', es: 'Duración' },
  'rain.years': { en: '{years:number} years', es: '{years:number} años' },
  'rain.storm': { en: 'Storm of', es: 'Tormenta de' },
  'rain.stormWords': { en: 'Alternating block over 24 h, {years:number}-year: {total:rain} in all, {peak:rain} in the heaviest {block:minutes}.', es: 'Bloque alterno en 24 h, {years:number} años: {total:rain} en total, {peak:rain} en los {block:minutes} más fuertes.' },
  'rain.noaa': { en: 'NOAA Atlas 14 point table', es: 'Tabla de NOAA Atlas 14' },
  'rain.noaaHint': { en: 'The CSV file as the server gives it, depth or intensity, English or metric. It is kept as it came.', es: 'El archivo CSV como lo da el servidor, lámina o intensidad, inglés o métrico. Se conserva como llegó.' },
  'rain.noaaPick': { en: 'Choose the CSV file', es: 'Elegir el archivo CSV' },
  'rain.type': { en: 'Type a table instead', es: 'Escribir una tabla' },
  'rain.name': { en: 'Name of the table', es: 'Nombre de la tabla' },
  'rain.source': { en: 'Source', es: 'Fuente' },
  'rain.sourceHint': { en: 'Publication, place and date. Rain without a source is not built from.', es: 'Publicación, lugar y fecha. No se construye con lluvia sin fuente.' },
  'rain.depthsTypedUs': { en: 'Depths in inches', es: 'Láminas en pulgadas' },
  'rain.depthsTypedMetric': { en: 'Depths in millimeters', es: 'Láminas en milímetros' },
  'rain.depthsTypedHint': { en: 'One line each for 5, 10, 15, 30 min, 1, 2, 3, 6, 12, 24 h; four figures a line: 2, 10, 25, 100 years.', es: 'Una línea para 5, 10, 15, 30 min, 1, 2, 3, 6, 12, 24 h; cuatro cifras por línea: 2, 10, 25, 100 años.' },
  'rain.lineUnread': { en: 'Line {line:number} is not read: four figures, two lines at least.', es: 'La línea {line:number} no se lee: cuatro cifras, dos líneas al menos.' },
  'rain.store': { en: 'Save the table', es: 'Guardar la tabla' },
});
