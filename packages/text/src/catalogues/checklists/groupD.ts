import { catalogue } from '../../catalogue.ts';

/** D. Channel and inlets. */
export const d = catalogue({
  'checklists.D1.what': { en: 'Channel bed: concrete or compacted, tie rods or brackets', es: 'Cama del canal: concreto o compactada, varillas o soportes' },
  'checklists.D1.acceptance': { en: 'Depth within {tolerance:tape}', es: 'Profundidad dentro de {tolerance:tape}' },
  'checklists.D1.photo': { en: 'The bed with the tape', es: 'La cama con la cinta' },
  'checklists.D1.whyCrew': { en: 'The channel floats or sinks when poured.', es: 'El canal flota o se hunde al colar.' },
  'checklists.D1.whyHome': { en: 'It cannot settle and trip you.', es: 'No puede asentarse y hacerlo tropezar.' },

  'checklists.D2.what': { en: 'Channel to the string, braced against floating and side squeeze', es: 'Canal al hilo, apuntalado contra flotación y presión lateral' },
  'checklists.D2.acceptance': {
    en: 'Grate {recessMin:tape} to {recessMax:tape} below the slab on both sides, inverts within {tolerance:tape}, braces every {brace:length}',
    es: 'Rejilla {recessMin:tape} a {recessMax:tape} bajo la losa a ambos lados, fondos dentro de {tolerance:tape}, apoyos cada {brace:length}',
  },
  'checklists.D2.photo': { en: 'The level readout at both ends', es: 'La lectura de nivel en los dos extremos' },
  'checklists.D2.whyCrew': { en: 'Proud is a lawsuit; high is no drain.', es: 'Salida es demanda; alta no drena.' },
  'checklists.D2.whyHome': { en: 'Water falls in, toes do not trip.', es: 'El agua cae, los pies no tropiezan.' },

  'checklists.D3.what': { en: 'Joints sealed, end caps on, outlet glued', es: 'Juntas selladas, tapas puestas, salida pegada' },
  'checklists.D3.acceptance': { en: 'No light or gap; hose leak test', es: 'Sin luz ni hueco; prueba con manguera' },
  'checklists.D3.photo': { en: 'Each joint', es: 'Cada junta' },
  'checklists.D3.whyCrew': { en: 'A leak washes out the bed.', es: 'Una fuga lava la cama.' },
  'checklists.D3.whyHome': { en: 'Water goes in the pipe, not under your patio.', es: 'El agua va al tubo, no bajo su patio.' },

  'checklists.D4.what': { en: 'Grate fitted, locked and taped over', es: 'Rejilla puesta, asegurada y encintada' },
  'checklists.D4.acceptance': {
    en: 'Taped whole, both caps in place, locked; not lifted since the photos, which are at most {fresh:hours} before the pour',
    es: 'Encintada entera, ambas tapas puestas, asegurada; sin levantar desde las fotos, a lo sumo {fresh:hours} antes de colar',
  },
  'checklists.D4.photo': { en: 'The whole taped grate, from both ends', es: 'Toda la rejilla encintada, desde los dos extremos' },
  'checklists.D4.whyCrew': { en: 'Concrete in the slots is a day with a chisel.', es: 'Concreto en las ranuras es un día con cincel.' },
  'checklists.D4.whyHome': { en: 'Your new grate stays clean.', es: 'Su rejilla nueva queda limpia.' },

  'checklists.D4Inlet.what': { en: 'Inlet grate fitted, locked and taped over', es: 'Rejilla de la caja puesta, asegurada y encintada' },
  'checklists.D4Inlet.acceptance': {
    en: 'Taped whole, pipe ends capped; not lifted since the photos, which are at most {fresh:hours} before the pour',
    es: 'Encintada entera, tubos tapados; sin levantar desde las fotos, a lo sumo {fresh:hours} antes de colar',
  },
  'checklists.D4Inlet.photo': { en: 'The whole taped grate, from two sides', es: 'Toda la rejilla encintada, desde dos lados' },
  'checklists.D4Inlet.whyCrew': { en: 'Concrete in the slots is a day with a chisel.', es: 'Concreto en las ranuras es un día con cincel.' },
  'checklists.D4Inlet.whyHome': { en: 'Your new grate stays clean.', es: 'Su rejilla nueva queda limpia.' },
  'checklists.D4Ends.what': { en: 'Every opening at the pour capped and taped: pipe ends, cleanouts, grates', es: 'Toda abertura junto al colado tapada y encintada: tubos, registros, rejillas' },
  'checklists.D4Ends.acceptance': {
    en: 'Nothing open to the concrete; not lifted since the photos, which are at most {fresh:hours} before the pour',
    es: 'Nada abierto al concreto; sin quitar desde las fotos, a lo sumo {fresh:hours} antes de colar',
  },
  'checklists.D4Ends.photo': { en: 'Each cap and the whole cut, from both ends', es: 'Cada tapa y todo el corte, desde los dos extremos' },
  'checklists.D4Ends.whyCrew': { en: 'Concrete in a pipe is a new pipe.', es: 'Concreto en un tubo es un tubo nuevo.' },
  'checklists.D4Ends.whyHome': { en: 'Your new pipe stays clear.', es: 'Su tubo nuevo queda libre.' },

  'checklists.D6.what': { en: 'Catch basin: rim level, sump, basket', es: 'Caja de rejilla: nivel del borde, sumidero, canasta' },
  'checklists.D6.acceptance': { en: 'Rim within {tolerance:tape}; sump {sump:tape} or more below the invert', es: 'Borde dentro de {tolerance:tape}; sumidero {sump:tape} o más bajo el fondo del tubo' },
  'checklists.D6.photo': { en: 'The tape in the sump', es: 'La cinta en el sumidero' },
  'checklists.D6.whyCrew': { en: 'A dirt trap.', es: 'Una trampa de tierra.' },
  'checklists.D6.whyHome': { en: 'The box catches dirt so the pipe stays clear.', es: 'La caja atrapa la tierra y el tubo queda limpio.' },

  'checklists.D7.what': { en: 'Roof leaders sealed to the buried pipe, leaf filter, cleanout', es: 'Bajantes selladas al tubo enterrado, filtro de hojas, registro' },
  'checklists.D7.acceptance': { en: 'Glued or banded, tight to {head:length} of water', es: 'Pegadas o con abrazadera, sin fuga a {head:length} de agua' },
  'checklists.D7.photo': { en: 'The joint', es: 'La junta' },
  'checklists.D7.whyCrew': { en: 'They run under pressure when full.', es: 'Trabajan a presión cuando están llenas.' },
  'checklists.D7.whyHome': { en: 'Roof water leaves in a pipe of its own.', es: 'El agua del techo sale por su propio tubo.' },
});
