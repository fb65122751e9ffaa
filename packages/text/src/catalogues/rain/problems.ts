import { catalogue } from '../../catalogue.ts';

const at = { en: 'Line {line:count}, column {column:count}: ', es: 'Línea {line:count}, columna {column:count}: ' };
const here = (en: string, es: string) => ({ en: at.en + en, es: at.es + es });
const cell = (en: string, es: string) => ({ en: `Row {line:count}, column {column:count}: ${en}`, es: `Fila {line:count}, columna {column:count}: ${es}` });

/** Why a rain table could not be read, with the place. */
export const rainProblems = catalogue({
  'rain.atlas.notAtlas': here('this is not a point file of the NOAA Atlas 14 server.', 'esto no es un archivo de punto del servidor NOAA Atlas 14.'),
  'rain.atlas.webPage': here('this is a web page and not the CSV file. Use the download button of the server.', 'esto es una página web y no el archivo CSV. Use el botón de descarga del servidor.'),
  'rain.atlas.outsideCoverage': here('the server has no table for this place.', 'el servidor no tiene tabla para este lugar.'),
  'rain.atlas.tooLarge': here('the file is too large for a point table.', 'el archivo es muy grande para una tabla de punto.'),
  'rain.atlas.openQuote': here('a quotation mark is opened and not closed.', 'una comilla se abre y no se cierra.'),
  'rain.atlas.noUnits': here('the file does not say inches or millimeters.', 'el archivo no dice pulgadas ni milímetros.'),
  'rain.atlas.noMean': here('the estimates themselves are missing.', 'faltan las estimaciones mismas.'),
  'rain.atlas.noPeriods': here('the return periods are missing.', 'faltan los periodos de retorno.'),
  'rain.atlas.badPeriod': here('this is not a return period.', 'esto no es un periodo de retorno.'),
  'rain.atlas.periodsNotRising': here('the return periods do not rise.', 'los periodos de retorno no crecen.'),
  'rain.atlas.unknownDuration': here('this is not a duration.', 'esto no es una duración.'),
  'rain.atlas.durationsNotRising': here('the durations do not rise.', 'las duraciones no crecen.'),
  'rain.atlas.cellCount': here('a cell is missing or one too many.', 'falta una celda o sobra una.'),
  'rain.atlas.notANumber': here('this is not a number.', 'esto no es un número.'),
  'rain.atlas.notRising': here('the depth falls where it must rise.', 'la lámina baja donde debe subir.'),
  'rain.atlas.longerIsShallower': here('a longer rain has less depth than a shorter one.', 'una lluvia más larga tiene menos lámina que una más corta.'),
  'rain.atlas.zeroDepth': here('a depth must be more than nothing.', 'una lámina debe ser mayor que cero.'),
  'rain.atlas.limitsShape': here('the limits have other durations or periods than the estimates.', 'los límites tienen otras duraciones o periodos que las estimaciones.'),
  'rain.atlas.limitsCross': here('a limit lies on the wrong side of the estimate.', 'un límite está del lado equivocado de la estimación.'),
  'rain.atlas.sectionTwice': here('the same section stands in the file twice.', 'la misma sección está dos veces en el archivo.'),
  'rain.atlas.tooFewDurations': here('fewer than two durations can be used.', 'se pueden usar menos de dos duraciones.'),

  'rain.table.tooFew': cell('two durations and one return period are the least.', 'hacen falta al menos dos duraciones y un periodo de retorno.'),
  'rain.table.notRising': cell('durations and return periods must rise.', 'las duraciones y los periodos de retorno deben crecer.'),
  'rain.table.shape': cell('a cell is missing or one too many.', 'falta una celda o sobra una.'),
  'rain.table.notPositive': cell('a depth must be more than nothing.', 'una lámina debe ser mayor que cero.'),
  'rain.table.longerIsShallower': cell('a longer rain has less depth than a shorter one.', 'una lluvia más larga tiene menos lámina que una más corta.'),
  'rain.table.rarerIsShallower': cell('a rarer rain has less depth than a more frequent one.', 'una lluvia más rara tiene menos lámina que una más frecuente.'),
  'rain.table.limitsCross': cell('a limit lies on the wrong side of the depth.', 'un límite está del lado equivocado de la lámina.'),
});
