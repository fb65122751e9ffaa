import { catalogue } from '../../catalogue.ts';

/** What holds a job, and why a release to dig is held. */
export const jobHolds = catalogue({
  'jobs.hold.failed': { en: 'Failed or in dispute: “{point:term}”{count:plural|| and # in all}', es: 'Falló o hay desacuerdo: “{point:term}”{count:plural|| y son #}' },
  'jobs.hold.visit': { en: 'Visit to arrange', es: 'Falta acordar la visita' },
  'jobs.hold.visitSoon': { en: 'Water came into the house: visit by {by:date}', es: 'Entró agua en la casa: visita antes del {by:date}' },
  'jobs.hold.leakTest': { en: 'Water on dry days: test for a leak before anything else', es: 'Agua en días secos: primero buscar una fuga' },
  'jobs.hold.survey': { en: 'Levels to take', es: 'Faltan los niveles' },
  'jobs.hold.design': { en: 'Design to issue', es: 'Falta emitir el diseño' },
  'jobs.hold.price': { en: 'Price to work out', es: 'Falta calcular el precio' },
  'jobs.hold.offer': { en: 'Offer to send', es: 'Falta enviar la oferta' },
  'jobs.hold.answer': { en: 'Offer {number:count} waits for the customer until {validUntil:date}', es: 'La oferta {number:count} espera al cliente hasta el {validUntil:date}' },
  'jobs.hold.release': { en: 'Offer {number:count} is accepted: the owner releases it to dig', es: 'La oferta {number:count} está aceptada: falta el permiso de excavar del dueño' },
  'jobs.hold.renew': { en: 'Locate ticket {number:text}: renew it by {at:dateTime}', es: 'Boleto {number:text}: renovarlo antes de {at:dateTime}' },
  'jobs.hold.permits': { en: '{count:plural|# permit or approval is|# permits and approvals are} open: no release to dig', es: '{count:plural|# permiso o aprobación está abierto|# permisos y aprobaciones están abiertos}: no hay permiso de excavar' },
  'jobs.hold.referred': { en: 'An engineer is needed: the letter goes to the customer', es: 'Hace falta un ingeniero: la carta va al cliente' },
  'jobs.hold.locate': { en: 'Utility marks to request and wait for', es: 'Falta pedir y esperar las marcas de servicios' },

  'jobs.held.offerNotAccepted': { en: 'The offer is not accepted.', es: 'La oferta no está aceptada.' },
  'jobs.held.revisionNotIssued': { en: 'The design of the offer is not issued.', es: 'El diseño de la oferta no está emitido.' },
  'jobs.held.outletQuestion': { en: '{outlet:text}, {question:text} "{asks:term}": {why:term}.', es: '{outlet:text}, {question:text} «{asks:term}»: {why:term}.' },
  'jobs.held.permit': { en: '{permit:term}: {why:term}.', es: '{permit:term}: {why:term}.' },
  'jobs.held.referred': { en: 'The site goes to an engineer.', es: 'El sitio pasa a un ingeniero.' },
  'jobs.held.foundOpen': { en: 'Something that the crew found has no answer.', es: 'Algo que encontró la cuadrilla no tiene respuesta.' },
});
