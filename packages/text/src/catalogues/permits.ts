import { catalogue } from '../catalogue.ts';

/** Permits and approvals by name, and why one of them holds the release to dig. */
export const permits = catalogue({
  'permits.kind.plumbing': { en: 'Plumbing or drainage permit', es: 'Permiso de plomería o drenaje' },
  'permits.kind.electrical': { en: 'Electrical permit', es: 'Permiso eléctrico' },
  'permits.kind.rightOfWay': { en: 'Right-of-way or curb permit', es: 'Permiso de vía pública o bordillo' },
  'permits.kind.grading': { en: 'Grading, fill, or paved-area approval', es: 'Aprobación de nivelación, relleno o área pavimentada' },
  'permits.kind.stormConnection': { en: 'Connection to the storm drain', es: 'Conexión al drenaje pluvial' },
  'permits.kind.tree': { en: 'Tree permit', es: 'Permiso de árboles' },
  'permits.kind.floodPlain': { en: 'Floodplain approval', es: 'Aprobación de zona inundable' },
  'permits.kind.wetland': { en: 'Wetland or coastal buffer approval', es: 'Aprobación de humedal o franja costera' },
  'permits.kind.association': { en: 'Homeowners\' association', es: 'Asociación de vecinos' },
  'permits.kind.poolBarrier': { en: 'Pool fence and bonding', es: 'Cerca y puesta a tierra de la alberca' },
  'permits.kind.erosionControl': { en: 'Erosion control', es: 'Control de erosión' },
  'permits.kind.licence': { en: 'Our license covers a job of this price', es: 'Nuestra licencia cubre un trabajo de este precio' },

  'permits.when.plumbing': { en: 'A pump, a connection, a pipe that the plumbing code covers.', es: 'Una bomba, una conexión, un tubo que cubre el código de plomería.' },
  'permits.when.electrical': { en: 'Every new circuit; it is seen with the trench open, and at the end.', es: 'Todo circuito nuevo; se revisa con la zanja abierta y al final.' },
  'permits.when.rightOfWay': { en: 'Work in the street, the walk, the strip beside it, or through the curb.', es: 'Obra en la calle, la acera, la franja de al lado o por el bordillo.' },
  'permits.when.grading': { en: 'Soil moved or brought, a swale, more paved ground.', es: 'Tierra movida o traída, una cuneta, más suelo pavimentado.' },
  'permits.when.stormConnection': { en: 'Water that enters a public storm drain.', es: 'Agua que entra a un drenaje pluvial público.' },
  'permits.when.tree': { en: 'Roots of a protected tree are cut, or one is felled.', es: 'Se cortan raíces de un árbol protegido o se tala uno.' },
  'permits.when.floodPlain': { en: 'The lot lies in a mapped flood zone.', es: 'El lote está en una zona inundable del mapa.' },
  'permits.when.wetland': { en: 'Wet ground, a stream, or the shore is near.', es: 'Hay cerca un humedal, un arroyo o la costa.' },
  'permits.when.association': { en: 'There is an association; it may take weeks.', es: 'Hay una asociación; puede tardar semanas.' },
  'permits.when.poolBarrier': { en: 'The work touches a pool fence or the bonded ground within 3 ft of a pool.', es: 'La obra toca la cerca de una alberca o el suelo conectado a tierra a menos de 3 pies.' },
  'permits.when.erosionControl': { en: 'Bare soil that rain can wash; on small jobs a sock and no slurry in the drain.', es: 'Tierra suelta que la lluvia puede llevar; en trabajos chicos, una barrera y nada de lodo al drenaje.' },
  'permits.when.licence': { en: 'Above a price the state asks for a higher license.', es: 'Desde cierto precio el estado pide otra licencia.' },

  'permits.gap.unknown': { en: 'not answered yet', es: 'sin respuesta todavía' },
  'permits.gap.applied': { en: 'applied for, not granted yet', es: 'solicitado, aún no concedido' },
  'permits.gap.refused': { en: 'the answer is no', es: 'la respuesta es no' },
  'permits.gap.expired': { en: 'it has expired', es: 'ya venció' },

  'permits.state.unknown': { en: 'Not known', es: 'No se sabe' },
  'permits.state.notNeeded': { en: 'Not needed here', es: 'Aquí no hace falta' },
  'permits.state.applied': { en: 'Applied for', es: 'Solicitado' },
  'permits.state.granted': { en: 'Granted', es: 'Concedido' },
  'permits.state.refused': { en: 'Refused', es: 'Negado' },
});
