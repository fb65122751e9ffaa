import { catalogue } from '../catalogue.ts';

export const handover = catalogue({
  'handover.title': { en: 'Handover', es: 'Entrega' },
  'handover.done': { en: 'Handed over {at:dateTime}', es: 'Entregado {at:dateTime}' },
  'handover.warranty': { en: 'Warranty from {from:date} until {until:date}', es: 'Garantía del {from:date} al {until:date}' },
  'handover.asBuilt': { en: 'As built', es: 'Como quedó' },
  'handover.levels': { en: 'Levels beside the design', es: 'Niveles junto al diseño' },
  'handover.designed': { en: 'Designed', es: 'Diseñado' },
  'handover.difference': { en: 'Difference', es: 'Diferencia' },
  'handover.serial': { en: 'Serial number of the pump', es: 'Número de serie de la bomba' },
  'handover.breaker': { en: 'Breaker', es: 'Interruptor' },
  'handover.deviations': { en: 'What differs from the design, and who accepted it', es: 'Qué difiere del diseño y quién lo aceptó' },
  'handover.complete': { en: 'Hand over', es: 'Entregar' },

  'handover.open.notReleased': { en: 'The job is not released to dig', es: 'El trabajo no está liberado para cavar' },
  'handover.open.item': { en: '{holdPoint:text}: {item:text} is not proven', es: '{holdPoint:text}: {item:text} no está probado' },
  'handover.open.step': { en: '{item:text} is neither proven nor said not to apply', es: '{item:text} no está probado ni se dijo que no aplica' },
  'handover.open.found': { en: '{count:plural|# report of the crew is not answered|# reports of the crew are not answered}', es: '{count:plural|# reporte sin responder|# reportes sin responder}' },
  'handover.open.noProof': { en: 'No pump-down on record for {pump:text}', es: 'Sin prueba de vaciado para {pump:text}' },
  'handover.open.proofFailed': { en: 'The last pump-down of {pump:text} does not pass', es: 'El último vaciado de {pump:text} no pasa' },
  'handover.open.done': { en: 'Already handed over', es: 'Ya entregado' },
});
