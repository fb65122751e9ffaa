import { catalogue } from '../catalogue.ts';

export const locates = catalogue({
  'locates.title': { en: 'Locate tickets', es: 'Boletos de localización' },
  'locates.mayDig': { en: 'May dig', es: 'Se puede cavar' },
  'locates.mayNotDig': { en: 'Do not dig', es: 'No cavar' },
  'locates.number': { en: 'Ticket number', es: 'Número de boleto' },
  'locates.requestedAt': { en: 'Requested', es: 'Pedido' },
  'locates.legalStart': { en: 'Earliest dig', es: 'Se puede cavar desde' },
  'locates.renewBy': { en: 'Renew by', es: 'Renovar antes de' },
  'locates.expires': { en: 'Expires', es: 'Vence' },
  'locates.area': { en: 'Area that the ticket covers', es: 'Zona que cubre el boleto' },
  'locates.utilities': { en: 'Utilities on the ticket', es: 'Servicios en el boleto' },
  'locates.rule': { en: 'Rule: {source:text}; entered {asOf:date}', es: 'Regla: {source:text}; anotada {asOf:date}' },
  'locates.rule.none': { en: 'No confirmed rule for {state:text}; load it from the center first', es: 'Sin regla confirmada para {state:text}; cárguela primero del centro' },
  'locates.closed': { en: 'Closed', es: 'Cerrado' },

  'locates.answer.none': { en: 'Nothing heard yet', es: 'Aún sin respuesta' },
  'locates.answer.marked': { en: 'Marked', es: 'Marcado' },
  'locates.answer.clear': { en: 'Clear', es: 'Libre' },
  'locates.answer.needsMoreTime': { en: 'Needs more time', es: 'Necesita más tiempo' },
  'locates.answer.noAccess': { en: 'No access', es: 'Sin acceso' },
  'locates.answer.meetOnSite': { en: 'Wants to meet on site', es: 'Quiere reunirse en la obra' },
  'locates.answer.notResponded': { en: 'Did not answer', es: 'No respondió' },

  'locates.reason.noTicket': { en: 'There is no open ticket', es: 'No hay boleto abierto' },
  'locates.reason.unknownRule': {
    en: 'Ticket {number:text}: the rule of {state:text} is not confirmed, so its clock cannot be told',
    es: 'Boleto {number:text}: la regla de {state:text} no está confirmada, así que su reloj no se sabe',
  },
  'locates.reason.beforeStart': { en: 'Ticket {number:text}: legal from {at:dateTime}', es: 'Boleto {number:text}: legal desde {at:dateTime}' },
  'locates.reason.expired': { en: 'Ticket {number:text}: expired {at:dateTime}', es: 'Boleto {number:text}: venció {at:dateTime}' },
  'locates.reason.noUtility': { en: 'Ticket {number:text}: names no utility', es: 'Boleto {number:text}: no nombra ningún servicio' },
  'locates.reason.silent': { en: 'Ticket {number:text}: no answer from {utility:text}; silence is never clearance', es: 'Boleto {number:text}: sin respuesta de {utility:text}; el silencio nunca es permiso' },
  'locates.reason.notResponded': { en: 'Ticket {number:text}: {utility:text} did not answer; notify again', es: 'Boleto {number:text}: {utility:text} no respondió; avise otra vez' },
  'locates.reason.needsMoreTime': { en: 'Ticket {number:text}: {utility:text} needs more time', es: 'Boleto {number:text}: {utility:text} necesita más tiempo' },
  'locates.reason.noAccess': { en: 'Ticket {number:text}: {utility:text} had no access', es: 'Boleto {number:text}: {utility:text} no tuvo acceso' },
  'locates.reason.meetOnSite': { en: 'Ticket {number:text}: {utility:text} wants to meet on site', es: 'Boleto {number:text}: {utility:text} quiere reunirse en la obra' },
  'locates.reason.closed': { en: 'Ticket {number:text} is closed', es: 'El boleto {number:text} está cerrado' },

  'locates.hold.marks': { en: 'Waiting for the locate marks', es: 'Esperando las marcas de localización' },

  'locates.noAnswer.checkThenNotifyAgain': { en: 'No answer by the due time: check the positive response, then notify again', es: 'Sin respuesta a tiempo: revise la respuesta positiva y avise otra vez' },
  'locates.noAnswer.callAgain': { en: 'No answer by the due time: call again', es: 'Sin respuesta a tiempo: llame otra vez' },
  'locates.noAnswer.newTicket': { en: 'No marks by the due time: take a new ticket', es: 'Sin marcas a tiempo: pida un boleto nuevo' },
  'locates.noAnswer.secondNotice': { en: 'No answer by the due time: give a second notice', es: 'Sin respuesta a tiempo: dé un segundo aviso' },
  'locates.noAnswer.threeHourNotice': { en: 'A sign without marks: give the short notice', es: 'Una señal sin marcas: dé el aviso corto' },
});
