import { catalogue } from '../../catalogue.ts';

/** I. Concrete and restoration. */
export const i = catalogue({
  'checklists.I1.what': { en: 'Dowels, isolation joint at the house, forms, control joints', es: 'Pasadores, junta de aislamiento en la casa, formas, juntas de control' },
  'checklists.I1.acceptance': {
    en: 'Bars {bar:tape} every {barFrom:tape} to {barTo:tape}, {embedFrom:tape} to {embedTo:tape} deep; joints line up, {spacingFrom:count} to {spacingTo:count} slab depths apart, {depthShare:percent} deep',
    es: 'Varillas de {bar:tape} cada {barFrom:tape} a {barTo:tape}, {embedFrom:tape} a {embedTo:tape} de fondo; juntas alineadas, a {spacingFrom:count} a {spacingTo:count} gruesos de losa, {depthShare:percent} de hondo',
  },
  'checklists.I1.photo': { en: 'The forms before the pour', es: 'Las formas antes de colar' },
  'checklists.I1.whyCrew': { en: 'A strip without dowels drops.', es: 'Una franja sin pasadores se baja.' },
  'checklists.I1.whyHome': { en: 'The new strip will not sink.', es: 'La franja nueva no se hundirá.' },

  'checklists.I2.what': { en: 'Channel level and grate tape checked again before the concrete', es: 'Nivel del canal y cinta de la rejilla revisados antes del concreto' },
  'checklists.I2.acceptance': { en: '{recessMin:tape} to {recessMax:tape} below the slab at both ends and the middle; tape seen again', es: '{recessMin:tape} a {recessMax:tape} bajo la losa en los extremos y al medio; cinta vista otra vez' },
  'checklists.I2.photo': { en: 'The level on the taped grate, in three places', es: 'El nivel sobre la rejilla encintada, en tres lugares' },
  'checklists.I2.whyCrew': { en: 'It moves when you pour.', es: 'Se mueve al colar.' },
  'checklists.I2.whyHome': { en: 'We look once more before it is fixed for good.', es: 'Miramos otra vez antes de que quede fijo.' },

  'checklists.I3.what': { en: 'Place the concrete, vibrate lightly by hand, slope to the grate, cure, barrier', es: 'Colar el concreto, vibrar suave a mano, pendiente a la rejilla, curar, barrera' },
  'checklists.I3.acceptance': {
    en: 'Edge {edgeMin:tape} to {edgeMax:tape} above the grate; slope {slopeMin:percent} to {slopeMax:percent}; feet after {foot:hours}, wheels after {wheelDays:count} days',
    es: 'Borde {edgeMin:tape} a {edgeMax:tape} sobre la rejilla; pendiente {slopeMin:percent} a {slopeMax:percent}; pies tras {foot:hours}, ruedas tras {wheelDays:count} días',
  },
  'checklists.I3.photo': { en: 'The straightedge on the wet concrete', es: 'La regla sobre el concreto fresco' },
  'checklists.I3.whyCrew': { en: 'The finish is the last chance for fall.', es: 'El acabado es la última oportunidad de dar caída.' },
  'checklists.I3.whyHome': { en: 'Water runs to the drain.', es: 'El agua corre al desagüe.' },

  'checklists.I3Inlet.what': { en: 'Place the concrete, vibrate lightly by hand, slope to the inlet, cure, barrier', es: 'Colar el concreto, vibrar suave a mano, pendiente a la caja, curar, barrera' },
  'checklists.I3Inlet.acceptance': {
    en: 'Edge {edgeMin:tape} to {edgeMax:tape} above the grate; slope {slopeMin:percent} to {slopeMax:percent}; feet after {foot:hours}, wheels after {wheelDays:count} days',
    es: 'Borde {edgeMin:tape} a {edgeMax:tape} sobre la rejilla; pendiente {slopeMin:percent} a {slopeMax:percent}; pies tras {foot:hours}, ruedas tras {wheelDays:count} días',
  },
  'checklists.I3Inlet.photo': { en: 'The straightedge on the wet concrete', es: 'La regla sobre el concreto fresco' },
  'checklists.I3Inlet.whyCrew': { en: 'The finish is the last chance for fall.', es: 'El acabado es la última oportunidad de dar caída.' },
  'checklists.I3Inlet.whyHome': { en: 'Water runs to the drain.', es: 'El agua corre al desagüe.' },
  'checklists.I3Ends.what': { en: 'Place the concrete, vibrate lightly by hand, fall as the old slab, cure, barrier', es: 'Colar el concreto, vibrar suave a mano, caída como la losa vieja, curar, barrera' },
  'checklists.I3Ends.acceptance': {
    en: 'Step to the old slab {step:tape} or less; fall {slopeMin:percent} or more; feet after {foot:hours}, wheels after {wheelDays:count} days',
    es: 'Escalón con la losa vieja {step:tape} o menos; caída {slopeMin:percent} o más; pies tras {foot:hours}, ruedas tras {wheelDays:count} días',
  },
  'checklists.I3Ends.photo': { en: 'The straightedge across the wet concrete', es: 'La regla a través del concreto fresco' },
  'checklists.I3Ends.whyCrew': { en: 'A step trips; a dip ponds.', es: 'Un escalón hace tropezar; un hundido encharca.' },
  'checklists.I3Ends.whyHome': { en: 'Your patio is whole again.', es: 'Su patio queda entero otra vez.' },

  'checklists.I6.what': { en: 'Sod back, irrigation mended and run, soil below sills and weeps', es: 'Césped puesto, riego reparado y probado, suelo bajo umbrales y purgas' },
  'checklists.I6.acceptance': { en: 'Flush within {flush:tape}; heads run', es: 'Parejo dentro de {flush:tape}; los aspersores corren' },
  'checklists.I6.photo': { en: 'The heads spraying', es: 'Los aspersores regando' },
  'checklists.I6.whyCrew': { en: 'A broken lateral comes back as a soggy yard.', es: 'Un lateral roto vuelve como patio mojado.' },
  'checklists.I6.whyHome': { en: 'The garden is as before.', es: 'El jardín queda como antes.' },

  'checklists.I7.what': { en: 'New parts flushed until the water runs clear', es: 'Piezas nuevas lavadas hasta que el agua sale limpia' },
  'checklists.I7.acceptance': { en: 'No soil left inside', es: 'Sin tierra adentro' },
  'checklists.I7.photo': { en: 'Clear water at the outlet', es: 'Agua limpia en la salida' },
  'checklists.I7.whyCrew': { en: 'Soil left in a pipe stays in it.', es: 'La tierra que queda en un tubo ahí se queda.' },
  'checklists.I7.whyHome': { en: 'The new system starts clean.', es: 'El sistema nuevo empieza limpio.' },
  'checklists.I7Both.what': { en: 'Tape off, channel flushed, basin vacuumed', es: 'Cinta fuera, canal lavado, pozo aspirado' },
  'checklists.I7Both.acceptance': { en: 'Clean', es: 'Limpio' },
  'checklists.I7Both.photo': { en: 'The clean channel', es: 'El canal limpio' },
  'checklists.I7Both.whyCrew': { en: 'Slurry kills pumps.', es: 'El lodo mata bombas.' },
  'checklists.I7Both.whyHome': { en: 'The new system starts clean.', es: 'El sistema nuevo empieza limpio.' },
  'checklists.I7Grate.what': { en: 'Tape off, channel flushed', es: 'Cinta fuera, canal lavado' },
  'checklists.I7Grate.acceptance': { en: 'Clean', es: 'Limpio' },
  'checklists.I7Grate.photo': { en: 'The clean channel', es: 'El canal limpio' },
  'checklists.I7Grate.whyCrew': { en: 'Slurry left in a channel sets hard.', es: 'El lodo que queda en un canal se endurece.' },
  'checklists.I7Grate.whyHome': { en: 'The new system starts clean.', es: 'El sistema nuevo empieza limpio.' },
  'checklists.I7Basin.what': { en: 'Lines flushed, basin vacuumed', es: 'Líneas lavadas, pozo aspirado' },
  'checklists.I7Basin.acceptance': { en: 'Clean', es: 'Limpio' },
  'checklists.I7Basin.photo': { en: 'The clean basin', es: 'El pozo limpio' },
  'checklists.I7Basin.whyCrew': { en: 'Slurry kills pumps.', es: 'El lodo mata bombas.' },
  'checklists.I7Basin.whyHome': { en: 'The new system starts clean.', es: 'El sistema nuevo empieza limpio.' },
});
