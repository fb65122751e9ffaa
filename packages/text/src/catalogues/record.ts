import { catalogue } from '../catalogue.ts';

const at = { en: 'Line {line:count}, column {column:count}: ', es: 'Línea {line:count}, columna {column:count}: ' };
const here = (en: string, es: string) => ({ en: at.en + en, es: at.es + es });

/** What is said beside a long record of rain, and why one could not be read or run. */
export const record = catalogue({
  'record.gauge': { en: 'Rain of the gauge {name:text} {id:text}.', es: 'Lluvia del pluviómetro {name:text} {id:text}.' },
  'record.gaugeDistance': {
    en: 'The gauge {name:text} stands {distance:length} from this yard. What it caught is not what fell here.',
    es: 'El pluviómetro {name:text} está a {distance:length} de este patio. Lo que midió no es lo que cayó aquí.',
  },
  'record.distanceUnknown': {
    en: 'How far the gauge {name:text} stands from this yard is not known. What it caught is not what fell here.',
    es: 'No se sabe a qué distancia de este patio está el pluviómetro {name:text}. Lo que midió no es lo que cayó aquí.',
  },
  'record.span': {
    en: 'From {from:date} to {to:date}, {years:number} years with readings.',
    es: 'Del {from:date} al {to:date}, {years:number} años con lecturas.',
  },
  'record.gaps': {
    en: '{count:plural|# gap|# gaps} of {hours:count} hours together, {share:percent} of the time. Missing is not dry: what fell then is not counted.',
    es: '{count:plural|# hueco|# huecos}, {hours:count} horas en total, {share:percent} del tiempo. Sin dato no es seco: lo que cayó entonces no se cuenta.',
  },
  'record.yearsLeftOut': {
    en: '{count:count} of {of:count} years have too few readings for a highest level.',
    es: '{count:count} de {of:count} años tienen muy pocas lecturas para un nivel máximo.',
  },
  'record.coarse': {
    en: 'From {from:date} to {to:date} the gauge knew only tenths of an inch. Light rain stands in the wrong hours there.',
    es: 'Del {from:date} al {to:date} el pluviómetro solo medía décimas de pulgada. La lluvia ligera queda en horas equivocadas.',
  },
  'record.flaggedSums': {
    en: '{count:plural|# sum|# sums} over several hours left out: when in them it rained is not known.',
    es: '{count:plural|# suma|# sumas} de varias horas fuera de la cuenta: no se sabe cuándo llovió en ellas.',
  },
  'record.suspectedSums': {
    en: '{count:plural|# strong hour|# strong hours} right after missing ones: perhaps the rain of several hours.',
    es: '{count:plural|# hora fuerte|# horas fuertes} justo después de horas sin dato: quizá la lluvia de varias horas.',
  },
  'record.rejected': {
    en: '{count:plural|# reading|# readings} failed a check of the record itself and count as missing.',
    es: '{count:plural|# lectura|# lecturas} no pasaron la revisión del propio registro y cuentan como faltantes.',
  },
  'record.range': {
    en: 'Hourly rain hides its bursts. It was shared out in two ways, a smooth one and a sharp one; both counts are shown.',
    es: 'La lluvia por hora esconde sus golpes. Se repartió de dos maneras, una suave y una fuerte; se muestran las dos cuentas.',
  },
  'record.clockHours': {
    en: 'Clock hours cut storms in two: the wettest 60 minutes hold about {share:percent} more than the wettest clock hour.',
    es: 'Las horas de reloj cortan las tormentas: los 60 minutos más fuertes traen cerca de {share:percent} más que la hora de reloj más fuerte.',
  },
  'record.snow': {
    en: 'Snow stands in the record as the water that it melted to, in the hour in which the gauge had it.',
    es: 'La nieve está en el registro como el agua que dio, en la hora en que el pluviómetro la tuvo.',
  },
  'record.counted': {
    en: 'Water that comes back within {hours:count} hours counts as the same time.',
    es: 'El agua que vuelve antes de {hours:count} horas cuenta como la misma vez.',
  },
  'record.with': {
    en: 'With the system, water would have reached {sill:text} {count:plural|# time|# times} in {years:number} years (95 %: at most {upperLimit:number}).',
    es: 'Con el sistema, el agua habría llegado a {sill:text} {count:plural|# vez|# veces} en {years:number} años (95 %: a lo más {upperLimit:number}).',
  },
  'record.withRange': {
    en: 'With the system, water would have reached {sill:text} {low:count} to {high:count} times in {years:number} years (95 %: at most {upperLimit:number}).',
    es: 'Con el sistema, el agua habría llegado a {sill:text} de {low:count} a {high:count} veces en {years:number} años (95 %: a lo más {upperLimit:number}).',
  },
  'record.withNever': {
    en: 'With the system, water would not have reached {sill:text} in {years:number} years. That is no promise: up to {upperLimit:number} times would fit it too (95 %).',
    es: 'Con el sistema, el agua no habría llegado a {sill:text} en {years:number} años. No es una promesa: hasta {upperLimit:number} veces también cabrían (95 %).',
  },
  'record.without': {
    en: 'Without it, water would have reached {sill:text} {count:plural|# time|# times} in {years:number} years (limits {lowerLimit:number} to {upperLimit:number}).',
    es: 'Sin él, el agua habría llegado a {sill:text} {count:plural|# vez|# veces} en {years:number} años (límites {lowerLimit:number} a {upperLimit:number}).',
  },
  'record.withoutRange': {
    en: 'Without it, water would have reached {sill:text} {low:count} to {high:count} times in {years:number} years (limits {lowerLimit:number} to {upperLimit:number}).',
    es: 'Sin él, el agua habría llegado a {sill:text} de {low:count} a {high:count} veces en {years:number} años (límites {lowerLimit:number} a {upperLimit:number}).',
  },
  'record.withoutEstimate': {
    en: 'Estimate: without a system, {count:plural|# time|# times} at {sill:text} in {years:number} years (95 %: {lowerLimit:number} to {upperLimit:number}). It is not fitted to what was seen here.',
    es: 'Estimación: sin sistema, {count:plural|# vez|# veces} en {sill:text} en {years:number} años (95 %: {lowerLimit:number} a {upperLimit:number}). No está ajustada a lo visto aquí.',
  },
  'record.withoutEstimateRange': {
    en: 'Estimate: without a system, {low:count} to {high:count} times at {sill:text} in {years:number} years (95 %: {lowerLimit:number} to {upperLimit:number}). It is not fitted to what was seen here.',
    es: 'Estimación: sin sistema, de {low:count} a {high:count} veces en {sill:text} en {years:number} años (95 %: {lowerLimit:number} a {upperLimit:number}). No está ajustada a lo visto aquí.',
  },
  'record.fitted': {
    en: 'What soaks and drains away today was fitted to {perYear:number} times a year as reported, give or take {share:percent}.',
    es: 'Lo que hoy se infiltra y drena se ajustó a {perYear:number} veces al año según lo reportado, más o menos {share:percent}.',
  },
  'record.neverEmpties': {
    en: 'No soakage or drain is given for {spot:text}: without a system its water would stand for good, and its count says little.',
    es: 'No se dio infiltración ni drenaje para {spot:text}: sin sistema su agua quedaría para siempre, y su cuenta dice poco.',
  },
  'record.noReturnPeriod': {
    en: 'Nothing is said about storms rarer than the {years:number} years of the record.',
    es: 'No se dice nada de tormentas más raras que los {years:number} años del registro.',
  },
  'record.notThisYard': {
    en: 'This is the past at the gauge, run through a model of this yard. It is no forecast.',
    es: 'Es el pasado en el pluviómetro, pasado por un modelo de este patio. No es un pronóstico.',
  },

  'record.notHourly': here('this is not an hourly station file with STATION, DATE and HR00Val to HR23Val.', 'esto no es un archivo de estación por hora con STATION, DATE y HR00Val a HR23Val.'),
  'record.hourMissing': here('the column of hour {hour:count} is missing.', 'falta la columna de la hora {hour:count}.'),
  'record.notSeries': here('the first line must name a time and a depth of rain.', 'la primera línea debe nombrar una hora y una lámina de lluvia.'),
  'record.noUnit': here('the head of the depth must say mm or in.', 'el encabezado de la lámina debe decir mm o in.'),
  'record.empty': here('there are no readings.', 'no hay lecturas.'),
  'record.badDate': here('"{text:text}" is not a date like 2019-08-06.', '"{text:text}" no es una fecha como 2019-08-06.'),
  'record.badTime': here('"{text:text}" is not a time like 2019-08-06T14:05.', '"{text:text}" no es una hora como 2019-08-06T14:05.'),
  'record.offGrid': here('"{text:text}" is not a multiple of five minutes.', '"{text:text}" no es múltiplo de cinco minutos.'),
  'record.notANumber': here('"{text:text}" is not a number.', '"{text:text}" no es un número.'),
  'record.negative': here('{value:number} is less than nothing.', '{value:number} es menos que nada.'),
  'record.tooMuch': here('{value:number} is more than ever fell in that time.', '{value:number} es más de lo que jamás cayó en ese tiempo.'),
  'record.notRising': here('"{text:text}" does not come after the line before it.', '"{text:text}" no viene después de la línea anterior.'),
  'record.otherStation': here('"{text:text}" is another station.', '"{text:text}" es otra estación.'),
  'record.cellCount': here('{found:count} cells instead of {wanted:count}.', '{found:count} celdas en lugar de {wanted:count}.'),
  'record.openQuote': here('a quotation mark is opened and not closed.', 'una comilla se abre y no se cierra.'),
  'record.tooLong': here('the record is longer than any gauge has stood.', 'el registro es más largo que la vida de cualquier pluviómetro.'),
  'record.tooLarge': here('the file is too large for a rain record.', 'el archivo es muy grande para un registro de lluvia.'),

  'record.notWholeDays': { en: 'The record must hold whole days.', es: 'El registro debe tener días completos.' },
  'record.way': { en: 'The rain of this record cannot be shared out that way.', es: 'La lluvia de este registro no se puede repartir así.' },
  'record.noLowSpot': { en: 'The design has no low spot to fill.', es: 'El diseño no tiene punto bajo que llenar.' },
  'record.noSill': { en: 'The design has no sill {sill:text}.', es: 'El diseño no tiene umbral {sill:text}.' },
  'record.neverRests': { en: 'The system never comes to rest: {reason:term}.', es: 'El sistema nunca queda en reposo: {reason:term}.' },
  'record.restless.onLevel': { en: 'the pump starts above the grate', es: 'la bomba arranca más arriba que la rejilla' },
  'record.restless.groundWater': { en: 'more ground water comes in than the pump takes', es: 'entra más agua freática de la que saca la bomba' },
  'record.restless.store': { en: 'a level is still moving after thirty dry days', es: 'un nivel sigue moviéndose después de treinta días secos' },
  'record.notReached': {
    en: 'No loss gives {perYear:number} times a year: the hollow, the runoff or the report is not as thought.',
    es: 'Ninguna pérdida da {perYear:number} veces al año: la hondonada, el escurrimiento o el reporte no son como se pensaba.',
  },
  'record.beyondRecord': {
    en: 'A level of {returnPeriod:number} years cannot be read from {years:count} complete years.',
    es: 'Un nivel de {returnPeriod:number} años no se puede leer de {years:count} años completos.',
  },
  'record.count': { en: '{count:number} is not a count.', es: '{count:number} no es una cuenta.' },
  'record.confidence': { en: 'A confidence lies between 0 and 1.', es: 'Una confianza está entre 0 y 1.' },
  'record.place': { en: '{latitude:text}, {longitude:text} is no place on earth.', es: '{latitude:text}, {longitude:text} no es un lugar de la tierra.' },
  'record.stopped': { en: 'Stopped.', es: 'Detenido.' },
  'record.unfinished': { en: 'The run is not done yet.', es: 'El cálculo aún no termina.' },
});
