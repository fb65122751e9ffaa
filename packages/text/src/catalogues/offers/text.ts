import { catalogue } from '../../catalogue.ts';

/** The offer as the customer accepts it; its rendered bytes are kept and hashed. */
export const offerText = catalogue({
  'offers.text.title': { en: 'Offer {number:count} from {company:text}', es: 'Oferta {number:count} de {company:text}' },
  'offers.text.for': { en: 'For {name:text}, {address:text}', es: 'Para {name:text}, {address:text}' },
  'offers.text.message': { en: '{message:text}', es: '{message:text}' },
  'offers.text.design': { en: 'The design is "{design:text}", revision {revision:count}. Its fingerprint is {sha:text}.', es: 'El diseño es "{design:text}", revisión {revision:count}. Su huella es {sha:text}.' },
  'offers.text.partsHeading': { en: 'What we build:', es: 'Lo que construimos:' },
  'offers.text.part': { en: '- {name:text}', es: '- {name:text}' },
  'offers.text.why': { en: 'Why it is built this way:', es: 'Por qué se construye así:' },
  'offers.text.price': { en: 'The price is {price:money}. Tax is in it.', es: 'El precio es {price:money}. Incluye el impuesto.' },
  'offers.text.validUntil': { en: 'You can accept it until {date:date}.', es: 'Puede aceptarla hasta el {date:date}.' },
  'offers.text.notice': { en: 'A notice of your right to cancel comes with this offer, on paper.', es: 'Con esta oferta viene, en papel, un aviso de su derecho a cancelar.' },
  'offers.text.records': { en: 'You may ask for a paper copy at any time.', es: 'Puede pedir una copia en papel cuando quiera.' },
  'offers.text.accept': { en: 'When you type your name, you accept this offer as it stands here.', es: 'Al escribir su nombre, acepta esta oferta tal como está aquí.' },
});
