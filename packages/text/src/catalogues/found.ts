import { catalogue } from '../catalogue.ts';

export const found = catalogue({
  'found.title': { en: 'What the crew found', es: 'Lo que encontró la cuadrilla' },
  'found.stop': { en: 'Stop work and say what we found', es: 'Parar la obra y decir qué se halló' },
  'found.kind.thickerSlab': { en: 'A thicker slab', es: 'Una losa más gruesa' },
  'found.kind.steel': { en: 'Steel in the slab', es: 'Acero en la losa' },
  'found.kind.pipeInTheWay': { en: 'A pipe in the way', es: 'Un tubo en el camino' },
  'found.kind.water': { en: 'Water in the trench', es: 'Agua en la zanja' },
  'found.kind.soil': { en: 'Other soil than expected', es: 'Otro suelo del esperado' },
  'found.kind.utility': { en: 'A utility line', es: 'Una línea de servicio' },
  'found.kind.other': { en: 'Something else', es: 'Otra cosa' },
  'found.measure': { en: 'Measured', es: 'Medido' },
  'found.answer': { en: 'Answer and let the work go on', es: 'Responder y dejar seguir el trabajo' },
  'found.open': { en: 'Waiting for the estimator', es: 'Esperando al estimador' },
  'found.answered': { en: 'Answered by {by:text}, {at:dateTime}', es: 'Respondido por {by:text}, {at:dateTime}' },
  'found.hold.open': { en: 'Work stopped: {kind:term}', es: 'Trabajo parado: {kind:term}' },
});
