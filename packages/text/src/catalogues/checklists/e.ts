import { catalogue } from '../../catalogue.ts';

/** E. Gravity pipe. */
export const e = catalogue({
  'checklists.E1.what': { en: 'Falls everywhere: shots at start, each fitting, end', es: 'Cae en todas partes: lecturas al inicio, en cada pieza, al final' },
  'checklists.E1.acceptance': {
    en: 'Each invert within {tolerance:tape}, fall as designed and never under {least:fall}, nowhere back',
    es: 'Cada fondo dentro de {tolerance:tape}, caída como el diseño y nunca menos de {least:fall}, nunca al revés',
  },
  'checklists.E1.photo': { en: 'The rod on each invert', es: 'La mira en cada fondo' },
  'checklists.E1.whyCrew': { en: 'A pipe that climbs holds dirt for ever.', es: 'Un tubo que sube guarda tierra para siempre.' },
  'checklists.E1.whyHome': { en: 'The pipe goes downhill all the way; here are the numbers.', es: 'El tubo baja todo el camino; aquí están los números.' },

  'checklists.E2.what': { en: 'Bedding under the full barrel, no rocks or blocks', es: 'Cama bajo todo el tubo, sin piedras ni bloques' },
  'checklists.E2.acceptance': { en: 'Sand or stone, {from:tape} to {to:tape}', es: 'Arena o piedra, {from:tape} a {to:tape}' },
  'checklists.E2.photo': { en: 'The open trench', es: 'La zanja abierta' },
  'checklists.E2.whyCrew': { en: 'A point load cracks pipe.', es: 'Una carga en un punto quiebra el tubo.' },
  'checklists.E2.whyHome': { en: 'Cushioned pipe lasts.', es: 'El tubo acolchado dura.' },

  'checklists.E3.what': { en: 'Sweep fittings, glued or gasketed, the right way round', es: 'Curvas suaves, pegadas o con empaque, en la dirección correcta' },
  'checklists.E3.acceptance': { en: 'No hard elbows', es: 'Sin codos cerrados' },
  'checklists.E3.photo': { en: 'Each fitting', es: 'Cada pieza' },
  'checklists.E3.whyCrew': { en: 'The snake must pass.', es: 'La guía debe pasar.' },
  'checklists.E3.whyHome': { en: 'It can be cleaned later.', es: 'Se puede limpiar después.' },

  'checklists.E4.what': { en: 'Cleanouts up to grade and capped', es: 'Registros hasta el nivel del suelo y tapados' },
  'checklists.E4.acceptance': { en: 'In reach and located', es: 'Al alcance y ubicados' },
  'checklists.E4.photo': { en: 'The cap with two tapes to fixed points', es: 'La tapa con dos cintas a puntos fijos' },
  'checklists.E4.whyCrew': { en: 'The next one will bless you.', es: 'El próximo se lo va a agradecer.' },
  'checklists.E4.whyHome': { en: 'You know where to clean.', es: 'Usted sabe dónde limpiar.' },

  'checklists.E5.what': { en: 'Fill and hold, or flow test, before backfill', es: 'Llenar y esperar, o prueba de flujo, antes de rellenar' },
  'checklists.E5.acceptance': {
    en: 'Filled: drop {drop:tape} or less in {hold:minutes}. Or hose: clear within {clear:seconds} of the stop. No wet joints',
    es: 'Lleno: baja {drop:tape} o menos en {hold:minutes}. O manguera: vacío a los {clear:seconds}. Juntas secas',
  },
  'checklists.E5.photo': { en: 'The test in progress', es: 'La prueba en marcha' },
  'checklists.E5.whyCrew': { en: 'After backfill every leak costs much more.', es: 'Después de rellenar cada fuga cuesta mucho más.' },
  'checklists.E5.whyHome': { en: 'We prove it before we cover it.', es: 'Lo probamos antes de taparlo.' },

  'checklists.E6.what': { en: 'Backfill in lifts, tamped', es: 'Relleno por capas, compactado' },
  'checklists.E6.acceptance': { en: 'Lifts of {lift:tape}, to {over:tape} over the pipe', es: 'Capas de {lift:tape}, hasta {over:tape} sobre el tubo' },
  'checklists.E6.photo': { en: 'The tamper at work', es: 'El compactador trabajando' },
  'checklists.E6.whyCrew': { en: 'A settled trench is a call-back.', es: 'Una zanja asentada es una visita de regreso.' },
  'checklists.E6.whyHome': { en: 'No sunken stripe in your lawn.', es: 'Sin franja hundida en su césped.' },
});
