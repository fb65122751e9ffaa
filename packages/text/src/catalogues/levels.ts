import { catalogue } from '../catalogue.ts';

/** What a level book can be asked back about, by the code of the calc package. */
export const levels = catalogue({
  'levels.noReadings': { en: 'The book has no readings yet.', es: 'La libreta aún no tiene lecturas.' },
  'levels.noBacksightFirst': { en: 'The book must start with a backsight on the bench mark; {point:text} came before it.', es: 'La libreta debe empezar con una vista atrás al punto de referencia; {point:text} vino antes.' },
  'levels.backsightOnUnknownPoint': { en: '{point:text} has a backsight, but its level is not known yet.', es: '{point:text} tiene vista atrás, pero su nivel aún no se conoce.' },
  'levels.noSetUp': { en: '{point:text} was read before the instrument had a height.', es: '{point:text} se leyó antes de que el instrumento tuviera altura.' },
  'levels.emptyReading': { en: '{point:text} has no reading.', es: '{point:text} no tiene lectura.' },
  'levels.twoSights': { en: '{point:text} has two sights in one line that do not go together.', es: '{point:text} tiene dos vistas en una línea que no van juntas.' },
  'levels.negativeRod': { en: 'A rod cannot read {value:relative}: was the number typed with a minus?', es: 'Una regla no puede leer {value:relative}: ¿se escribió un menos?' },
  'levels.foresightAboveInstrument': { en: 'A foresight of {value:relative} would put the point above the instrument.', es: 'Una vista adelante de {value:relative} pondría el punto sobre el instrumento.' },
  'levels.rodTooLong': { en: '{value:length} is more than a rod of {longest:length} can read: feet or inches?', es: '{value:length} es más de lo que lee una regla de {longest:length}: ¿pies o pulgadas?' },
  'levels.notFinite': { en: 'A reading is not a number.', es: 'Una lectura no es un número.' },
  'levels.wrongMode': { en: 'A line holds a reading that does not belong to the way this rod is read.', es: 'Una línea tiene una lectura que no corresponde al modo de leer la regla.' },
  'levels.list.empty': { en: 'The list has no points.', es: 'La lista no tiene puntos.' },
  'levels.list.tooMany': { en: 'A list of more than {most:number} points is too long for a yard.', es: 'Una lista de más de {most:number} puntos es muy larga para un patio.' },
  'levels.list.order': { en: 'Northing, easting and elevation each need one column.', es: 'Norte, este y elevación necesitan una columna cada uno.' },
  'levels.list.cellMissing': { en: 'Line {line:count}, column {column:count}: here stands nothing.', es: 'Línea {line:count}, columna {column:count}: aquí no hay nada.' },
  'levels.list.notANumber': { en: 'Line {line:count}, column {column:count}: “{text:text}” is not a number. Is the order of the columns right?', es: 'Línea {line:count}, columna {column:count}: “{text:text}” no es un número. ¿Es correcto el orden de las columnas?' },
  'levels.list.openQuote': { en: 'Line {line:count}, column {column:count}: a quotation mark is opened and not closed.', es: 'Línea {line:count}, columna {column:count}: una comilla se abre y no se cierra.' },
  'levels.list.twice': { en: 'Line {line:count}: point {point:text} stands in line {other:count} already.', es: 'Línea {line:count}: el punto {point:text} ya está en la línea {other:count}.' },
  'levels.list.tooWide': { en: 'Line {line:count}: the points lie more than {most:length} apart. Is the order of the columns right?', es: 'Línea {line:count}: los puntos están a más de {most:length}. ¿Es correcto el orden de las columnas?' },
  'levels.repeatedId': { en: 'Two lines of the book are the same line.', es: 'Dos líneas de la libreta son la misma.' },
});
