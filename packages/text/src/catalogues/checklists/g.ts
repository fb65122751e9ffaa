import { catalogue } from '../../catalogue.ts';

/** G. Discharge and outlet. */
export const g = catalogue({
  'checklists.G1.what': { en: 'Line primed and cemented, cure logged, depth, warning tape, crossings', es: 'Línea con imprimador y cemento, curado anotado, profundidad, cinta de aviso, cruces' },
  'checklists.G1.acceptance': { en: 'Purple seen; time and temperature written; {cover:tape} of cover or the frost rule', es: 'Morado visible; hora y temperatura anotadas; {cover:tape} de cubierta o la regla de helada' },
  'checklists.G1.photo': { en: 'The joints, and the tape in the trench', es: 'Las juntas, y la cinta en la zanja' },
  'checklists.G1.whyCrew': { en: 'A blow-off floods the trench; an aerator spikes a shallow line.', es: 'Una junta suelta inunda la zanja; un aireador pincha una línea baja.' },
  'checklists.G1.whyHome': { en: 'Welded joints, deep enough for shovels and frost.', es: 'Juntas soldadas, hondas para palas y heladas.' },

  'checklists.G3.what': { en: 'Pressure check with the pump, trench open', es: 'Prueba de presión con la bomba, zanja abierta' },
  'checklists.G3.acceptance': { en: '{run:minutes} run, no drips, no movement', es: '{run:minutes} de marcha, sin goteo, sin movimiento' },
  'checklists.G3.photo': { en: 'All joints after the run', es: 'Todas las juntas después de la marcha' },
  'checklists.G3.whyCrew': { en: 'Find it now.', es: 'Encuéntrelo ahora.' },
  'checklists.G3.whyHome': { en: 'Tested before it is covered.', es: 'Probado antes de taparlo.' },

  'checklists.G4.what': { en: 'Percolation pit: stone, fabric, hole down, above ground water', es: 'Pozo de percolación: piedra, tela, agujero abajo, sobre el agua del suelo' },
  'checklists.G4.acceptance': { en: 'As large as designed; empty {drains:hours} after the test', es: 'Tan grande como el diseño; vacío {drains:hours} después de la prueba' },
  'checklists.G4.photo': { en: 'The pit with the tape', es: 'El pozo con la cinta' },
  'checklists.G4.whyCrew': { en: 'A full line stinks, freezes and breeds mosquitoes.', es: 'Una línea llena huele, se congela y cría mosquitos.' },
  'checklists.G4.whyHome': { en: 'The pipe empties itself after rain.', es: 'El tubo se vacía solo después de la lluvia.' },

  'checklists.G5.what': { en: 'Emitter level with the sod, in its place, not toward a neighbor or walk', es: 'Emisor al nivel del césped, en su lugar, no hacia un vecino o acera' },
  'checklists.G5.acceptance': { en: '{foundation:length} from foundations, {lotLine:length} from the lot line; opens fully', es: 'A {foundation:length} de cimientos, a {lotLine:length} del lindero; abre del todo' },
  'checklists.G5.photo': { en: 'The emitter with the tape to the lot line', es: 'El emisor con la cinta al lindero' },
  'checklists.G5.whyCrew': { en: 'Water that comes round again is a complaint.', es: 'Agua que regresa es una queja.' },
  'checklists.G5.whyHome': { en: 'Water leaves legally and gently.', es: 'El agua sale legal y suavemente.' },

  'checklists.G6.what': { en: 'Curb or ditch connection inspected', es: 'Conexión a la acera o zanja inspeccionada' },
  'checklists.G6.acceptance': { en: 'The inspector passes it', es: 'El inspector la aprueba' },
  'checklists.G6.photo': { en: 'The inspection tag', es: 'La etiqueta de inspección' },
  'checklists.G6.whyCrew': { en: 'No cover before the pass.', es: 'No tapar antes de aprobar.' },
  'checklists.G6.whyHome': { en: 'The city has approved it.', es: 'La ciudad lo aprobó.' },

  'checklists.G7.what': { en: 'Outlet trench backfilled in lifts', es: 'Zanja de salida rellenada por capas' },
  'checklists.G7.acceptance': { en: 'Lifts of {lift:tape}, tamped', es: 'Capas de {lift:tape}, compactadas' },
  'checklists.G7.photo': { en: 'The lifts', es: 'Las capas' },
  'checklists.G7.whyCrew': { en: 'A settled trench is a call-back.', es: 'Una zanja asentada es una visita de regreso.' },
  'checklists.G7.whyHome': { en: 'No sunken stripe in your lawn.', es: 'Sin franja hundida en su césped.' },
});
