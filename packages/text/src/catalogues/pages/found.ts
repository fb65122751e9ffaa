import { catalogue } from '../../catalogue.ts';

export const foundPages = catalogue({
  'found.photo': { en: 'Photo of it', es: 'Foto de esto' },
  'found.photoHint': { en: 'With a tape in the picture, and enough around it to find the place.', es: 'Con una cinta en la foto y bastante alrededor para ubicar el lugar.' },
  'found.measure.thickerSlab': { en: 'Slab, measured', es: 'Losa, medida' },
  'found.measure.steel': { en: 'Depth to the steel', es: 'Profundidad hasta el acero' },
  'found.measure.pipeInTheWay': { en: 'Depth to the top of the pipe', es: 'Profundidad hasta arriba del tubo' },
  'found.measure.water': { en: 'Depth of the water', es: 'Profundidad del agua' },
  'found.measure.soil': { en: 'Depth where it begins', es: 'Profundidad donde empieza' },
  'found.measure.utility': { en: 'Depth to the line', es: 'Profundidad hasta la línea' },
  'found.measure.other': { en: 'Measured', es: 'Medido' },
  'found.note': { en: 'In a few words', es: 'En pocas palabras' },
  'found.send': { en: 'Work has stopped; ask the office', es: 'El trabajo paró; preguntar a la oficina' },
  'found.back': { en: 'It was something else', es: 'Era otra cosa' },
  'found.here': { en: '{n:plural|# report is|# reports are} on this phone and not yet in the office. Call if it cannot wait.', es: '{n:plural|# reporte está|# reportes están} en este teléfono y aún no en la oficina. Llame si no puede esperar.' },
  'found.atPart': { en: '{kind:text}: {part:text}', es: '{kind:text}: {part:text}' },
  'found.reported': { en: 'Reported by {by:text}, {at:dateTime}', es: 'Reportado por {by:text}, {at:dateTime}' },
  'found.yourAnswer': { en: 'What the crew shall do', es: 'Qué debe hacer la cuadrilla' },
  'found.yourAnswerHint': { en: 'If it changes the price or the design, the customer agrees first.', es: 'Si cambia el precio o el diseño, primero acepta el cliente.' },
});
