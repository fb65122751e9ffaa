import { catalogue } from '../../catalogue.ts';

/** B. Arrive, protect, control levels. */
export const b = catalogue({
  'checklists.B1.what': { en: 'Photos of all faces, cracks, stains and plants, before', es: 'Fotos de todas las caras, grietas, manchas y plantas, antes' },
  'checklists.B1.acceptance': { en: '{photos:count} photos or more, cracks with a ruler', es: '{photos:count} fotos o más, grietas con regla' },
  'checklists.B1.photo': { en: 'Each face wide, each crack close', es: 'Cada cara de lejos, cada grieta de cerca' },
  'checklists.B1.whyCrew': { en: 'Old cracks stay old cracks.', es: 'Las grietas viejas siguen siendo viejas.' },
  'checklists.B1.whyHome': { en: 'Proof of what was there before.', es: 'Prueba de lo que había antes.' },

  'checklists.B2.what': { en: 'Benchmark shot again; {shots:count} check shots against the survey', es: 'Banco de nivel leído otra vez; {shots:count} lecturas contra el levantamiento' },
  'checklists.B2.acceptance': { en: 'Each within {tolerance:tape}', es: 'Cada una dentro de {tolerance:tape}' },
  'checklists.B2.photo': { en: 'The rod reading on the floor', es: 'La lectura de la mira en el piso' },
  'checklists.B2.whyCrew': { en: 'Wrong zero, whole job wrong.', es: 'Cero equivocado, todo el trabajo equivocado.' },
  'checklists.B2.whyHome': { en: 'Everything is measured from your floor.', es: 'Todo se mide desde su piso.' },

  'checklists.B3.what': { en: 'Every line to dig and every place where water comes out: painted, and walked with the homeowner', es: 'Toda línea por cavar y todo lugar por donde sale el agua: pintados y recorridos con el dueño' },
  'checklists.B3.acceptance': { en: 'The homeowner agrees in writing', es: 'El dueño está de acuerdo por escrito' },
  'checklists.B3.photo': { en: 'The paint with the people', es: 'La pintura con las personas' },
  'checklists.B3.whyCrew': { en: 'Moving paint is free; moving pipe is not.', es: 'Mover pintura es gratis; mover tubo no.' },
  'checklists.B3.whyHome': { en: 'You see it before we dig.', es: 'Usted lo ve antes de cavar.' },

  'checklists.B5.what': { en: 'Test holes in the slab: thickness and steel', es: 'Agujeros de prueba en la losa: grosor y acero' },
  'checklists.B5.acceptance': {
    en: '{holes:count} holes or more, one every {near:length} to {far:length}; not thicker than assumed, or a change order',
    es: '{holes:count} agujeros o más, uno cada {near:length} a {far:length}; no más gruesa de lo supuesto, u orden de cambio',
  },
  'checklists.B5.photo': { en: 'Each hole with the depth gauge', es: 'Cada agujero con el medidor' },
  'checklists.B5.whyCrew': { en: 'It tells us blade, breaker and hours.', es: 'Nos dice disco, martillo y horas.' },
  'checklists.B5.whyHome': { en: 'If it is thicker than assumed, you approve the cost first.', es: 'Si es más gruesa de lo supuesto, usted aprueba el costo primero.' },

  'checklists.B6.what': { en: 'Slab cleared of stretched cables', es: 'Losa sin cables tensados' },
  'checklists.B6.acceptance': { en: 'No stamp and no end plugs, or the scan sheet', es: 'Sin sello ni tapones en el borde, o la hoja del escáner' },
  'checklists.B6.photo': { en: 'The place of the stamp in the garage, or the scan', es: 'El lugar del sello en el garaje, o el escáner' },
  'checklists.B6.whyCrew': { en: 'A cut tendon kills.', es: 'Un cable cortado mata.' },
  'checklists.B6.whyHome': { en: 'Some slabs hold stretched steel cables.', es: 'Algunas losas tienen cables de acero tensados.' },

  'checklists.B7.what': { en: 'Protection: plywood, door dam, plants, fence or cover for every hole', es: 'Protección: madera, barrera de puerta, plantas, cerca o tapa para cada hoyo' },
  'checklists.B7.acceptance': { en: 'All in place', es: 'Todo en su lugar' },
  'checklists.B7.photo': { en: 'The whole yard', es: 'Todo el patio' },
  'checklists.B7.whyCrew': { en: 'Tidy means fewer claims.', es: 'Ordenado significa menos reclamos.' },
  'checklists.B7.whyHome': { en: 'Your house and children stay safe.', es: 'Su casa y sus niños están seguros.' },
  'checklists.B7Concrete.what': { en: 'Protection: plywood, door dam, plants, dust and slurry, fence, pit cover', es: 'Protección: madera, barrera de puerta, plantas, polvo y lodo, cerca, tapa de pozo' },
  'checklists.B7Concrete.acceptance': { en: 'All in place', es: 'Todo en su lugar' },
  'checklists.B7Concrete.photo': { en: 'The whole yard', es: 'Todo el patio' },
  'checklists.B7Concrete.whyCrew': { en: 'Tidy means fewer claims.', es: 'Ordenado significa menos reclamos.' },
  'checklists.B7Concrete.whyHome': { en: 'Your house and children stay safe.', es: 'Su casa y sus niños están seguros.' },

  'checklists.B8.what': { en: 'Old pump and lights in the cut zone off and locked; pool bonding zone flagged', es: 'Bomba vieja y luces apagadas y bloqueadas; zona de unión de la piscina marcada' },
  'checklists.B8.acceptance': { en: 'Tested dead; pool zone within {zone:length}', es: 'Probado sin corriente; zona de piscina hasta {zone:length}' },
  'checklists.B8.photo': { en: 'The tester', es: 'El probador' },
  'checklists.B8.whyCrew': { en: 'House voltage in a wet trench.', es: 'Voltaje de casa en una zanja mojada.' },
  'checklists.B8.whyHome': { en: 'A bonding wire protects swimmers; an electrician checks it.', es: 'Un cable de unión protege a los nadadores; un electricista lo revisa.' },
});
