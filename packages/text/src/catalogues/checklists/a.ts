import { catalogue } from '../../catalogue.ts';

/** A. Before the truck leaves. */
export const a = catalogue({
  'checklists.A1.what': { en: 'Contract signed, design frozen, cancellation time over', es: 'Contrato firmado, diseño congelado, plazo de cancelación vencido' },
  'checklists.A1.acceptance': { en: 'Later than midnight of day {days:count}; Saturday counts', es: 'Después de la medianoche del día {days:count}; el sábado cuenta' },
  'checklists.A1.whyCrew': { en: 'We do not dig on a job that can still be cancelled.', es: 'No cavamos en un trabajo que aún se puede cancelar.' },
  'checklists.A1.whyHome': { en: 'You have a legal time to change your mind.', es: 'Usted tiene un plazo legal para cambiar de idea.' },

  'checklists.A2.what': { en: 'Locate ticket legal to dig today, in our name, for all trenches', es: 'Boleto de localización válido hoy, a nuestro nombre, para todas las zanjas' },
  'checklists.A2.acceptance': { en: 'Legal start passed, not expired, every utility answered', es: 'Inicio legal pasado, sin vencer, todos los servicios respondieron' },
  'checklists.A2.photo': { en: 'The ticket and the list of answers', es: 'El boleto y la lista de respuestas' },
  'checklists.A2.whyCrew': { en: 'A strike can kill, and the bill is ours.', es: 'Un golpe puede matar, y la cuenta es nuestra.' },
  'checklists.A2.whyHome': { en: 'Nobody cuts your gas or internet.', es: 'Nadie le corta el gas ni el internet.' },

  'checklists.A3.what': {
    en: 'Private lines located or declared: irrigation, pool, septic, gas grill, lights, dog fence',
    es: 'Líneas privadas localizadas o declaradas: riego, piscina, séptico, gas de parrilla, luces, cerca de perro',
  },
  'checklists.A3.acceptance': { en: 'Each line answered, the list signed by the homeowner; locator paint on the ground', es: 'Cada línea respondida, la lista firmada por el dueño; pintura del localizador en el suelo' },
  'checklists.A3.photo': { en: 'The painted lines', es: 'Las líneas pintadas' },
  'checklists.A3.whyCrew': { en: '811 marks only what the utilities own.', es: '811 marca solo lo que es de las empresas de servicio.' },
  'checklists.A3.whyHome': { en: 'Public marking does not find your own lines.', es: 'El marcado público no encuentra sus propias líneas.' },

  'checklists.A4.what': { en: 'Permits and permissions for the outlet are on site', es: 'Los permisos de la salida están en la obra' },
  'checklists.A4.acceptance': { en: 'Every one granted', es: 'Todos concedidos' },
  'checklists.A4.photo': { en: 'The permit card', es: 'La tarjeta del permiso' },
  'checklists.A4.whyCrew': { en: 'A stop-work order costs a day.', es: 'Una orden de paro cuesta un día.' },
  'checklists.A4.whyHome': { en: 'The outlet is allowed, in writing.', es: 'La salida está permitida, por escrito.' },

  'checklists.A5.what': { en: 'Parts checked: couplings, fittings, saw blades', es: 'Piezas revisadas: acoples, conexiones, discos' },
  'checklists.A5.acceptance': { en: 'As designed; blades reach {beyond:tape} past the slab', es: 'Como el diseño; los discos pasan {beyond:tape} de la losa' },
  'checklists.A5.photo': { en: 'The pallet', es: 'La tarima' },
  'checklists.A5.whyCrew': { en: 'One missing banded coupling stops the job.', es: 'Un acople que falta para el trabajo.' },
  'checklists.A5.whyHome': { en: 'The parts you paid for are the parts you get.', es: 'Las piezas que pagó son las que recibe.' },
  'checklists.A5Pump.what': { en: 'Parts checked: pump curve, basin size, float, check valve, couplings', es: 'Piezas revisadas: curva de la bomba, tamaño del pozo, flotador, válvula de retención, acoples' },
  'checklists.A5Pump.acceptance': { en: 'As designed', es: 'Como el diseño' },
  'checklists.A5Pump.photo': { en: 'The pump plate, and the pallet', es: 'La placa de la bomba y la tarima' },
  'checklists.A5Pump.whyCrew': { en: 'One missing banded coupling stops the job.', es: 'Un acople que falta para el trabajo.' },
  'checklists.A5Pump.whyHome': { en: 'The pump you paid for is the pump you get.', es: 'La bomba que pagó es la bomba que recibe.' },
  'checklists.A5Both.what': { en: 'Parts checked: pump curve, basin size, float, check valve, couplings, blades', es: 'Piezas revisadas: curva de la bomba, tamaño del pozo, flotador, válvula de retención, acoples, discos' },
  'checklists.A5Both.acceptance': { en: 'As designed; blades reach {beyond:tape} past the slab', es: 'Como el diseño; los discos pasan {beyond:tape} de la losa' },
  'checklists.A5Both.photo': { en: 'The pump plate, and the pallet', es: 'La placa de la bomba y la tarima' },
  'checklists.A5Both.whyCrew': { en: 'One missing banded coupling stops the job.', es: 'Un acople que falta para el trabajo.' },
  'checklists.A5Both.whyHome': { en: 'The pump you paid for is the pump you get.', es: 'La bomba que pagó es la bomba que recibe.' },

  'checklists.A6.what': { en: 'Weather checked; heat plan', es: 'Tiempo revisado; plan para el calor' },
  'checklists.A6.acceptance': { en: 'Under {chance:percent} chance of heavy rain while the ground is open', es: 'Menos de {chance:percent} de lluvia fuerte mientras la tierra está abierta' },
  'checklists.A6.photo': { en: 'The forecast', es: 'El pronóstico' },
  'checklists.A6.whyCrew': { en: 'We own any flood while it is open.', es: 'Cualquier inundación con la obra abierta es nuestra.' },
  'checklists.A6.whyHome': { en: 'We will not leave you open to a storm.', es: 'No lo dejamos abierto a una tormenta.' },
  'checklists.A6OldDrain.what': { en: 'Weather checked; heat plan; bypass pump on the truck', es: 'Tiempo revisado; plan para el calor; bomba de desvío en el camión' },
  'checklists.A6OldDrain.acceptance': { en: 'From {chance:percent} chance of heavy rain on, a bypass pump is on the truck before the old drain is cut', es: 'Desde {chance:percent} de lluvia fuerte, la bomba de desvío va en el camión antes de cortar el desagüe viejo' },
  'checklists.A6OldDrain.photo': { en: 'The forecast', es: 'El pronóstico' },
  'checklists.A6OldDrain.whyCrew': { en: 'We own any flood while it is open.', es: 'Cualquier inundación con la obra abierta es nuestra.' },
  'checklists.A6OldDrain.whyHome': { en: 'We will not leave you open to a storm.', es: 'No lo dejamos abierto a una tormenta.' },
});
