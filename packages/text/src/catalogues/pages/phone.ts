import { catalogue } from '../../catalogue.ts';

/** What is on this phone and not yet in the office. */
export const phonePages = catalogue({
  'ui.phone.title': { en: 'On this phone', es: 'En este teléfono' },
  'ui.phone.here': { en: 'on this phone', es: 'en este teléfono' },
  'ui.phone.waiting': { en: 'On this phone, not yet in the office: {n:plural|# entry|# entries}', es: 'En este teléfono, aún no en la oficina: {n:plural|# registro|# registros}' },
  'ui.phone.videoWaits': { en: 'On this phone: {n:plural|# video waits for Wi-Fi|# videos wait for Wi-Fi}', es: 'En este teléfono: {n:plural|# video espera Wi-Fi|# videos esperan Wi-Fi}' },
  'ui.phone.sendNow': { en: 'Send now', es: 'Enviar ahora' },
  'ui.phone.refused': { en: '{n:plural|# entry of this phone was refused by the office|# entries of this phone were refused by the office}', es: '{n:plural|La oficina rechazó # registro de este teléfono|La oficina rechazó # registros de este teléfono}' },
  'ui.phone.setAside': { en: 'Drop it', es: 'Descartar' },
  'ui.phone.throwAway': { en: 'Yes, drop it for good', es: 'Sí, descartar para siempre' },
  'ui.phone.noStore': {
    en: 'This browser keeps nothing on the phone, so nothing was recorded. Allow it to store data, or leave the private window, and record again.',
    es: 'Este navegador no guarda nada en el teléfono, así que no se registró nada. Permítale guardar datos, o salga de la ventana privada, y registre otra vez.',
  },
  'ui.phone.oldPage': {
    en: 'This page is older than the office and cannot send. What you recorded is kept on this phone; load the page again.',
    es: 'Esta página es más vieja que la oficina y no puede enviar. Lo que registró queda en este teléfono; cargue la página otra vez.',
  },
  'ui.phone.takePhoto': { en: 'Take the photo', es: 'Tomar la foto' },
  'ui.phone.takeAnother': { en: 'Take another photo', es: 'Tomar otra foto' },
  'ui.phone.choosePhoto': { en: 'Choose from this phone', es: 'Elegir de este teléfono' },
  'ui.pick.there': { en: 'Or one that is there already', es: 'O una que ya está' },
  'ui.pick.none': { en: 'No photo', es: 'Sin foto' },
  'ui.pick.at': { en: 'Photo of {at:dateTime} {note:text}', es: 'Foto del {at:dateTime} {note:text}' },
  'ui.phone.part': { en: 'Part', es: 'Parte' },
  'ui.phone.noPart': { en: 'No part in particular', es: 'Ninguna parte en especial' },
});
