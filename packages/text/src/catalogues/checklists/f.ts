import { catalogue } from '../../catalogue.ts';

/** F. Basin, pump, riser. */
export const f = catalogue({
  'checklists.F1.what': { en: 'Basin plumb, rim at height, inlet not strained', es: 'Pozo a plomo, borde a su altura, entrada sin esfuerzo' },
  'checklists.F1.acceptance': {
    en: 'Plumb within {tolerance:tape} over {plumbOver:length}; lid {lidMin:tape} to {lidMax:tape} above the sod; a {bell:diameter} bell snug in a {hole:diameter} hole',
    es: 'A plomo dentro de {tolerance:tape} en {plumbOver:length}; tapa {lidMin:tape} a {lidMax:tape} sobre el césped; campana de {bell:diameter} justa en agujero de {hole:diameter}',
  },
  'checklists.F1.photo': { en: 'The level on the rim', es: 'El nivel sobre el borde' },
  'checklists.F1.whyCrew': { en: 'A leaning wall catches the float.', es: 'Una pared inclinada atrapa el flotador.' },
  'checklists.F1.whyHome': { en: 'The lid sits neat and safe.', es: 'La tapa queda pareja y segura.' },

  'checklists.F2.what': { en: 'Collar against floating; basin full of water while the stone goes round; inlet seal tight', es: 'Collar contra flotación; pozo lleno de agua al poner la piedra; sello de entrada firme' },
  'checklists.F2.acceptance': { en: 'Bags as designed; no way for soil at the seal', es: 'Sacos como el diseño; sin paso de tierra en el sello' },
  'checklists.F2.photo': { en: 'The collar, and the seal', es: 'El collar y el sello' },
  'checklists.F2.whyCrew': { en: 'Empty basins pop up in the wet season.', es: 'Los pozos vacíos saltan en época de lluvias.' },
  'checklists.F2.whyHome': { en: 'Ground water cannot lift it out.', es: 'El agua del suelo no lo puede levantar.' },

  'checklists.F4.what': { en: 'Riser put together dry, then glued outside the pit', es: 'Subida armada en seco y luego pegada fuera del pozo' },
  'checklists.F4.acceptance': { en: 'Temperature and time written; cured before the pressure check', es: 'Temperatura y hora anotadas; curado antes de la prueba de presión' },
  'checklists.F4.photo': { en: 'The riser on the bench', es: 'La subida sobre la mesa' },
  'checklists.F4.whyCrew': { en: 'You cannot glue upside down in a hole.', es: 'No se puede pegar de cabeza en un hoyo.' },
  'checklists.F4.whyHome': { en: 'Neater, dry joints.', es: 'Juntas más limpias y secas.' },

  'checklists.F5.what': { en: 'Weep hole drilled below the check valve, above the pump, to the wall', es: 'Agujero de purga bajo la válvula, sobre la bomba, hacia la pared' },
  'checklists.F5.acceptance': { en: '{min:tape} to {max:tape} as designed, no burr', es: '{min:tape} a {max:tape} como el diseño, sin rebaba' },
  'checklists.F5.photo': { en: 'The hole with a ruler', es: 'El agujero con una regla' },
  'checklists.F5.whyCrew': { en: 'No weep hole: air lock, then flood.', es: 'Sin purga: bolsa de aire y luego inundación.' },
  'checklists.F5.whyHome': { en: 'A little squirt inside the pit is normal and wanted.', es: 'Un chorrito dentro del pozo es normal y deseado.' },

  'checklists.F6.what': { en: 'Check valve arrow away from the pump, in reach, clamp screw facing you', es: 'Flecha de la válvula hacia fuera de la bomba, al alcance, tornillo hacia usted' },
  'checklists.F6.acceptance': { en: 'Arrow seen; screwdriver tried by hand', es: 'Flecha vista; destornillador probado a mano' },
  'checklists.F6.photo': { en: 'The arrow and the screwdriver', es: 'La flecha y el destornillador' },
  'checklists.F6.whyCrew': { en: 'The next service takes minutes, not hours.', es: 'El próximo servicio toma minutos, no horas.' },
  'checklists.F6.whyHome': { en: 'The pump can be changed without cutting.', es: 'La bomba se cambia sin cortar.' },

  'checklists.F7.what': { en: 'Pump on its stand, cord and float free, on, off and alarm set', es: 'Bomba en su base, cable y flotador libres, encendido, apagado y alarma fijados' },
  'checklists.F7.acceptance': { en: 'Each within {tolerance:tape} of the design; float clear by {clear:tape}', es: 'Cada uno dentro de {tolerance:tape} del diseño; flotador libre {clear:tape}' },
  'checklists.F7.photo': { en: 'The tape in the basin', es: 'La cinta en el pozo' },
  'checklists.F7.whyCrew': { en: 'Float on the wall, dead pump.', es: 'Flotador en la pared, bomba muerta.' },
  'checklists.F7.whyHome': { en: 'These marks decide when it runs.', es: 'Estas marcas deciden cuándo trabaja.' },

  'checklists.F8.what': { en: 'Basin calibrated by measured fills, marks on the wall', es: 'Pozo calibrado con llenados medidos, marcas en la pared' },
  'checklists.F8.acceptance': { en: '{marks:count} marks or more', es: '{marks:count} marcas o más' },
  'checklists.F8.photo': { en: 'The marks', es: 'Las marcas' },
  'checklists.F8.whyCrew': { en: 'It makes the pump test true.', es: 'Hace cierta la prueba de la bomba.' },
  'checklists.F8.whyHome': { en: 'We can measure the pump any year.', es: 'Podemos medir la bomba cualquier año.' },
});
