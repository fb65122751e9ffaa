import { catalogue } from '../../catalogue.ts';

/** J. Prove and hand over. */
export const j = catalogue({
  'checklists.J1.what': { en: 'Pump-down, {runs:count} times', es: 'Vaciado con la bomba, {runs:count} veces' },
  'checklists.J1.acceptance': { en: 'Within {pass:percent} of the design passes; up to {warn:percent} is explained', es: 'Dentro de {pass:percent} del diseño pasa; hasta {warn:percent} se explica' },
  'checklists.J1.photo': { en: 'The stopwatch and the tape', es: 'El cronómetro y la cinta' },
  'checklists.J1.whyCrew': { en: 'It proves pipe, check valve and curve.', es: 'Prueba tubo, válvula y curva.' },
  'checklists.J1.whyHome': { en: 'The pump moves what we promised.', es: 'La bomba mueve lo que prometimos.' },

  'checklists.J2.what': { en: 'Check valve holds; starts and stops by itself; alarm float lifts', es: 'La válvula retiene; arranca y para sola; el flotador de alarma sube' },
  'checklists.J2.acceptance': { en: '{cycles:count} of {cycles:count} starts; no more rise after the stop than the riser holds; alarm sounds', es: '{cycles:count} de {cycles:count} arranques; no sube más que lo que guarda la subida; suena la alarma' },
  'checklists.J2.photo': { en: 'The tape in the basin after the stop', es: 'La cinta en el pozo después de parar' },
  'checklists.J2.whyCrew': { en: 'A leaky check valve short-cycles; one hang-up now is a flood later.', es: 'Una válvula con fuga hace arrancar a cada rato; un atasco hoy es inundación mañana.' },
  'checklists.J2.whyHome': { en: 'It starts by itself and does not run back.', es: 'Arranca sola y el agua no regresa.' },

  'checklists.J4.what': { en: 'Hose test along the whole grate', es: 'Prueba de manguera en toda la rejilla' },
  'checklists.J4.acceptance': { en: '{from:minutes} to {to:minutes}; no pond over {pond:tape} after {after:seconds}', es: '{from:minutes} a {to:minutes}; sin charco de más de {pond:tape} tras {after:seconds}' },
  'checklists.J4.photo': { en: 'The whole grate with water running', es: 'Toda la rejilla con el agua corriendo' },
  'checklists.J4.whyCrew': { en: 'It shows a low corner while we are still here.', es: 'Muestra una esquina baja mientras aún estamos aquí.' },
  'checklists.J4.whyHome': { en: 'Water goes where it should.', es: 'El agua va adonde debe.' },

  'checklists.J5.what': { en: 'Drum test: {drum:volume} at once at the low spot', es: 'Prueba de tambor: {drum:volume} de una vez en el punto bajo' },
  'checklists.J5.acceptance': { en: 'Pond stays below the mark and clears in time', es: 'El charco queda bajo la marca y se vacía a tiempo' },
  'checklists.J5.photo': { en: 'The pond at its highest', es: 'El charco en su punto más alto' },
  'checklists.J5.whyCrew': { en: 'The only cheap storm we have. Fill the drum in place.', es: 'La única tormenta barata que tenemos. Llene el tambor en su lugar.' },
  'checklists.J5.whyHome': { en: 'A small cloudburst, on purpose.', es: 'Un pequeño aguacero, a propósito.' },

  'checklists.J7.what': { en: 'As-built levels, and {ties:count} tapes to every buried part', es: 'Niveles como quedó, y {ties:count} cintas a cada pieza enterrada' },
  'checklists.J7.acceptance': { en: 'All of them', es: 'Todas' },
  'checklists.J7.photo': { en: 'The plan with the ties', es: 'El plano con las medidas' },
  'checklists.J7.whyCrew': { en: 'For the next dig.', es: 'Para la próxima excavación.' },
  'checklists.J7.whyHome': { en: 'Your map.', es: 'Su mapa.' },

  'checklists.J8.what': { en: 'The homeowner shows it back: breaker, alarm, basket, bucket test', es: 'El dueño lo muestra: interruptor, alarma, canasta, prueba de cubeta' },
  'checklists.J8.acceptance': { en: 'The homeowner does all {tests:count}', es: 'El dueño hace los {tests:count}' },
  'checklists.J8.photo': { en: 'The homeowner doing it', es: 'El dueño haciéndolo' },
  'checklists.J8.whyCrew': { en: 'Fewer calls at night.', es: 'Menos llamadas de noche.' },
  'checklists.J8.whyHome': { en: 'You are able to check it.', es: 'Usted puede revisarlo.' },

  'checklists.J9.what': { en: 'Sign-off, warranty start, open points', es: 'Firma final, inicio de garantía, puntos pendientes' },
  'checklists.J9.acceptance': { en: 'Signed', es: 'Firmado' },
  'checklists.J9.whyCrew': { en: 'The job is done when it is signed.', es: 'El trabajo termina cuando se firma.' },
  'checklists.J9.whyHome': { en: 'Your warranty starts today, in writing.', es: 'Su garantía empieza hoy, por escrito.' },
});
