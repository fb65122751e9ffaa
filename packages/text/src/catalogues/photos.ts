import { catalogue } from '../catalogue.ts';

export const photos = catalogue({
  'photos.title': { en: 'Photos', es: 'Fotos' },
  'photos.add': { en: 'Take a photo', es: 'Tomar una foto' },
  'photos.note': { en: 'Note', es: 'Nota' },
  'photos.forCustomer': { en: 'The customer may see it', es: 'El cliente la puede ver' },
  'photos.taken': { en: 'Taken {at:dateTime} by {by:text}', es: 'Tomada {at:dateTime} por {by:text}' },
  'photos.preparing': { en: 'The copy for viewing is being made', es: 'Se está haciendo la copia para ver' },
  'photos.alt': { en: 'Photo of {what:text}, {at:dateTime}', es: 'Foto de {what:text}, {at:dateTime}' },
});
